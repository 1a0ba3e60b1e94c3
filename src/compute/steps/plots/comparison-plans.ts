/** How each plot of a comparison's page is planned from what was gathered. */

import type { QuantityKind } from '../../../intake/log.ts';
import { plainName } from '../../../plots/data/figure-text.ts';
import { planDeltas } from '../../../plots/deltas/plan.ts';
import type { ComparedSubject } from '../../../plots/drawing/drawn.ts';
import { MOST_STYLES } from '../../../plots/drawing/palette.ts';
import type { Plan, Undrawn } from '../../../plots/drawing/plan.ts';
import { titleOf, titleOfChannel } from '../../../plots/drawing/wording.ts';
import { planScaling } from '../../../plots/scaling/plan.ts';
import { planScores } from '../../../plots/scores/plan.ts';
import { type ComparedRunSeries, planComparedTrace } from '../../../plots/trace/of-series.ts';
import type { Gathered } from '../../models/gathered.ts';
import { figuresOf, firstRuns } from '../../models/gathered-figures.ts';
import type { ComparedPlotId } from './comparison-plot-task.ts';

const PLANNERS: Readonly<Record<ComparedPlotId, (gathered: Gathered) => Plan | Undrawn>> = {
  temperature: (gathered) => trace(gathered, 'temperature'),
  rise: (gathered) => trace(gathered, 'temperature', true),
  clock: (gathered) => trace(gathered, 'clock'),
  power: (gathered) => trace(gathered, electrical(gathered)),
  scaling: (gathered) => planScaling(subjectOf(gathered)),
  deltas: (gathered) => planDeltas(subjectOf(gathered)),
  scores: (gathered) => planScores(subjectOf(gathered)),
};

/** The plan of a plot, or why there is nothing to draw. */
export function planOf(id: ComparedPlotId, gathered: Gathered): Plan | Undrawn {
  return PLANNERS[id](gathered);
}

/** All runs where their lines can be told apart, else the first of each setting. */
function trace(gathered: Gathered, quantity: QuantityKind, rise = false): Plan | Undrawn {
  const runs = gathered.runs.length <= MOST_STYLES ? gathered.runs : firstRuns(gathered);
  const series = runs.map(
    (run, slot): ComparedRunSeries => ({ alias: run.alias, title: run.title, series: run.series, slot, figures: figuresOf(run) }),
  );
  return planComparedTrace(series, { panels: [{ quantity }], rise, title: titleOfTrace(runs, quantity, rise) });
}

/** "Temperature of chip over time": the channel where it has one name in all runs, which is not that of the quantity. */
function titleOfTrace(runs: Gathered['runs'], quantity: QuantityKind, rise: boolean): string {
  const names = new Set(runs.flatMap(({ series }) => nameOfFirst(series, quantity)));
  const [name] = names;
  return `${titleOfChannel(rise ? 'Rise over ambient' : titleOf(quantity), names.size === 1 ? name : undefined)} over time`;
}

/** For readers, of the first channel of a quantity. */
function nameOfFirst({ channels }: Gathered['runs'][number]['series'], quantity: QuantityKind): string | readonly [] {
  const found = channels.find((channel) => channel.quantity === quantity);
  return found === undefined ? [] : (found.label ?? plainName(found.name));
}

function subjectOf(gathered: Gathered): ComparedSubject {
  return { reference: gathered.reference, runs: firstRuns(gathered), figures: figuresOf(gathered) };
}

/** Power where any run logged it, else the current that it was computed from. */
function electrical({ runs }: Gathered): 'power' | 'current' {
  return runs.some(({ series }) => series.channels.some(({ quantity }) => quantity === 'power')) ? 'power' : 'current';
}
