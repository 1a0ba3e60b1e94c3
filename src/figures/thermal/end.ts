/** What the temperature was at the end of the load, whether or not it had settled, and above what it must then end. */

import { subtract } from '../../quantities/arithmetic.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { polynomialFit } from '../../statistics/polynomial-fit.ts';
import { type Bound, isReason, noReadings, type Reason } from '../absent.ts';
import { rangeWords } from '../accurate-range.ts';
import { fromOf, gapsOf, type Measured, placeOf } from '../average.ts';
import { duration } from '../in-words.ts';
import { orRefused } from '../joined.ts';
import { firstRowAt } from '../phases.ts';
import { figureOf } from '../present.ts';
import { type Readings, readingsOf } from '../readings.ts';
import { scatterOf } from '../scatter.ts';
import { movingMean, smoothingSpan } from '../smooth.ts';
import { addressOf, type Entry, type Rows } from '../soak.ts';
import { errorsOf, intervalOf, quantityOf, samplingPart, stepOf, stepPart } from '../sources.ts';
import { ambientOver } from './ambient.ts';
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
function endOf({ soak, channel, index, series }: Course): End | Reason {
  const { phase, length, step: every } = series;
  const span = smoothingSpan(every, LONG);
  const from = firstRowAt(soak.log.time.seconds, phase.from + length - span);
  const rows = { from: Math.max(phase.fromRow, from), to: phase.toRow };
  const readings = readingsOf(soak.log, channel.values, rows);
  if (readings.y.length < 2) return noReadings(channel.name, `the last ${duration(span)} of the load`);
  const value = readings.y.reduce((sum, reading) => sum + reading, 0) / readings.y.length;
  const step = stepOf(soak.context, channel);
  const whole = readingsOf(soak.log, channel.values, { from: phase.fromRow, to: phase.toRow });
  const { noise, dof } = scatterOfMeans(whole, span);
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
/** The stretch at the end of a load that tells the scatter of its last mean: half of the load, at most so many seconds. */
const TELLING = 1800;
/** Readings without which that stretch tells nothing: twice what a cubic takes. */
const FEWEST = 8;
/** Coefficients of a cubic: the course of a slow temperature over half of its load is one, to a few millikelvin. */
const CUBIC = 3;

/** Standard deviation of means over `span` seconds about the load's own course, and the degrees of freedom that it is known with. */
function scatterOfMeans({ t, y }: Readings, span: number): { noise: number; dof: number } {
  const [begin, end] = [t[0]!, t[t.length - 1]!];
  const from = firstRowAt(t, end - Math.min((end - begin) / 2, TELLING));
  const late = t.subarray(from);
  if (late.length < FEWEST) return { noise: scatterOf(y).deviation, dof: 2 };
  const length = end - late[0]!;
  const smooth = movingMean(late, y.subarray(from), span);
  const { rss } = polynomialFit(
    late.map((time) => (2 * (time - late[0]!)) / length - 1),
    smooth,
    CUBIC,
  );
  const means = length / span;
  const dof = Math.max(2, means - CUBIC - 1);
  return { noise: Math.sqrt(((rss / late.length) * means) / Math.max(1, means - CUBIC - 1)), dof };
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
