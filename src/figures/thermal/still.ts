/** How far a temperature that counts as steady may still be from where it would end: every criterion leaves some of the step. */
import { mean } from '../../statistics/mean.ts';
import { studentQuantile } from '../../statistics/student-quantile.ts';
import { trend } from '../../statistics/trend.ts';
import type { Of } from '../absent.ts';
import { plain } from '../in-words.ts';
import { firstRowAt } from '../phases.ts';
import { scatterOf } from '../scatter.ts';
import { stepOf } from '../sources.ts';
import { isResponse } from './response.ts';
import { isSettled } from './settle.ts';
import type { Course } from './thermal.ts';

/** Degrees of freedom that the slope of the last window is taken to be known with: its bends leave few. */
const FEW = 4;

/**
 * In words: the fitted end less the steady mean; without a fit, the slope over the last window. Nothing where the governor held it, or
 * nothing can be told. Rounding to a step of the sensor is counted in.
 */
export function stillWords(course: Course): Of {
  const { settling, response, series } = course;
  if (!isSettled(settling) || settling.held) return {};
  const from = firstRowAt(series.t, series.lasted - settling.averaging);
  const { readings } = isResponse(response) ? response.series : series;
  const [t, y] = [series.t.subarray(from), readings.y.subarray(from)];
  if (y.length < 2) return {};
  if (!isResponse(response)) return slopeWords(t, y);
  const rounding = stepOf(course.soak.context, course.channel) / Math.sqrt(12);
  const scatter = scatterOf(y).deviation / Math.sqrt(y.length);
  const { low, high } = endOf(course, Math.hypot(rounding, scatter));
  const steady = mean(y);
  return { still: endWords(low - steady, high - steady) };
}

/** Where the fit ends, with its 95 % interval; `ofMean`: standard uncertainty of what it is compared with, K. */
function endOf({ response }: Course, ofMean: number): { low: number; high: number } {
  if (!isResponse(response)) return { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };
  const { value, low, high, more, untold } = response.end;
  const others = 2 * Math.hypot(ofMean, ...more.map(({ share }) => share));
  return {
    low: value - Math.hypot(value - low, others),
    high: untold ? Number.POSITIVE_INFINITY : value + Math.hypot(high - value, others),
  };
}

/** To the hundredth of a kelvin. */
function endWords(lowest: number, highest: number): string {
  const [low, high] = [lowest, highest].map((value) => (Number.isFinite(value) ? Number(value.toFixed(2)) : value)) as [
    number,
    number,
  ];
  if (high === Number.POSITIVE_INFINITY) {
    return low > 0 ? `the fitted end is more than ${plain(low)} K higher` : 'where it would end is not told by the fit';
  }
  if (low > 0) return `the fitted end is ${plain(low)} K to ${plain(high)} K higher`;
  if (high < 0) return `the fitted end is ${plain(-high)} K to ${plain(-low)} K lower`;
  return `the fitted end is at most ${plain(Math.max(high, -low))} K away`;
}

const HOUR = 3600;

function slopeWords(t: Float64Array, y: Float64Array): Of {
  const { slope, u } = trend(t, y);
  const reach = studentQuantile(0.975, FEW) * u;
  if (!Number.isFinite(reach)) return {};
  const [low, high] = [(slope - reach) * HOUR, (slope + reach) * HOUR];
  if (low > 0) return { still: `still rising by ${plain(low)} K to ${plain(high)} K per hour` };
  if (high < 0) return { still: `still falling by ${plain(-high)} K to ${plain(-low)} K per hour` };
  return { still: `changing by at most ${plain(Math.max(high, -low))} K per hour` };
}
