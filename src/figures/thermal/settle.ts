/** When a temperature settled under load, by a named criterion. */
import { type Of, type Reason, tooShort } from '../absent.ts';
import { duration, plain } from '../in-words.ts';
import { firstRowAt } from '../phases.ts';
import { movingMean, smoothingSpan } from '../smooth.ts';
import type { Rows, Soak } from '../soak.ts';
import { isHeld } from './at-limit.ts';
import { CRITERION_NAMES, type Criterion, criterionOf, type Rule } from './criteria.ts';
import { type End, holdsFrom, type Judged, judge } from './judge.ts';
import type { LoadSeries } from './load-series.ts';
import { isResponse, type Response } from './response.ts';

/** Settled: since when, and over which rows steady values are averaged. */
export interface Settled {
  readonly criterion: Criterion;
  /** Seconds from the beginning of the load to the first window that holds, and so do all after it. */
  readonly opens: number;
  /** Standard uncertainty of that time, s, and its 95 % interval, which is lopsided: noise can only lengthen a search for calm. */
  readonly u: number;
  readonly interval: readonly [number, number];
  /** The last window of the load. */
  readonly rows: Rows;
  /** Its length, s. */
  readonly averaging: number;
  /** Whether the governor held the temperature there, so that it says nothing of the cooling. */
  readonly held: boolean;
}

/** Not settled: the reason, and what the course at the end still says. */
export interface Unsettled {
  readonly reason: Reason;
  /** Before this many seconds of load it was not steady; null where nothing can be said. */
  readonly notBefore: number | null;
  /** Smoothed rise (or temperature) at the end, and whether it was still climbing. */
  readonly last: number;
  readonly climbing: boolean;
}

export function isSettled(value: Settled | Unsettled): value is Settled {
  return 'opens' in value;
}

/** Steady values of criteria without a window of their own are means over this, s. */
const AVERAGING = 900;

/** Judges a channel by the run's criterion. */
export function settle(soak: Soak, series: LoadSeries, response: () => Response | Reason): Settled | Unsettled {
  const criterion = criterionOf(soak.context.steady);
  if (!criterion) return unsettled(series, unknownCriterion(soak.context.steady ?? ''));
  const { rule } = criterion;
  const needed = shortest(rule);
  if (spanOf(series) < needed) return unsettled(series, spansTooLittle(series, criterion, needed));
  const end = rule.kind === 'within' ? endOf(series, response()) : null;
  if (end && 'absent' in end) return unsettled(series, end);
  const span = smoothingSpan(series.step, needed || AVERAGING);
  const judged = judge(rule, series.t, movingMean(series.t, series.readings.y, span), end);
  if (judged.at.length === 0) return unsettled(series, spansTooLittle(series, criterion, judged.window));
  const first = holdsFrom(judged);
  if (first === null) return notSteady(series, criterion, judged);
  return settledAt(soak, series, criterion, judged, first, span);
}

/** Seconds from the first to the last reading under load. */
function spanOf({ t, lasted }: LoadSeries): number {
  return lasted - t[0]!;
}

function spansTooLittle(series: LoadSeries, { words }: Criterion, needed: number): Reason {
  const why = `The readings under load span ${duration(spanOf(series))}; steady means that ${words}, which takes ${duration(needed)} at least.`;
  return tooShort(why, needed);
}

/** Seconds of load without which a rule cannot be judged once. */
function shortest(rule: Rule): number {
  if (rule.kind === 'within') return 0;
  return rule.kind === 'readings' ? 2 * rule.spacing : rule.window;
}

function unknownCriterion(name: string): Reason {
  return {
    absent: 'no-condition',
    why: `There is no criterion of steady state named ${name}; the names are ${CRITERION_NAMES.join(', ')}.`,
  };
}

/** The end value from the fit; refused where the load lasted less than four time constants. */
function endOf(series: LoadSeries, response: Response | Reason): End | Reason {
  if (!isResponse(response)) return response;
  const needed = 4 * response.timeConstant;
  if (series.lasted >= needed) return response;
  const why = `The load lasted ${duration(series.lasted)}, less than four time constants (${duration(needed)}), so the end value is not known well enough.`;
  return tooShort(why, needed);
}

function unsettled(series: LoadSeries, reason: Reason, notBefore: number | null = null): Unsettled {
  const { y } = series.readings;
  const smooth = movingMean(series.t, y, smoothingSpan(series.step, AVERAGING));
  const last = smooth[smooth.length - 1]!;
  const earlier = smooth[firstRowAt(series.t, series.lasted - Math.min(series.lasted / 2, AVERAGING))]!;
  return { reason, notBefore, last, climbing: last > earlier };
}

