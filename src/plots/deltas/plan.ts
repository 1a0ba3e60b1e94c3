/** What each run costs beside the reference: differences in power and in rise over ambient, with their 95 % intervals. */
import { type Figure, isPresent } from '../../figures/figure.ts';
import { type ComparedRun, figureAt, type PlottedComparison, plottedComparison } from '../data/plotted-comparison.ts';
import type { ComparedSubject } from '../drawing/drawn.ts';
import type { Plan, Undrawn } from '../drawing/plan.ts';
import { layOutDeltas } from './layout.ts';
import { deltasAlt, deltasCsv, deltasMethod, deltasTable, deltasTitle } from './words.ts';

export interface Delta extends ComparedRun {
  readonly figure: Figure;
}

/** One quantity of all runs. */
export interface DeltaGroup {
  readonly name: 'power_delta' | 'rise_delta';
  /** "power" */
  readonly what: string;
  readonly unit: string;
  readonly deltas: readonly Delta[];
}

export interface Deltas {
  readonly reference: ComparedRun;
  /** Those of which some run has a figure. */
  readonly groups: readonly DeltaGroup[];
  /** Those of which no run has one. */
  readonly absent: readonly DeltaGroup[];
}

const GROUPS = [
  { name: 'power_delta', what: 'power', unit: 'W' },
  { name: 'rise_delta', what: 'rise over ambient', unit: 'K' },
] as const;

/** Plans the differences of all runs from the reference. */
export function planDeltas(subject: ComparedSubject, title?: string): Plan | Undrawn {
  const compared = plottedComparison(subject);
  const all = GROUPS.map((group): DeltaGroup => ({ ...group, deltas: deltasOf(compared, group.name) }));
  const groups = all.filter(isDrawn);
  if (groups.length === 0) return { why: whyNot(all) };
  return deltasPlan({ reference: compared.reference, groups, absent: all.filter((group) => !isDrawn(group)) }, all, title);
}

function deltasPlan(deltas: Deltas, all: readonly DeltaGroup[], title?: string): Plan {
  const { reference, groups } = deltas;
  return {
    title: title ?? deltasTitle(deltas),
    alt: deltasAlt(deltas),
    method: deltasMethod(deltas),
    csv: deltasCsv(all),
    table: deltasTable(all, reference),
    layOut: (size) => layOutDeltas(deltas, size),
    shown: groups[0]!.deltas.map(({ alias, k }) => ({ name: alias, k })),
    ...(groups.length > 1
      ? { parts: () => groups.map((group) => deltasPlan({ reference, groups: [group], absent: [] }, [group], title)) }
      : {}),
  };
}

function deltasOf(compared: PlottedComparison, name: DeltaGroup['name']): Delta[] {
  return compared.others.map((run) => ({ ...run, figure: figureAt(compared, `${name}.${run.alias}`) }));
}

function isDrawn({ deltas }: DeltaGroup): boolean {
  return deltas.some(({ figure }) => isPresent(figure));
}

function whyNot(groups: readonly DeltaGroup[]): string {
  const reasons = groups.flatMap(({ deltas }) => deltas.flatMap(({ figure }) => (isPresent(figure) ? [] : [figure.why])));
  return reasons.length > 0 ? [...new Set(reasons)].join(' ') : 'The comparison has one run alone.';
}
