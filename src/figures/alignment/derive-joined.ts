/** The logs of a run, joined on one clock → its figures, with what the clocks leave unsure. */
import { joinLogs, NO_LOG } from '../../intake/joined.ts';
import type { Log } from '../../intake/log.ts';
import type { Source } from '../../quantities/quantity.ts';
import { normalQuantile } from '../../statistics/normal-quantile.ts';
import type { RunContext } from '../context.ts';
import { derive } from '../derive.ts';
import { type AbsentCode, type Figure, isPresent, type PresentFigure, type RunFigures } from '../figure.ts';
import { withParts } from '../sources.ts';
import type { RunTables } from '../tables.ts';
import type { Alignment } from './align.ts';

/** A log with what brings it to the run's clock; null for the first. */
export interface AlignedLog {
  readonly name: string;
  readonly log: Log;
  readonly alignment: Alignment | null;
}

/**
 * Figures of all logs together. The sensitivity of each figure to a log's clock is found by moving the clock by its standard uncertainty both ways
 * (JCGM 100:2008, 5.1.3, note 2): so every figure that mixes logs carries it, whatever it mixes, and those of one log alone do not.
 * A run without a log has an empty one.
 */
export function deriveJoined(
  logs: readonly AlignedLog[],
  order: readonly string[],
  context: RunContext,
  tables: RunTables = {},
): { readonly log: Log; readonly derived: RunFigures } {
  if (logs.length === 0) return { log: NO_LOG, derived: withoutLog(derive(NO_LOG, context, tables)) };
  const moved = (name: string, by: number): Log =>
    joinLogs(
      logs.map((each) => ({ name: each.name, log: each.log, at: (each.alignment?.at ?? 0) + (each.name === name ? by : 0) })),
      order,
    );
  const log = moved('', 0);
  const derived = derive(log, context, tables);
  const unsure = logs.flatMap(({ alignment }) => (alignment && alignment.u > 0 ? [alignment] : []));
  const figures = new Map<string, Figure>(derived.figures);
  for (const alignment of unsure) {
    const source = sourceOf(alignment, context.run);
    const [later, earlier] = [alignment.u, -alignment.u].map((by) => derive(moved(alignment.name, by), context, tables).figures);
    for (const [address, figure] of figures)
      figures.set(address, unsureOf(figure, later!.get(address), earlier!.get(address), source));
  }
  return { log, derived: { ...derived, figures } };
}

/** Figures that a run without a log cannot have say so, whatever of a log they would have been made from. */
function withoutLog(derived: RunFigures): RunFigures {
  const figures = [...derived.figures].map(([address, figure]): [string, Figure] => {
    if (isPresent(figure) || !OF_LOG.includes(figure.absent)) return [address, figure];
    return [address, { ...figure, why: 'The run has no log, and no reading gives it.' }];
  });
  return { ...derived, figures: new Map(figures) };
}

/** Reasons that speak of a log. */
const OF_LOG: readonly AbsentCode[] = ['no-channel', 'no-phase', 'no-rating', 'no-condition'];

function sourceOf({ name, u, distribution }: Alignment, run: string): Source {
  return {
    id: `run:${run}/alignment/${name}`,
    title: `clock of the log ${name} beside the run's first, in ${run}`,
    dof: null,
    ...(distribution ? { distribution } : {}),
    standard: { u, unit: 's' },
  };
}

/** A change below this share of the value is that of rounding. */
const ROUNDING = 1e-9;

/** The figure with the clock as a further source. Its own interval grows to both sides by as much as the clock may move it. */
function unsureOf(figure: Figure, later: Figure | undefined, earlier: Figure | undefined, source: Source): Figure {
  if (!isPresent(figure)) return figure;
  const { quantity, interval } = figure;
  const [up, down] = [later, earlier].map((each) => (each && isPresent(each) ? each.quantity.value : null));
  const share = up != null && down != null ? (up - down) / 2 : (up ?? quantity.value) - (down ?? quantity.value);
  if (!(Math.abs(share) > ROUNDING * Math.abs(quantity.value))) return figure;
  const grown: PresentFigure = { ...figure, quantity: withParts(quantity, [{ source, share }]) };
  return interval ? { ...grown, interval: widened(interval, quantity.value, share) } : grown;
}

function widened([low, high]: readonly [number, number], value: number, share: number): readonly [number, number] {
  const reach = normalQuantile(0.975) * Math.abs(share);
  return [value - Math.hypot(value - low, reach), value + Math.hypot(high - value, reach)];
}
