/** How much of a temperature's scatter under load is noise that lasts from reading to reading. */
import { seriesMean } from '../../statistics/series-mean.ts';
import { isReason, type Reason } from '../absent.ts';
import type { Scatter } from '../extreme-value.ts';
import { LATE_PARAMETERS, lateCourse } from './late-course.ts';
import { isResponse, type Response } from './response.ts';
import type { Course } from './thermal.ts';

/** The correction for what the course took out of its own residuals stops here, as for means and fits. */
const SMALLEST_CORRECTION = 0.2;
const FEWEST_DOF = 2;

/**
 * Scatter of the readings about their own course, and of how many independent readings each is worth. The course is the fitted response; where
 * none could be fitted, a cubic through the late half of the load. Null where the load changed: then noise that lasts cannot be told from
 * a temperature that moved.
 */
export function lastingNoise(course: Course | Reason): Scatter | null {
  if (isReason(course)) return null;
  const { response, series } = course;
  if (isResponse(response)) return scatterOf(aboutResponse(response), 1 + 2 * response.terms.length);
  if (response.absent === 'load-changed') return null;
  return scatterOf([...(lateCourse(series.readings)?.residuals ?? [])], LATE_PARAMETERS);
}

function aboutResponse({ asymptote, terms, skipped, series }: Response): number[] {
  const curve = (t: number) =>
    terms.reduce((rest, { amplitude, timeConstant }) => rest - amplitude * Math.exp(-t / timeConstant), asymptote);
  return [...series.readings.y].map((value, i) => value - curve(series.t[i]!)).filter((_, i) => series.t[i]! >= skipped);
}

/** `parameters`: how many the course took. */
function scatterOf(residuals: readonly number[], parameters: number): Scatter | null {
  // A quick part that ended in a gap at the beginning, reckoned back to it, may be beyond all numbers.
  if (residuals.length < 2 || !residuals.every(Number.isFinite)) return null;
  const { n, effectiveCount } = seriesMean(residuals);
  const squares = residuals.reduce((sum, value) => sum + value * value, 0);
  const left = Math.max(SMALLEST_CORRECTION, 1 - parameters / effectiveCount);
  return {
    deviation: Math.sqrt(squares / n / left),
    worth: effectiveCount / n,
    dof: Math.max(FEWEST_DOF, effectiveCount - parameters),
  };
}
