/** Two clocks brought together by the load that both logs show. */
import type { Edge } from './edges.ts';

/** s: what is added to the other clock, between two limits. */
export interface Shift {
  readonly from: number;
  readonly to: number;
  /** Edges of the loads that agree, and how many both logs show. */
  readonly agree: number;
}

export type NoShift = 'ambiguous' | 'none';

/** Edges that agree so well that their limits leave nothing in common are taken to lie apart by this much at most, s. */
const SLACK = 3;

/**
 * The shift under which most edges of `other` fall on edges of `first` of the same kind. Each pair of edges leaves an interval for it; those that
 * agree are intersected, so that every further edge narrows it. Where the limits leave nothing in common (a load that rises slowly), it is
 * the span of their middles. `ambiguous` where shifts that lie apart bring as many edges together, as with two equal loads in one log and one of
 * them in the other.
 */
export function shiftByEdges(first: readonly Edge[], other: readonly Edge[]): Shift | NoShift {
  const pairs = first.flatMap((a) =>
    other.filter(({ kind }) => kind === a.kind).map((b) => ({ from: a.from - b.to, to: a.to - b.from })),
  );
  const tried = pairs.map((pair) => agreeing(pairs, middle(pair)));
  const most = Math.max(0, ...tried.map(({ length }) => length));
  if (most === 0) return 'none';
  const best = tried.filter(({ length }) => length === most).map(joined);
  const [found] = best as [Limits, ...Limits[]];
  const apart = best.some((each) => Math.abs(middle(each) - middle(found)) > SLACK + (each.to - each.from) / 2);
  return apart ? 'ambiguous' : { ...found, agree: most };
}

type Limits = Pick<Shift, 'from' | 'to'>;

/** Pairs whose limits hold a shift, or miss it by the slack at most. */
function agreeing(pairs: readonly Limits[], shift: number): readonly Limits[] {
  return pairs.filter(({ from, to }) => shift >= from - SLACK && shift <= to + SLACK);
}

function joined(pairs: readonly Limits[]): Limits {
  const from = Math.max(...pairs.map((pair) => pair.from));
  const to = Math.min(...pairs.map((pair) => pair.to));
  if (from < to) return { from, to };
  const middles = pairs.map(middle);
  return {
    from: Math.min(...pairs.map((pair) => pair.from), ...middles),
    to: Math.max(...pairs.map((pair) => pair.to), ...middles),
  };
}

function middle({ from, to }: Limits): number {
  return (from + to) / 2;
}
