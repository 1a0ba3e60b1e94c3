/** The response of a load without what of its beginning does not follow the rest: a boost, or a part of the chip that is over in seconds. */
import { type RiseCurve, type RiseProfile, riseProfile } from '../../statistics/rise-profile.ts';
import { scatterOf } from '../scatter.ts';
import { type Bins, binsOf } from './bins.ts';
import type { LoadSeries } from './load-series.ts';

/** Seconds that are tried, at most a sixth of the load. */
const TRIED = [15, 30, 60, 120, 240, 480];
const MOST_SHARE = 1 / 6;
/** A fit is drawn back over as long a stretch as was left out, and over so many seconds at least. */
const LEAST_STRETCH = 15;
/** What a step response leaves out of a real device, as a share of the step. */
const MODEL_SHARE = 0.005;
/** Times the accepted curves' reach and the readings' own scatter: by chance alone, one stretch in ten thousand is further off. */
const FAR = 2;
const SIGMAS = 4;
/** What the sensor's step leaves in a mean of few readings, in steps. */
const STEP_SHARE = 0.5;

/** The response to a load, without what of its beginning does not belong to it. */
export interface Rest {
  /** s, left out. */
  readonly skipped: number;
  readonly profile: RiseProfile | { readonly failed: string };
  /**
   * Where nobody saw what the load was: fits of what comes after all stretches that could be left out, and after a faster part that may as
   * well be a boost; those that tell the time constant.
   */
  readonly rivals: readonly RiseProfile[];
  /** Whether a slower second part is more than what a hidden boost may feign: the fit of what comes last bears it too, or the load was seen. */
  readonly slowerBorne: boolean;
}

/**
 * Linear heat flow forgets a boost: after it the response is again a sum of exponentials, with other amplitudes. So the rest is fitted,
 * drawn back over the stretch before it, and the first stretch is taken that lies on it. Where nobody saw what the load was (`seen` is null),
 * the fit of what comes last must agree with it as well, in the time constant of its main part: a boost that passes for a faster part bends
 * that. `step`: that of the sensor, K. `seen`: s until which the load itself was seen to change. `from`: s before which the course
 * surely is another one. Some 10 ms for each stretch that is tried.
 */
export function restOf(series: LoadSeries, step: number, seen: number | null, from = 0): Rest {
  const fits = new Map<number, Rest['profile']>();
  const fitAt = (from: number): Rest['profile'] => {
    const known = fits.get(from) ?? fitFrom(series, step, from);
    fits.set(from, known);
    return known;
  };
  const first = Math.max(seen ?? 0, from);
  const tried = [first, ...TRIED.filter((seconds) => seconds > first && seconds <= MOST_SHARE * series.lasted)];
  const last = seen === null ? fitAt(tried[tried.length - 1]!) : null;
  const later = last && !('failed' in last) ? last : null;
  const end = binsOf(series, tried[tried.length - 1]!, series.lasted);
  const rivalsOf = (profile: Rest['profile']): RiseProfile[] => {
    if (!later) return [];
    const after = tried.find((seconds) => seconds >= quickOf(profile, series.lasted) * QUICK_OVER);
    const fits = [later, ...(after ? [fitAt(after)] : [])];
    return fits.filter((fit): fit is RiseProfile => !('failed' in fit) && fit !== profile && tells(fit, series.lasted));
  };
  const belongs = (seconds: number): boolean => {
    const profile = fitAt(seconds);
    if (!followed(series, step, seconds, fitAt)) return false;
    if (!later) return true;
    const agreed = rivalsOf(profile).every((rival) => agrees(profile, rival, series.lasted));
    return agreed && isPlausible(profile, series.readings.y) && !contradicts(profile, later, end, step);
  };
  const skipped = tried.find(belongs) ?? (later ? tried[tried.length - 1]! : first);
  const profile = fitAt(skipped);
  const rivals = later
    ? rivalsOf(profile)
    : laterFits(
        profile,
        tried
          .filter((seconds) => seconds >= Math.max(SURELY_OVER, 2 * skipped))
          .slice(0, 1)
          .map(fitAt),
        series.lasted,
      );
  return { skipped, profile, rivals, slowerBorne: last === null || bothSlow(profile, last) };
}

/** s: what is over in seconds is over by then, and what is left out twice as long is over, too. */
const SURELY_OVER = 60;

/**
 * Fits of less that tell the time constant, where a slower part is borne: a part of the chip that is over in seconds, and too small to be told from what
 * follows, makes the faster one of two look quicker than it is.
 */
function laterFits(profile: Rest['profile'], fits: readonly Rest['profile'][], lasted: number): RiseProfile[] {
  if ('failed' in profile || !profile.two || mainOf(profile.best, lasted) !== 0) return [];
  return fits.filter((fit): fit is RiseProfile => !('failed' in fit) && tells(fit, lasted));
}

/** A part is over after this many of its time constants, so far that it no longer bends the other one. */
const QUICK_OVER = 2;

/** s: time constant of a part that is faster than the main one, and may as well be a boost; 0 without one. */
function quickOf(profile: Rest['profile'], lasted: number): number {
  return !('failed' in profile) && profile.two && mainOf(profile.best, lasted) === 1 ? profile.best.terms[0]!.timeConstant : 0;
}

/** A part that, drawn back to the beginning of the load, is this many times all that was read is the end of a boost. */
const MOST_DRAWN_BACK = 2;

