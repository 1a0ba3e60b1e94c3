/** Temperature rise over ambient, and what of it each watt causes. */
import { divide, subtract } from '../../quantities/arithmetic.ts';
import { absent, isReason, type Of, type Reason } from '../absent.ts';
import { rangeMarks } from '../accurate-range.ts';
import type { Measured } from '../average.ts';
import { joinFrom, orRefused } from '../joined.ts';
import { type Meter, meterMean } from '../power/meters.ts';
import { figureOf } from '../present.ts';
import { addressOf, type Entry } from '../soak.ts';
import { withParts } from '../sources.ts';
import { ambientChannel, ambientOver } from './ambient.ts';
import { climbingPast } from './end.ts';
import { lagPart } from './lag.ts';
import { isSettled, settledWords } from './settle.ts';
import { steadyMean } from './steady.ts';
import type { Course } from './thermal.ts';

/** Steady temperature less the ambient over the same rows. */
function riseOf(course: Course): Measured | Reason {
  const { soak, settling } = course;
  const steady = steadyMean(course);
  if (isReason(steady) || !isSettled(settling)) return steady;
  const ambient = ambientOver(soak, settling.rows, 'ambient.steady');
  if (isReason(ambient)) return ambient;
  const difference = orRefused(subtract(steady.quantity, ambient.quantity));
  if (isReason(difference)) return difference;
  const rise = withParts(difference, lagPart(course, settling.rows));
  return {
    quantity: rise,
    from: joinFrom(steady.from, ambient.from),
    of: { ...steady.of, ...ambient.of, ...settledWords(settling) },
  };
}

export function temperatureRise(course: Course): Entry {
  const { soak, channel, index, settling } = course;
  const address = addressOf('temperature_rise', channel, index);
  if (isSettled(settling)) return [address, figureOf('temperature_rise', soak, riseOf(course))];
  const bound = ambientChannel(soak) ? climbingPast(course, 'rise') : null;
  return [address, absent('temperature_rise', { ...settling.reason, ...(bound ? { bound } : {}) })];
}

/** Rise ÷ mean power over the same rows, K/W; says which power. */
export function risePerWatt(course: Course, meter: Meter | Reason): Entry {
  const { soak, channel, index } = course;
  const address = addressOf('rise_per_watt', channel, index);
  return [address, figureOf('rise_per_watt', soak, perWatt(course, meter), isReason(meter) ? {} : { inferred: meter.inferred })];
}

function perWatt(course: Course, meter: Meter | Reason): Measured | Reason {
  const rise = riseOf(course);
  if (isReason(rise)) return rise;
  if (course.stopped) return course.stopped;
  if (isReason(meter)) return meter;
  if (!isSettled(course.settling)) return course.settling.reason;
  const power = meterMean(course.soak, meter, course.settling.rows, 'load_power.steady');
  if (isReason(power)) return power;
  if (!(power.quantity.value > 0)) return { absent: 'out-of-range', why: 'The mean power over the steady rows is not above zero.' };
  const quotient = orRefused(divide(rise.quantity, power.quantity));
  if (isReason(quotient)) return quotient;
  const of: Of = { ...rise.of, ...rangeMarks(power), power: meter.name, ...(meter.at ? { power_at: meter.at } : {}) };
  return { quantity: quotient, from: joinFrom(rise.from, power.from), of };
}
