/** The plot of chosen runs, by the planner and the library that draw the site's plots; loaded when there is something to draw. */

import type { GatheredRun } from '../../compute/models/gathered.ts';
import { figuresOf } from '../../compute/models/gathered-figures.ts';
import { guardNote } from '../../plots/drawing/csv.ts';
import { drawIn } from '../../plots/drawing/draw-in.ts';
import { align } from '../../plots/drawing/lines/align.ts';
import { LIGHT } from '../../plots/drawing/palette.ts';
import { isPlan, type Plan, type Undrawn } from '../../plots/drawing/plan.ts';
import { NARROW, WIDE } from '../../plots/drawing/size.ts';
import { standalone } from '../../plots/drawing/svg.ts';
import { type ComparedRunSeries, planComparedTrace } from '../../plots/trace/of-series.ts';
import { seriesRun } from '../../plots/trace/series-run.ts';
import type { View } from './view.ts';

export interface DrawnPlot extends Pick<Plan, 'title' | 'about' | 'alt' | 'method' | 'csv' | 'table'> {
  /** To stand in the page. */
  readonly svg: string;
  /** To be taken away, colours filled in. */
  readonly file: string;
}

type Asked = Pick<View, 'show' | 'as' | 'units' | 'from' | 'to'>;

/** Draws what a view shows of runs, for a wide or a narrow column; or says why there is nothing to draw. */
export async function drawRuns(runs: readonly GatheredRun[], view: Asked, narrow: boolean): Promise<DrawnPlot | Undrawn> {
  const plan = planOf(runs, view);
  if (!isPlan(plan)) return plan;
  const { svg, warnings } = await drawIn(narrow ? NARROW : WIDE, plan, 'chosen');
  if (warnings.length > 0) throw new Error(`the chart library warns: ${warnings.join('; ')}`);
  const { title, about, alt, csv, table } = plan;
  const method = plan.method + guardNote(csv);
  return {
    title,
    ...(about === undefined ? {} : { about }),
    alt,
    method,
    csv,
    table,
    svg,
    file: standalone(svg, { title, method }, LIGHT),
  };
}

/** The plan of a view. */
export function planOf(runs: readonly GatheredRun[], { show, as, units, from, to }: Asked): Plan | Undrawn {
  const subjects = runs.map((run, slot): ComparedRunSeries => {
    return { alias: run.alias, title: run.title, series: run.series, figures: figuresOf(run), slot };
  });
  return planComparedTrace(subjects, {
    panels: show.map(({ quantity, channel }) => (channel === null ? { quantity } : { channel })),
    rise: as === 'rise',
    units: Object.values(units),
    ...(from === null && to === null ? {} : { window: windowOf(subjects, from, to) }),
  });
}

/** An end that the view leaves open is that of the readings. */
function windowOf(subjects: readonly ComparedRunSeries[], from: number | null, to: number | null): readonly [number, number] {
  const whole = align(subjects.map(seriesRun));
  const { seconds } = whole.time;
  return [from ?? Math.min(whole.from * seconds, (to ?? 0) - 1), to ?? Math.max(whole.to * seconds, (from ?? 0) + 1)];
}