function isPlausible(profile: Rest['profile'], y: Float64Array): boolean {
  if ('failed' in profile) return false;
  const range = y.reduce((most, value) => Math.max(most, value), y[0]!) - y.reduce((least, value) => Math.min(least, value), y[0]!);
  return profile.best.terms.every(({ amplitude }) => Math.abs(amplitude) <= MOST_DRAWN_BACK * range);
}

function fitFrom({ t, readings, lasted, step: spacing }: LoadSeries, step: number, from: number): Rest['profile'] {
  const rest = binsOf({ t, readings, step: spacing }, from, lasted);
  return riseProfile(rest.t, rest.y, { start: 0, step });
}

/** What a step response leaves out of a real device, of its time constant. */
const MODEL_OF_CONSTANT = 0.02;
/** A time constant that is known no better than to this share of itself says nothing of another one. */
const TELLING = 0.15;
/** Likelihood ratio that chance reaches once in a thousand: χ² with the five degrees of freedom of two exponentials. */
const BY_CHANCE = 20.5;
/** What a step response leaves out of a real device in so long a stretch, as a share of the step; and what a step of the sensor does, in steps. */
const MODEL_OF_STRETCH = 0.0025;
const STEP_OF_STRETCH = 0.15;

/** Whether two fits both bear a slower part, with time constants that may be one. */
function bothSlow(profile: Rest['profile'], later: Rest['profile']): boolean {
  if ('failed' in profile || 'failed' in later || !profile.two || !later.two) return false;
  const [own, other] = [profile.terms[1]!.timeConstant, later.terms[1]!.timeConstant];
  return own.low <= other.high && own.high >= other.low;
}

function tells({ best, terms }: RiseProfile, lasted: number): boolean {
  const { value, low, high } = terms[mainOf(best, lasted)]!.timeConstant;
  return high - low < 2 * TELLING * value;
}

/** Whether the fit of what comes later tells that stretch, `end`, better than chance and the model leave room for: a boost bent the other one. */
function contradicts(profile: Rest['profile'], later: RiseProfile, { t, y }: Bins, step: number): boolean {
  if ('failed' in profile) return true;
  const height = profile.best.terms.reduce((sum, { amplitude }) => sum + Math.abs(amplitude), 0);
  const floor = (MODEL_OF_STRETCH * height) ** 2 + (STEP_OF_STRETCH * step) ** 2;
  const squareOf = (curve: RiseCurve) => y.reduce((sum, value, i) => sum + (value - valueAt(curve, t[i]!)) ** 2, 0) / t.length;
  return later.effectiveCount * Math.log((squareOf(profile.best) + floor) / (squareOf(later.best) + floor)) > BY_CHANCE;
}

/** Whether the time constant of a fit's main part may be that of the main part of what comes later. */
function agrees(profile: Rest['profile'], later: RiseProfile, lasted: number): boolean {
  if ('failed' in profile) return false;
  const main = later.terms[mainOf(later.best, lasted)]!.timeConstant;
  const room = MODEL_OF_CONSTANT * main.value;
  const { value } = profile.terms[mainOf(profile.best, lasted)]!.timeConstant;
  return value >= main.low - room && value <= main.high + room;
}

/** The part that made the larger share of what the load shows: a slower one may be larger beyond it. */
export function mainOf({ terms }: RiseCurve, lasted: number): number {
  const shown = terms.map(({ amplitude, timeConstant }) => Math.abs(amplitude * Math.expm1(-lasted / timeConstant)));
  return shown.length === 2 && shown[1]! > shown[0]! ? 1 : 0;
}

function followed(series: LoadSeries, step: number, seconds: number, fitAt: (from: number) => Rest['profile']): boolean {
  const { t, readings, step: spacing } = series;
  const until = seconds + Math.max(LEAST_STRETCH, seconds, 3 * spacing);
  const profile = fitAt(until);
  if ('failed' in profile) return false;
  const from = t.findIndex((at) => at >= seconds);
  const to = t.findIndex((at) => at >= until);
  const stretch = readings.y.subarray(from, to);
  if (from < 0 || stretch.length === 0) return false;
  const mean = (of: (i: number) => number) => stretch.reduce((sum, _, i) => sum + of(from + i), 0) / stretch.length;
  const read = mean((i) => readings.y[i]!);
  const expected = (curve: RiseCurve) => mean((i) => valueAt(curve, t[i]!));
  return Math.abs(read - expected(profile.best)) <= roomOf(profile, expected, readings.y, stretch.length, step);
}

/** How far a mean of so many readings may lie from the fit that is drawn back to them. */
function roomOf(
  profile: RiseProfile,
  expected: (curve: RiseCurve) => number,
  y: Float64Array,
  count: number,
  step: number,
): number {
  const value = expected(profile.best);
  const reach = profile.curves.reduce((most, curve) => Math.max(most, Math.abs(expected(curve) - value)), 0);
  const noise = Math.max(scatterOf(y).deviation / Math.sqrt(count), profile.residualDeviation);
  const height = profile.best.terms.reduce((sum, { amplitude }) => sum + Math.abs(amplitude), 0);
  return FAR * reach + SIGMAS * noise + STEP_SHARE * step + MODEL_SHARE * height;
}

function valueAt({ asymptote, terms }: RiseCurve, t: number): number {
  return terms.reduce((rest, { amplitude, timeConstant }) => rest - amplitude * Math.exp(-t / timeConstant), asymptote);
}
