/** When a temperature settled under load, by a named criterion. */
import { trend } from '../../statistics/trend.ts';
import type { Of, Reason } from '../absent.ts';
import { duration, plain } from '../in-words.ts';
import { firstRowAt } from '../phases.ts';
import type { Rows, Soak } from '../soak.ts';
import { stepOf } from '../sources.ts';
import { isHeld } from './at-limit.ts';
import { type EvenCourse, evenCourse } from './course.ts';
import { CRITERION_NAMES, type Criterion, criterionOf, type Rule } from './criteria.ts';
import { excessOf, hiddenIn, stepError } from './hidden.ts';
import { type End, holdsFrom, type Judged, judge } from './judge.ts';
import type { LoadSeries } from './load-series.ts';
import { modelOpening } from './model-opening.ts';
import { type Opening, openingOf } from './opening.ts';
import { isResponse, type Response } from './response.ts';

/** Settled: since when, and over which rows steady values are averaged. */
export interface Settled {
  readonly criterion: Criterion;
  /** When the first window opened that holds, as all after it do; or why that cannot be told. */
  readonly opening: Opening | Reason;
  /** Whether that was read off the fitted response, since the readings leave it open. */
  readonly byFit: boolean;
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
  /** Whether it was still climbing at the end, more than noise can feign. */
  readonly climbing: boolean;
}

export function isSettled(value: Settled | Unsettled): value is Settled {
  return 'opening' in value;
}

/** Steady values of criteria without a window of their own are means over this, s. */
const AVERAGING = 900;
/** Of the stretch that a steady value is averaged over this share must have been read. */
const READ = 0.5;

/** Judges a channel by the run's criterion. */
export function settle(soak: Soak, series: LoadSeries, response: () => Response | Reason): Settled | Unsettled {
  const criterion = criterionOf(soak.context.steady);
  const step = stepOf(soak.context, series.channel);
  const unsettled = (reason: Reason, notBefore: number | null = null): Unsettled => ({
    reason,
    notBefore,
    climbing: climbsIn(series, step),
  });
  if (!criterion) return unsettled(unknownCriterion(soak.context.steady ?? ''));
  const { rule } = criterion;
  const needed = shortest(rule);
  if (series.length < needed) return unsettled(spansTooLittle(series, criterion, needed));
  const end = rule.kind === 'within' ? endOf(series, response()) : null;
  if (end && 'absent' in end) return unsettled(end);
  const course = evenCourse(series, needed || AVERAGING);
  const judged = judge(rule, course, end);
  if (judged.at.length === 0) return unsettled(spansTooLittle(series, criterion, judged.window));
  const excess = excessOf(rule, hiddenIn(series, course.span, step), end?.u ?? 0);
  const opening = openingOf(judged, excess, (time) => stepAbout(course, time, judged.window));
  if (opening.outcome === 'never') return unsettled(notSteady(series, criterion, judged), opening.notBefore);
  const fitted = openingOfFit(rule, response(), opening.notBefore, step, course);
  if (opening.outcome === 'undecided' && !fitted) return unsettled(undecided(criterion, judged, step), opening.notBefore);
  const isByNoise = holdsFrom(judged.change, judged.most) === null;
  const drift = isByNoise ? driftAbove(series, rule, judged, step) : null;
  if (drift !== null) return unsettled(drifts(criterion, judged, drift), opening.notBefore);
  const averaging = Math.min(judged.window || AVERAGING, series.length - opening.notBefore || AVERAGING);
  const last = course.t[course.t.length - 1]!;
  const read = readShare(course, last - averaging - 1e-6, last);
  if (read < READ) return unsettled(notRead(series, averaging, read), opening.notBefore);
  const from = firstRowAt(soak.log.time.seconds, series.phase.from + series.length - averaging - 1e-6);
  const rows = { from: Math.max(series.phase.fromRow, Math.min(from, series.phase.toRow - 1)), to: series.phase.toRow };
  const held = isHeld(soak, series.channel, rows);
  const seen = opening.outcome === 'closed' ? opening.at : null;
  const told = closer(seen, held ? null : fitted) ?? openAbove(criterion, opening.notBefore, judged, step);
  return { criterion, opening: told, byFit: told === fitted, rows, averaging, held };
}

/** The readings tell it, unless the fit does and they leave open several times as much. */
const SEVERAL = 2;

function closer(seen: Opening | null, fitted: Opening | null): Opening | null {
  const width = ({ interval }: Opening) => interval[1] - interval[0];
  return seen && !(fitted && width(seen) > SEVERAL * width(fitted)) ? seen : fitted;
}

/**
 * Since when the criterion holds on the fitted response, but not before it may: null where that tells nothing. The fit sees through the steps
 * of a sensor, and not into a gap: a device that only nearly follows it leaves it there.
 */
function openingOfFit(
  rule: Rule,
  response: Response | Reason,
  notBefore: number,
  step: number,
  course: EvenCourse,
): Opening | null {
  if (!isResponse(response)) return null;
  const found = modelOpening(rule, response.curves, step, response.series.lasted);
  if (!found || found.interval[1] <= notBefore || readShare(course, ...found.interval) < READ) return null;
  const interval = [Math.max(notBefore, found.interval[0]), found.interval[1]] as const;
  return { ...found, value: Math.max(interval[0], found.value), interval };
}

