/** What the temperature was at the end of the load, whether or not it had settled, and above what it must then end. */

import { subtract } from '../../quantities/arithmetic.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { studentQuantile } from '../../statistics/student-quantile.ts';
import { type Bound, isReason, noReadings, type Reason } from '../absent.ts';
import { rangeWords } from '../accurate-range.ts';
import { fromOf, gapsOf, type Measured, placeOf } from '../average.ts';
import type { Scatter } from '../extreme-value.ts';
import { duration } from '../in-words.ts';
import { orRefused } from '../joined.ts';
import { firstRowAt } from '../phases.ts';
import { figureOf } from '../present.ts';
import { oneAnInstant, type Readings, readingsOf } from '../readings.ts';
import { scatterOf } from '../scatter.ts';
import { movingMean, smoothingSpan } from '../smooth.ts';
import { addressOf, type Entry, type Rows } from '../soak.ts';
import { errorsOf, intervalOf, quantityOf, samplingPart, stepOf, stepPart } from '../sources.ts';
import { ambientOver } from './ambient.ts';
import { lastingNoise } from './lasting-noise.ts';
import { LATE_PARAMETERS, lateCourse } from './late-course.ts';
import { isSettled } from './settle.ts';
import type { Course } from './thermal.ts';

/** No window is asked for here: the smoothing is as long as it ever is. */
const LONG = 900;

interface End extends Measured {
  readonly rows: Rows;
}

/** °C: mean of the last minute (or five readings) of the load. */
export function endTemperature(course: Course): Entry {
  const { soak, channel, index } = course;
  return [addressOf('end_temperature', channel, index), figureOf('end_temperature', soak, endOf(course))];
}

/**
 * Its scatter is that of such means about the load's own course, so that noise which outlasts the minute is counted; the step takes its
 * place where that is larger and the readings do not dither.
 */
function endOf(course: Course): End | Reason {
  const { soak, channel, index, series } = course;
  const { phase, length, step: every } = series;
  const span = smoothingSpan(every, LONG);
  const from = firstRowAt(soak.log.time.seconds, phase.from + length - span);
  const rows = { from: Math.max(phase.fromRow, from), to: phase.toRow };
  const readings = readingsOf(soak.log, channel.values, rows);
  if (readings.y.length < 2) return noReadings(channel.name, `the last ${duration(span)} of the load`);
  const value = readings.y.reduce((sum, reading) => sum + reading, 0) / readings.y.length;
  const step = stepOf(soak.context, channel);
  const whole = oneAnInstant(readingsOf(soak.log, channel.values, { from: phase.fromRow, to: phase.toRow }));
  const { noise, dof } = wider(scatterOfMeans(whole, span), scatterOfMean(lastingNoise(course), readings.y.length));
  const address = addressOf('end_temperature', channel, index);
  const floored = scatterOf(whole.y).deviation < DITHERS * step && noise <= step / Math.sqrt(12);
  const sampling = floored ? stepPart(soak.context, address, step) : samplingPart(soak.context, address, noise, dof);
  const errors = errorsOf(soak.context, channel, value);
  return {
    quantity: quantityOf(value, channel.unit, [...errors.parts, sampling], { stated: errors.stated, step }),
    from: fromOf(soak, [channel], readings),
    of: {
      ...placeOf(channel),
      phase: 'load',
      averaging: `mean over the last ${duration(span)} of the load`,
      ...gapsOf(readings),
      ...rangeWords(soak.context, channel, value),
    },
    rows,
  };
}

/** From this scatter on, in steps of the sensor, readings dither by themselves: their mean is finer than the step. */
const DITHERS = 0.6;
interface Told {
  readonly noise: number;
  readonly dof: number;
}

/** Standard deviation of means over `span` seconds about the load's own course, and the degrees of freedom that it is known with. */
function scatterOfMeans(readings: Readings, span: number): Told {
  const late = lateCourse(readings, { smoothed: (t, y) => movingMean(t, y, span) });
  if (!late) return { noise: scatterOf(readings.y).deviation, dof: 2 };
  const means = late.length / span;
  const left = means - LATE_PARAMETERS;
  const square = late.residuals.reduce((sum, residual) => sum + residual * residual, 0) / late.residuals.length;
  return { noise: Math.sqrt((square * means) / Math.max(1, left)), dof: Math.max(2, left) };
}

/** Of a mean of so many readings with noise that lasts from one to the next. */
function scatterOfMean(lasting: Scatter | null, readings: number): Told | null {
  return lasting && { noise: lasting.deviation / Math.sqrt(Math.max(1, readings * lasting.worth)), dof: lasting.dof };
}

function wider(one: Told, other: Told | null): Told {
  const half = ({ noise, dof }: Told) => noise * studentQuantile(0.975, dof);
  return other && half(other) > half(one) ? other : one;
}

/** A temperature that still climbs ends above where it was at the end of the load; null where it does not climb, or had settled. */
export function climbingPast(course: Course, of: 'temperature' | 'rise'): Bound | null {
  if (isSettled(course.settling) || !course.settling.climbing) return null;
  const end = endOf(course);
  if (isReason(end)) return null;
  const quantity = of === 'rise' ? riseAt(course, end) : end.quantity;
  const interval = quantity && intervalOf(quantity);
  return interval ? { relation: '>', value: interval[0], unit: quantity.unit } : null;
}

function riseAt({ soak }: Course, { quantity, rows }: End): Quantity | null {
  const ambient = ambientOver(soak, rows, 'ambient.end');
  const rise = isReason(ambient) ? ambient : orRefused(subtract(quantity, ambient.quantity));
  return isReason(rise) ? null : rise;
}
