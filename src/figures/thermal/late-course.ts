/** The late part of a load, and how its readings lie about their own slow course. */
import { polynomialFit } from '../../statistics/polynomial-fit.ts';
import { firstRowAt } from '../phases.ts';
import type { Readings } from '../readings.ts';

/** The late part of a load: which share of it, and how many seconds at most. */
export interface Late {
  readonly share: number;
  readonly longest: number;
}

const TELLING: Late = { share: 1 / 2, longest: 1800 };
/** Fewer readings tell nothing about a cubic: twice what it takes. */
const FEWEST = 8;
/** Degree of the course: that of a slow temperature over half of its load is a cubic, to a few millikelvin. */
const DEGREE = 3;
/** What the course takes of what the readings tell. */
export const LATE_PARAMETERS = DEGREE + 1;

/** What the arithmetic of the fit leaves of a value that lies on the course, as a share of it. */
const ROUNDING = 1e-12;

export interface LateCourse {
  /** Seconds that it is long. */
  readonly length: number;
  /** Readings less course, in the unit of the readings. */
  readonly residuals: Float64Array;
}

export interface LateOptions {
  /** What is put in the place of the late readings before the cubic is fitted: their moving means, for instance. */
  readonly smoothed?: (t: Float64Array, y: Float64Array) => Float64Array;
  /** The last half, and half an hour at most, if left out. */
  readonly part?: Late;
}

/** Residuals of the late readings of a load, one an instant, about a cubic. Null for fewer than eight. */
export function lateCourse(
  { t, y }: Pick<Readings, 't' | 'y'>,
  { smoothed = (_, late) => late, part = TELLING }: LateOptions = {},
): LateCourse | null {
  const [begin, end] = [t[0]!, t[t.length - 1]!];
  const from = firstRowAt(t, end - Math.min((end - begin) * part.share, part.longest));
  const late = t.subarray(from);
  if (late.length < FEWEST) return null;
  const length = end - late[0]!;
  const x = late.map((time) => (2 * (time - late[0]!)) / length - 1);
  const values = smoothed(late, y.subarray(from));
  const { coefficients } = polynomialFit(x, values, DEGREE);
  const residuals = values.map((value, i) => {
    const residual = value - coefficients.reduceRight((sum, c) => sum * x[i]! + c, 0);
    return Math.abs(residual) > ROUNDING * Math.abs(value) ? residual : 0;
  });
  return { length, residuals };
}
