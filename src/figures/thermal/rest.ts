/** The response of a load without what of its beginning does not follow the rest: a boost, or a part of the chip that is over in seconds. */
import { type RiseCurve, type RiseProfile, riseProfile } from '../../statistics/rise-profile.ts';
import { scatterOf } from '../scatter.ts';
import { binsOf } from './bins.ts';
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
  /** Fit of what comes after all stretches that could be left out, where nobody saw what the load was and it tells the time constant. */
  readonly rival: RiseProfile | null;
  /** Whether a slower second part is more than what a hidden boost may feign: the fit of what comes last bears it too, or the load was seen. */
  readonly slowerBorne: boolean;
}

/**
 * Linear heat flow forgets a boost: after it the response is again a sum of exponentials, with other amplitudes. So the rest is fitted,
 * drawn back over the stretch before it, and the first stretch is taken that lies on it. Where nobody saw what the load was (`seen` is null),
 * the fit of what comes last must agree with it as well, in the time constant of its main part: a boost that passes for a faster part bends
 * that. `step`: that of the sensor, K. `seen`: s until which the load itself was seen to change. Some 10 ms for each stretch that is tried.
 */
export function restOf(series: LoadSeries, step: number, seen: number | null): Rest {
  const fits = new Map<number, Rest['profile']>();
  const fitAt = (from: number): Rest['profile'] => {
    const known = fits.get(from) ?? fitFrom(series, step, from);
    fits.set(from, known);
    return known;
  };
  const first = seen ?? 0;
  const tried = [first, ...TRIED.filter((seconds) => seconds > first && seconds <= MOST_SHARE * series.lasted)];
  const last = seen === null ? fitAt(tried[tried.length - 1]!) : null;
  const told = (share: number) => (last && !('failed' in last) && tells(last, series.lasted, share) ? last : null);
  const [rival, doubt] = [told(TELLING), told(DOUBTING)];
  const belongs = (seconds: number) =>
    followed(series, step, seconds, fitAt) &&
    (!rival || agrees(fitAt(seconds), rival, series.lasted)) &&
    !(doubt && contradicts(fitAt(seconds), doubt, series.lasted));
  const skipped = tried.find(belongs) ?? (doubt ? tried[tried.length - 1]! : first);
  const profile = fitAt(skipped);
  return { skipped, profile, rival, slowerBorne: last === null || bothSlow(profile, last) };
}

function fitFrom({ t, readings, lasted, step: spacing }: LoadSeries, step: number, from: number): Rest['profile'] {
  const rest = binsOf({ t, readings, step: spacing }, from, lasted);
  return riseProfile(rest.t, rest.y, { start: 0, step });
}

/** What a step response leaves out of a real device, of its time constant. */
const MODEL_OF_CONSTANT = 0.02;
/** A time constant that is known to this share of itself must hold that of the earlier fit; … */
const TELLING = 0.15;
/** … known no better than to this share, it contradicts nothing; between the two, where neither interval reaches the other. */
const DOUBTING = 0.5;

/** Whether two fits both bear a slower part, with time constants that may be one. */
function bothSlow(profile: Rest['profile'], later: Rest['profile']): boolean {
  if ('failed' in profile || 'failed' in later || !profile.two || !later.two) return false;
  const [own, other] = [profile.terms[1]!.timeConstant, later.terms[1]!.timeConstant];
  return own.low <= other.high && own.high >= other.low;
}

function tells({ best, terms }: RiseProfile, lasted: number, share: number): boolean {
  const { value, low, high } = terms[mainOf(best, lasted)]!.timeConstant;
  return high - low < 2 * share * value;
}

/** Whether no part of what comes later can be the main part of a fit: what it showed then was a boost. */
function contradicts(profile: Rest['profile'], later: RiseProfile, lasted: number): boolean {
  if ('failed' in profile) return true;
  const own = profile.terms[mainOf(profile.best, lasted)]!.timeConstant;
  return later.terms.every(({ timeConstant: { value, low, high } }) => {
    const room = MODEL_OF_CONSTANT * value;
    return own.low > high + room || own.high < low - room;
  });
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