function spansTooLittle(series: LoadSeries, { words }: Criterion, needed: number): Reason {
  const why = `The load lasted ${duration(series.length)}; steady means that ${words}, which takes ${duration(needed)} at least.`;
  return { absent: 'too-short', why, of: { needed_s: needed } };
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
function endOf(series: LoadSeries, response: Response | Reason): (End & { readonly u: number }) | Reason {
  if (!isResponse(response)) {
    const { bound: _, ...rest } = response;
    return rest;
  }
  const { end, height } = response;
  if (end.untold)
    return { absent: 'too-short', why: 'The load leaves open where the response ends, so nothing can be held against its end.' };
  const needed = 4 * response.timeConstant;
  if (series.lasted >= needed) {
    const u = Math.hypot(...[...end.fit, ...end.more].map(({ share }) => share));
    return { asymptote: end.value, height, u };
  }
  const why = `The load lasted ${duration(series.lasted)}, less than four time constants (${duration(needed)}), so the end value is not known well enough.`;
  return { absent: 'too-short', why, of: { needed_s: needed } };
}

/** The stretch at the end of a load that is asked whether it still climbs: a third of it, at most so many seconds. */
const LAST = 900;
/** A slope counts when it is this many standard uncertainties; the bend of a course is in these, so that Student's factor would hide every climb. */
const CLIMBS = 4;

/** Whether the course still climbs at the end: by a line over its last stretch, beyond its noise and by more than a step of the sensor. */
function climbsIn({ t, readings, lasted }: LoadSeries, step: number): boolean {
  const from = firstRowAt(t, lasted - Math.min(lasted / 3, LAST));
  if (t.length - from < 4) return false;
  const { slope, u } = trend(t.subarray(from), readings.y.subarray(from));
  return slope > CLIMBS * u && slope * (lasted - t[from]!) > step;
}

/** A line that climbs by more than the criterion allows counts against it from so many standard uncertainties on: 9 times in 10. */
const DRIFTS = 1.28;

/**
 * The change along a line through the last window, K, where it is more than the criterion allows: loud noise can hide from the range of a window
 * that its course still climbs, and not from a line through all its readings. Null where it may be no more.
 */
function driftAbove({ t, readings, lasted }: LoadSeries, rule: Rule, { most, window }: Judged, step: number): number | null {
  if (rule.kind !== 'change' && rule.kind !== 'readings') return null;
  const from = firstRowAt(t, lasted - window);
  if (t.length - from < 4) return null;
  const [late, y] = [t.subarray(from), readings.y.subarray(from)];
  const { slope, u, end } = trend(late, y);
  const squares = y.reduce((sum, value, i) => sum + (value - end - slope * (late[i]! - late[late.length - 1]!)) ** 2, 0);
  const unsure = stepError(Math.sqrt(squares / y.length), step) + DRIFTS * u * window;
  const judged = rule.kind === 'readings' && rule.judged === 'increase' ? 0.5 : 1;
  return judged * (Math.abs(slope) * window - unsure) > most ? slope * window : null;
}

function amountOf({ rule }: Criterion, kelvin: number): string {
  return rule.kind === 'slope' ? `${plain(kelvin * 3600)} K per hour` : `${plain(kelvin)} K`;
}

function notSteady(series: LoadSeries, criterion: Criterion, { least, most }: Judged): Reason {
  const found = amountOf(criterion, least[least.length - 1]!);
  const why = `Not steady within ${duration(series.length)}: ${criterion.words}; at the end it was ${found}, and ${amountOf(criterion, most)} would have done.`;
  return { absent: 'not-steady', why };
}

function undecided(criterion: Criterion, { change, most }: Judged, step: number): Reason {
  const found = amountOf(criterion, change[change.length - 1]!);
  const why = `Steady means that ${criterion.words}. At the end it read ${found} where ${amountOf(criterion, most)} would do, which a sensor with steps of ${plain(step)} K cannot tell apart.`;
  return { absent: 'undecided', why };
}

function drifts(criterion: Criterion, { window }: Judged, drift: number): Reason {
  const why = `Steady means that ${criterion.words}. Noise hides whether that held at the end; a line through the last ${duration(window)} ${drift > 0 ? 'climbs' : 'falls'} by ${plain(Math.abs(drift))} K.`;
  return { absent: 'undecided', why };
}

/** Seconds between the readings that a judgement at a time rests on, at the most: those of a window before it and of one after it. */
function stepAbout({ t, spacing, step }: EvenCourse, time: number, window: number): number {
  const beside = spacing.subarray(firstRowAt(t, time - window), firstRowAt(t, time + window) + 1);
  return beside.reduce((most, each) => Math.max(most, each), step);
}

/** Share of the time between two times, s since the load began, that was read. */
function readShare({ t, seen }: EvenCourse, from: number, to: number): number {
  const rows = seen.subarray(firstRowAt(t, from), firstRowAt(t, to) + 1);
  return rows.reduce((sum, one) => sum + one, 0) / rows.length;
}

function notRead({ channel }: LoadSeries, averaging: number, read: number): Reason {
  const why = `Of the last ${duration(averaging)} of the load, over which a steady value would be averaged, ${channel.name} was read for ${plain(100 * read)} %.`;
  return { absent: 'no-readings', why };
}

/** Steady at the end, but not told since when. */
function openAbove({ words }: Criterion, notBefore: number, { greatest }: Judged, step: number): Reason {
  const unread = greatest.includes(Number.POSITIVE_INFINITY);
  const sensor = step > 0 ? `steps of ${plain(step)} K and noise of the sensor` : 'noise of the sensor';
  const cause = unread ? 'gaps of the log leave open since when' : `${sensor} hide since when`;
  return {
    absent: 'undecided',
    why: `Steady means that ${words}. That held at the end of the load and did not hold before ${duration(notBefore)}; ${cause}.`,
    bound: { relation: '>', value: notBefore, unit: 's' },
  };
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
