/** How much of the beginning of a load does not follow the rest: a boost, or a part of the chip that is over in seconds. */
import { type RiseCurve, type RiseProfile, riseProfile } from '../../statistics/rise-profile.ts';
import { scatterOf } from '../scatter.ts';
import { binsOf } from './bins.ts';
import type { LoadSeries } from './load-series.ts';

/** Seconds that are tried, at most a sixth of the load. */
const TRIED = [0, 15, 30, 60, 120, 240, 300, 480];
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

/**
 * Linear heat flow forgets a boost: after it the response is again a sum of exponentials, with other amplitudes. So the rest is fitted,
 * drawn back over the stretch before it, and the first stretch is taken that lies on it. 0 too where none does.
 * `step`: that of the sensor, K. Some 10 ms for each stretch that is tried; one is tried mostly.
 */
export function skippedOf(series: LoadSeries, step: number): number {
  return TRIED.find((seconds) => seconds <= MOST_SHARE * series.lasted && follows(series, step, seconds)) ?? 0;
}

function follows({ t, readings, lasted, step: spacing }: LoadSeries, step: number, seconds: number): boolean {
  const until = seconds + Math.max(LEAST_STRETCH, seconds, 3 * spacing);
  const rest = binsOf({ t, readings, step: spacing }, until, lasted);
  const profile = riseProfile(rest.t, rest.y, { start: 0, step });
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
