/** What a step response shows, in words and as tables. */

import { duration, listed } from '../../figures/in-words.ts';
import { figureText } from '../data/figure-text.ts';
import type { Drawn } from '../drawing/drawn.ts';
import { cellAt, halfStep, TABLE_ROWS } from '../drawing/lines/at-times.ts';
import { drawLine } from '../drawing/lines/drawn-line.ts';
import { type CsvLine, lineCsv } from '../drawing/lines/line-csv.ts';
import { WIDE } from '../drawing/size.ts';
import { timeScale } from '../drawing/ticks.ts';
import { fixed, reading, withUnit } from '../drawing/wording.ts';
import { overOf } from './layout.ts';
import type { Course, StepResponse } from './plan.ts';

/** "Step response of soc to the load: fast and rated". */
export function responseTitle({ channel, courses }: StepResponse): string {
  const runs = courses.map(({ alias }) => alias).filter((alias) => alias !== '');
  return `Step response of ${channel} to the load${runs.length > 0 ? `: ${listed(runs)}` : ''}`;
}

export function responseAlt(response: StepResponse): string {
  const { rise, time, to } = response;
  const what = rise ? 'Rise over ambient' : 'Temperature';
  const runs = response.courses.map((course) => courseAlt(course, response));
  return `${what} under load over ${fixed(to, 0)} ${time.unit}, measured and fitted. ${runs.join(' ')}`;
}

function courseAlt(course: Course, { rise }: StepResponse): string {
  const last = reading(course.y.at(-1)!, course.decimals, rise ? 'K' : '°C');
  if (!course.fit) return `${course.name} ends at ${last}, without a fit: ${course.why}`;
  const { timeConstant, asymptote } = course.fit.figures;
  const end = figureText(asymptote);
  const towards = end === undefined ? '' : `, asymptote ${end}`;
  return `${course.name} ends at ${last}, time constant ${figureText(timeConstant)}${towards}.`;
}

/** How it was drawn and fitted, and which run has no fit for what reason. */
export function responseMethod({ courses, rise, meanSpan }: StepResponse): string {
  const missing = courses
    .filter(({ fit }) => fit === null)
    .map(({ alias, why }) => `No fit${alias === '' ? '' : ` for ${alias}`}: ${why}`);
  const some = courses.some(({ fit }) => fit !== null);
  const base = rise
    ? `Rise over the ambient: as stated, or as measured at that time${some ? ', and beside a fit as it reaches the device, later by its time constant' : ''}.`
    : 'No ambient is known, so temperatures stand as they are.';
  const drawn = some
    ? `Pale: readings, thinned to the extremes in each column of two pixels; heavy: the fitted step response; τ marks one time constant. Below: what the fit leaves over, in means over ${duration(meanSpan)}.`
    : `Pale: readings, thinned to the extremes in each column of two pixels; heavy: means over ${duration(meanSpan)}.`;
  return [base, drawn, ...missing].join(' ');
}

/** Readings, fit and what is left over, as drawn. */
export function responseCsv({ channel, courses, rise, time, to }: StepResponse): string {
  const unit = rise ? 'K' : '°C';
  const scale = timeScale(0, to, WIDE.timeTicks);
  const lines = courses.flatMap((course): CsvLine[] => {
    const { faint, strong } = drawLine({ ...course, over: overOf(course) }, scale, WIDE.width);
    const common = { run: course.run, channel, unit };
    const residuals = course.fit?.residuals ?? [];
    return [
      { ...common, as: 'reading', points: faint.length > 0 ? faint : strong },
      ...(faint.length > 0 ? [{ ...common, as: course.fit ? 'fit' : 'mean', points: strong }] : []),
      ...(residuals.length > 0 ? [{ ...common, unit: 'K', as: 'measured less fitted', points: residuals }] : []),
    ];
  });
  return lineCsv(time.unit, lines);
}

/** Measured and fitted values at round times. */
export function responseTable({ courses, rise, time, to }: StepResponse): Drawn['table'] {
  const unit = rise ? 'K' : '°C';
  const { ticks, decimals } = timeScale(0, to, TABLE_ROWS);
  const half = halfStep(ticks);
  const head = courses.flatMap(({ label, fit }) => [
    withUnit(`${label} measured`, unit),
    ...(fit ? [withUnit(`${label} fitted`, unit)] : []),
  ]);
  const row = (tick: number) =>
    courses.flatMap((course) => [cellAt(course, tick, half), ...(course.fit ? [fixed(course.fit.at(tick), course.decimals)] : [])]);
  return {
    caption: `Readings nearest to each time since load start, and the fit (${time.unit})`,
    head: [`Time (${time.unit})`, ...head],
    rows: ticks.map((tick) => [fixed(tick, decimals), ...row(tick)]),
  };
}
