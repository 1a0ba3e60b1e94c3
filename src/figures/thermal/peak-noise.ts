/** How much of a temperature's scatter under load is noise that lasts from reading to reading. */
import { seriesMean } from '../../statistics/series-mean.ts';
import { isReason, type Reason } from '../absent.ts';
import type { Scatter } from '../extreme-value.ts';
import { isResponse } from './response.ts';
import type { Course } from './thermal.ts';

/** The correction for what the fit took out of its own residuals stops here, as for means and fits. */
const SMALLEST_CORRECTION = 0.2;
const FEWEST_DOF = 2;

/**
 * Scatter of the readings about the fitted response, and of how many independent readings each is worth. Null where nothing could be fitted:
 * then noise that lasts cannot be told from a temperature that moved.
 */
export function noiseAboutFit(course: Course | Reason): Scatter | null {
  if (isReason(course) || !isResponse(course.response)) return null;
  const { asymptote, terms, skipped, series } = course.response;
  const curve = (t: number) =>
    terms.reduce((rest, { amplitude, timeConstant }) => rest - amplitude * Math.exp(-t / timeConstant), asymptote);
  const residuals = series.readings.y.map((value, i) => value - curve(series.t[i]!)).filter((_, i) => series.t[i]! >= skipped);
  // A quick part that ended in a gap at the beginning, reckoned back to it, may be beyond all numbers.
  if (residuals.length < 2 || !residuals.every(Number.isFinite)) return null;
  const { n, effectiveCount } = seriesMean(residuals);
  const squares = residuals.reduce((sum, value) => sum + value * value, 0);
  const parameters = 1 + 2 * terms.length;
  const left = Math.max(SMALLEST_CORRECTION, 1 - parameters / effectiveCount);
  return {
    deviation: Math.sqrt(squares / n / left),
    worth: effectiveCount / n,
    dof: Math.max(FEWEST_DOF, effectiveCount - parameters),
  };
}