function notSteady(series: LoadSeries, criterion: Criterion, judged: Judged): Unsettled {
  const { at, change, most } = judged;
  const final = change[change.length - 1]!;
  const perHour = criterion.rule.kind === 'slope';
  const found = perHour ? `${plain(final * 3600)} K per hour` : `${plain(final)} K`;
  const allowed = perHour ? `${plain(most * 3600)} K per hour` : `${plain(most)} K`;
  const why = `Not steady within ${duration(series.lasted)}: ${criterion.words}; at the end it was ${found}, and ${allowed} would have done.`;
  return unsettled(series, { absent: 'not-steady', why }, at[at.length - 1]!);
}

function settledAt(soak: Soak, series: LoadSeries, criterion: Criterion, judged: Judged, first: number, span: number): Settled {
  const opens = judged.at[first]!;
  const averaging = Math.min(judged.window || AVERAGING, series.lasted - opens || AVERAGING);
  const { phase } = series;
  const from = Math.max(phase.fromRow, firstRowAt(soak.log.time.seconds, phase.from + series.lasted - averaging - 1e-6));
  const smooth = noiseOfSmoothed(series, span);
  const interval = openingBetween(judged, first, excessOf(criterion.rule, smooth, span), series.step);
  const u = Math.max((interval[1] - interval[0]) / WIDTH, series.step / Math.sqrt(12));
  const rows = { from, to: phase.toRow };
  return { criterion, opens, u, interval, rows, held: isHeld(soak, series.channel, rows), averaging };
}

/** Width of a normal 95 % interval, in standard deviations. */
const WIDTH = 2 * 1.959964;

/** Standard deviation of the smoothed series about its slow course in the second half of the load, K; corrected for what the course takes. */
function noiseOfSmoothed({ t, readings, lasted }: LoadSeries, span: number): number {
  const from = firstRowAt(t, lasted / 2);
  const [late, y] = [t.subarray(from), readings.y.subarray(from)];
  const smooth = movingMean(late, y, span);
  const course = movingMean(late, smooth, COURSE * span);
  let squares = 0;
  for (let i = 0; i < smooth.length; i++) squares += (smooth[i]! - course[i]!) ** 2;
  return Math.sqrt(squares / Math.max(1, smooth.length) / (1 - 1 / COURSE));
}

/** The slow course is a moving mean over this many times the smoothing. */
const COURSE = 8;

/** By how much noise may have made the judged change smaller or larger than it was, at 95 %. Unit: that of the change. */
interface Excess {
  readonly less: number;
  readonly more: number;
}

/**
 * A spread of several noisy values is mostly too large: that of a flat course reads up to five standard deviations, that of a steep
 * one scatters as the difference of its ends (range of normal samples: H. A. David, Order Statistics; from memory). The multiples
 * were chosen by the coverage table.
 */
function excessOf(rule: Rule, smooth: number, span: number): Excess {
  switch (rule.kind) {
    case 'change':
      return { less: 2 * smooth, more: 4.5 * smooth };
    case 'readings':
      return { less: 2 * Math.SQRT2 * smooth, more: 3 * Math.SQRT2 * smooth };
    case 'slope': {
      const slope = (smooth * Math.sqrt(12 / Math.max(2, rule.window / (span || rule.window)))) / rule.window;
      return { less: 2 * slope, more: 3 * slope };
    }
    case 'within':
      return { less: 2 * smooth, more: 3 * smooth };
  }
}

/** When the change passes its limit for good if noise had added or taken that much; a row to each side, since it is only seen in rows. */
function openingBetween(
  { at, change, most }: Judged,
  first: number,
  { less, more }: Excess,
  step: number,
): readonly [number, number] {
  const early = holdsFrom({ change, most: most + more }) ?? first;
  const late = holdsFrom({ change, most: most - less }) ?? change.length - 1;
  return [Math.max(0, at[early]! - step), at[late]! + step];
}

/** What settled figures say of the criterion. */
export function settledWords(settled: Settled): Of {
  const averaging = `mean over the last ${duration(settled.averaging)} of the load`;
  return { criterion: settled.criterion.name, averaging, ...heldWords(settled) };
}

/** What a temperature that settled at its limit means. */
export function heldWords({ held }: Settled): Of {
  return held ? { held: 'held at its limit by the governor: the clock and the power are what settles' } : {};
}
