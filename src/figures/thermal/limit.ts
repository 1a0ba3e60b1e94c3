/** Temperatures against the limit at which the device throttles. */

import type { Channel } from '../../intake/log.ts';
import { subtract } from '../../quantities/arithmetic.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { isReason, noPhase, noReadings, type Reason } from '../absent.ts';
import { fromOf, gapsOf, type Measured, placeOf, samplingWords } from '../average.ts';
import type { Extreme } from '../extreme.ts';
import { lopsided } from '../extreme-value.ts';
import { plain } from '../in-words.ts';
import { joinFrom, orRefused } from '../joined.ts';
import { stepIn } from '../origin.ts';
import { figureOf } from '../present.ts';
import { readingsOf } from '../readings.ts';
import { typicalScatter } from '../scatter.ts';
import { addressOf, type Entry, phaseOf, rowsOf, type Soak } from '../soak.ts';
import { intervalOf, quantityOf, samplingPart, stepOf } from '../sources.ts';
import { timeWhere } from '../time-where.ts';
import { ambientOver } from './ambient.ts';
import { limitOf, toleranceOf } from './at-limit.ts';
import { asymptoteOf, type Lopsided, together } from './response-figures.ts';
import type { Course } from './thermal.ts';

/** Limit less peak temperature, K; negative when the limit was passed. Its interval is that of the peak, the other way round. */
export function throttleHeadroom(soak: Soak, channel: Channel, index: number, peak: Extreme | Reason): Entry {
  const address = addressOf('throttle_headroom', channel, index);
  const outcome = headroom(soak, channel, peak);
  const known = isReason(outcome) || isReason(peak) ? null : intervalOf(outcome.quantity);
  const interval = known && !isReason(peak) ? { interval: lopsided(known, 'lowest', peak.extreme) } : {};
  return [address, figureOf('throttle_headroom', soak, outcome, interval)];
}

function headroom(soak: Soak, channel: Channel, peak: Measured | Reason): Measured | Reason {
  const limit = limitOf(soak, channel);
  if (isReason(limit)) return limit;
  if (isReason(peak)) return peak;
  const quantity = orRefused(subtract(limit, peak.quantity));
  return isReason(quantity)
    ? quantity
    : { quantity, from: peak.from, of: { ...peak.of, limit: `${plain(limit.value)} ${limit.unit}` } };
}

/** Width of a normal 95 % interval, in standard deviations. */
const WIDTH = 2 * 1.959964;

/** Time of the load phase spent at the limit or above, s; zero is a value. */
export function heldAtLimit(soak: Soak, channel: Channel, index: number): Entry {
  const address = addressOf('held_at_limit', channel, index);
  const outcome = held(soak, channel, address);
  return [address, figureOf('held_at_limit', soak, outcome, isReason(outcome) ? {} : { interval: outcome.interval })];
}

type Held = Measured & { readonly interval: readonly [number, number] };

/** Its interval is lopsided: readings within two standard deviations of their own scatter (and half a step) may belong to either side. */
function held(soak: Soak, channel: Channel, address: string): Held | Reason {
  const limit = limitOf(soak, channel);
  if (isReason(limit)) return limit;
  const phase = phaseOf(soak, 'load');
  if (!phase) return noPhase(soak, 'load');
  const readings = readingsOf(soak.log, channel.values, rowsOf(phase));
  if (readings.y.length < 2) return noReadings(channel.name, 'the load phase');
  const tolerance = toleranceOf(soak, channel);
  const step = stepIn(soak.log, channel.log) ?? 0;
  const scatter = 2 * typicalScatter(readings.y) + stepOf(soak.context, channel) / 2;
  const above = (least: number) => timeWhere(readings, (value) => value >= least, step, phase);
  const { time, u: edges } = above(limit.value - tolerance);
  const [fewest, most] = [above(limit.value - tolerance + scatter), above(limit.value - tolerance - scatter)];
  const interval = [
    Math.max(0, fewest.time - (WIDTH / 2) * fewest.u),
    Math.min(most.time + (WIDTH / 2) * most.u, phase.to - phase.from),
  ] as const;
  const u = Math.max(edges, (interval[1] - interval[0]) / WIDTH);
  return {
    quantity: quantityOf(time, 's', [samplingPart(soak.context, address, u, null)], { stated: true, step: 0 }),
    from: fromOf(soak, [channel], readings),
    of: { ...placeOf(channel), tolerance: `${plain(tolerance)} K`, ...samplingWords(soak, channel), ...gapsOf(readings) },
    interval,
  };
}

/** An extrapolation further than this from the ambient of the test says nothing, K. */
const REACH = 10;

/** The ambient at which the fitted end would reach the limit, °C: limit less its rise over the ambient, within ± 10 K of the test's ambient. */
export function ambientCeiling(course: Course): Entry {
  const address = addressOf('ambient_ceiling', course.channel, course.index);
  const outcome = ceiling(course);
  const interval = isReason(outcome) ? {} : { interval: outcome.interval };
  return [address, figureOf('ambient_ceiling', course.soak, outcome, interval)];
}

function ceiling(course: Course): Lopsided | Reason {
  const { soak, channel, series } = course;
  const limit = limitOf(soak, channel);
  if (isReason(limit)) return limit;
  const ambient = ambientOver(soak, rowsOf(series.phase), 'ambient.load');
  const end = asymptoteOf(course);
  if (isReason(end)) return ceilingBound(end, limit.value, isReason(ambient) ? null : warmest(ambient.quantity));
  if (isReason(ambient)) return ambient;
  const rise = orRefused(subtract(end.quantity, ambient.quantity));
  if (isReason(rise)) return rise;
  const quantity = orRefused(subtract(limit, rise));
  if (isReason(quantity)) return quantity;
  const [low, high] = end.interval;
  const { value } = quantity;
  const turned = { value, low: value - (high - end.quantity.value), high: value + (end.quantity.value - low) };
  const interval = together(turned, { ...ambient.quantity, value });
  const beyond = value - ambient.quantity.value;
  if (Math.abs(beyond) > REACH) return outOfReach(ambient.quantity.value, beyond > 0 ? 1 : -1, interval);
  return {
    quantity,
    interval,
    from: joinFrom(end.from, ambient.from),
    of: { ...end.of, ...ambient.of, extrapolated: `${plain(beyond)} K from the ambient of the test` },
  };
}

/** Upper end of an ambient, °C: the rise over it is then no less. */
function warmest(ambient: Quantity): number {
  return intervalOf(ambient)?.[1] ?? ambient.value;
}

/** A temperature that ends above something leaves a ceiling below something. */
function ceilingBound({ bound, ...reason }: Reason, limit: number, ambient: number | null): Reason {
  if (bound?.relation !== '>' || bound.unit === 's' || ambient === null) return reason;
  return { ...reason, bound: { relation: '<', value: limit - (bound.value - ambient), unit: bound.unit } };
}

/** The bound is no further off than the near end of the interval: a slower part that the load left open may bring the ceiling nearer. */
function outOfReach(tested: number, side: 1 | -1, [low, high]: readonly [number, number]): Reason {
  const value = tested + side * REACH;
  const where = side > 0 ? 'above' : 'below';
  return {
    absent: 'out-of-range',
    why: `The ceiling lies ${where} ${plain(value)} °C, more than ${REACH} K from the ambient of the test, and is not extrapolated that far.`,
    bound:
      side > 0
        ? { relation: '>', value: Math.min(value, low), unit: '°C' }
        : { relation: '<', value: Math.max(value, high), unit: '°C' },
  };
}
