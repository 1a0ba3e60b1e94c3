/** How much of a temperature's scatter under load is noise that lasts from reading to reading. */
import { seriesMean } from '../../statistics/series-mean.ts';
import { isReason, type Reason } from '../absent.ts';
import type { Scatter } from '../extreme-value.ts';
import { isResponse } from './response.ts';
import type { Course } from './thermal.ts';

/**
 * Scatter of the readings about the fitted response, and of how many independent readings each is worth. Null where nothing could be fitted:
 * then noise that lasts cannot be told from a temperature that moved.
 */
export function noiseAboutFit(course: Course | Reason): Scatter | null {
  if (isReason(course) || !isResponse(course.response)) return null;
  const { series, response } = course;
  const { asymptote, terms, skipped } = response;
  const curve = (t: number) =>
    terms.reduce((rest, { amplitude, timeConstant }) => rest - amplitude * Math.exp(-t / timeConstant), asymptote);
  const residuals = series.readings.y.map((value, i) => value - curve(series.t[i]!)).filter((_, i) => series.t[i]! >= skipped);
  if (residuals.length < 2) return null;
  const { mean, n, effectiveCount } = seriesMean(residuals);
  const squares = residuals.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { deviation: Math.sqrt(squares / (n - 1)), worth: effectiveCount / n };
}
