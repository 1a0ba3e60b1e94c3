/** Figures of the step response: its end, and the time constant, amplitude and K/W of each part. */
import { divide, subtract } from '../../quantities/arithmetic.ts';
import type { Part, Quantity } from '../../quantities/quantity.ts';
import type { Ranged } from '../../statistics/rise-ranges.ts';
import { type Bound, isReason, noPhase, type Of, type Reason } from '../absent.ts';
import { fromOf, gapsOf, type Measured, meanOf, overPhase } from '../average.ts';
import type { FigureName } from '../catalogue.ts';
import { duration, plain } from '../in-words.ts';
import { joinFrom, orRefused } from '../joined.ts';
import { type Meter, meterMean, meterWords } from '../power/meters.ts';
import { figureOf } from '../present.ts';
import { addressOf, type Entry, phaseOf, rowsOf, type Soak } from '../soak.ts';
import { errorsOf, intervalOf, quantityOf, stepOf, stepPart } from '../sources.ts';
import { ambientChannel } from './ambient.ts';
import { boostRoom } from './hidden-boost.ts';
import { type Estimate, isResponse, isTold, type Response } from './response.ts';
import { columnsOf } from './steady.ts';
import type { Course } from './thermal.ts';

/** A measured value whose interval is lopsided. */
export type Lopsided = Measured & { readonly interval: readonly [number, number] };

/** s, of the main part: the larger one within the load. Absent where the load changed or was too short. */
export function timeConstant(course: Course): Entry {
  return constantAt(course, 'time_constant', mainOf);
}

/** s, of the other part, be it faster or slower; absent where the readings bear one. */
export function secondTimeConstant(course: Course): Entry {
  return constantAt(course, 'second_time_constant', otherOf);
}

/** K: the main part of the step. */
export function responseAmplitude(course: Course): Entry {
  return entryOf(course, 'response_amplitude', amplitudeAt(course, mainOf, 'response_amplitude'));
}

/** K: the other part of the step. */
export function secondAmplitude(course: Course): Entry {
  return entryOf(course, 'second_amplitude', amplitudeAt(course, otherOf, 'second_amplitude'));
}

/** K/W of the main part: its amplitude over what the load added to the power. */
export function amplitudePerWatt(course: Course, meter: Meter | Reason): Entry {
  return perWatt(course, meter, 'amplitude_per_watt', mainOf);
}

/** K/W of the other part. */
export function secondAmplitudePerWatt(course: Course, meter: Meter | Reason): Entry {
  return perWatt(course, meter, 'second_amplitude_per_watt', otherOf);
}

/** What a figure of a response is made from. */
export type Fitted = Pick<Course, 'soak' | 'channel' | 'index' | 'series' | 'response'>;

/** Index of a part, or why the response has none such. */
type Which = (response: Response) => number | Reason;

export function mainOf({ main }: Response): number {
  return main;
}

function otherOf({ constants, main, seen, slowerBorne }: Response): number | Reason {
  if (constants === 1) return { absent: 'no-fit', why: 'The readings bear one time constant: no second part stands out.' };
  if (seen || (main === 0 && slowerBorne)) return 1 - main;
  const why =
    'No channel shows what the load was (its power, or a delivered clock), so that a second part cannot be told from a boost at its beginning.';
  return { absent: 'not-observed', why };
}

function entryOf({ soak, channel, index }: Fitted, name: FigureName, outcome: Lopsided | Measured | Reason): Entry {
  const interval = !isReason(outcome) && 'interval' in outcome ? { interval: outcome.interval } : {};
  return [addressOf(name, channel, index), figureOf(name, soak, outcome, interval)];
}

/** s: the time constant of a part. */
export function constantAt(course: Fitted, name: FigureName, which: Which): Entry {
  const { response, soak, series } = course;
  const address = addressOf(name, course.channel, course.index);
  if (!isResponse(response)) return entryOf(course, name, timeBound(response, course, name));
  const index = which(response);
  if (typeof index === 'object') return entryOf(course, name, index);
  const estimate = response.parts[index]!.timeConstant;
  if (!isTold(estimate) || isLeftOpen(response, index))
    return entryOf(course, name, untoldConstant(estimate, index > response.main));
  const others = [...estimate.more, stepPart(soak.context, address, series.step)];
  return entryOf(course, name, lopsidedOf(course, response, estimate, others, 's'));
}

/** A slower part of which the load does not show where it ends: what chance makes of it is not told. */
function isLeftOpen({ main, end }: Response, part: number): boolean {
  return part > main && end.untold !== null;
}

/** A slower part is slower than something; how fast a faster one is, or how slow the main one, is then not told at all. */
function untoldConstant({ low }: Ranged, slower: boolean): Reason {
  const absent = 'too-short';
  if (!slower)
    return { absent, why: 'The readings do not tell the time constant of this part to better than two thirds of itself.' };
  const why = `The load does not show where the slower part ends: its time constant is above ${duration(low)}.`;
  return { absent, why, bound: { relation: '>', value: low, unit: 's' } };
}

/** A load is too short from half of it on; a slower part may have made the time constant look longer than it is, so a quarter is said. */
function timeBound(reason: Reason, { series }: Fitted, name: FigureName): Reason {
  const { bound: _, ...rest } = reason;
  if (reason.absent !== 'too-short' || name !== 'time_constant') return rest;
  return { ...rest, bound: { relation: '>', value: series.lasted / 4, unit: 's' } };
}

/** An estimate in its unit, its own lopsided interval and the other parts together. */
function lopsidedOf(
  course: Fitted,
  response: Response,
  estimate: Estimate,
  others: readonly Part[],
  unit: string,
  { stated, step }: { stated: boolean; step: number } = { stated: true, step: 0 },
): Lopsided {
  const { value } = estimate;
  const quantity = quantityOf(value, unit, [...estimate.fit, ...others], { stated, step });
  return {
    quantity,
    interval: together(estimate, quantityOf(value, unit, others, { stated: true, step: 0 })),
    from: fromOf(course.soak, columnsOf(course), course.series.readings),
    of: fitWords(course, response),
  };
}

/** Ends of a lopsided interval, further apart by what else makes the value uncertain. */
export function together({ value, low, high }: Ranged, others: Quantity): readonly [number, number] {
  const [from, to] = intervalOf(others) ?? [others.value, others.value];
  return [value - Math.hypot(value - low, others.value - from), value + Math.hypot(high - value, to - others.value)];
}

function amplitudeAt(course: Course, which: Which, name: FigureName): Lopsided | Reason {
  const { response, soak, channel, index } = course;
  if (!isResponse(response)) return withoutSeconds(response);
  const part = which(response);
  if (typeof part === 'object') return part;
  if (response.skipped > 0) return partsUntold(response);
  const { amplitude, timeConstant: own } = response.parts[part]!;
  const estimate = response.seen ? amplitude : besideBoost(course, response, part, amplitude);
  if (isReason(estimate)) return estimate;
  if (!isTold(estimate) || (part > response.main && (!isTold(own) || isLeftOpen(response, part)))) {
    return { absent: 'too-short', why: 'The readings do not tell the amplitude of this part to better than two thirds of itself.' };
  }
  const step = stepOf(soak.context, channel);
  const floor = stepPart(soak.context, addressOf(name, channel, index), step);
  const gain = gainOf(course, response.asymptote, estimate.value);
  return lopsidedOf(course, response, estimate, [...estimate.more, ...gain.parts, floor], 'K', { stated: gain.stated, step });
}

/** An amplitude whose interval has room for a boost that no channel shows. */
function besideBoost({ soak, channel, index }: Course, response: Response, part: number, amplitude: Estimate): Estimate | Reason {
  const room = boostRoom(soak, response, part);
  if (!room) {
    const why =
      'No channel shows what the load was, and no reading shows the temperature that it began from, so that a boost at its beginning may have changed the amplitude.';
    return { absent: 'not-observed', why };
  }
  const [less, more] = room;
  const id = `run:${soak.context.run}/${addressOf('response', channel, index)}/boost-${part + 1}`;
  const source = { id, title: 'a boost that no channel shows', dof: null };
  return {
    ...amplitude,
    low: amplitude.low + less,
    high: amplitude.high + more,
    // The room lies to one side of the value mostly: twice the farther end, so that the standard uncertainty alone holds the truth as well.
    fit: [...amplitude.fit, { source, share: (2 * Math.max(more, -less)) / WIDTH }],
  };
}

/** Width of a normal 95 % interval, in standard deviations. */
const WIDTH = 2 * 1.959964;

function partsUntold({ skipped }: Response): Reason {
  const why = `The first ${duration(skipped)} of the load do not follow the rest, so that the parts of its step cannot be told.`;
  return { absent: 'load-changed', why };
}

/** What the sensor's gain does to a difference below its reading at the top; its offset cancels. */
function gainOf({ soak, channel }: Course, top: number, difference: number): { readonly parts: Part[]; readonly stated: boolean } {
  const [above, below] = [errorsOf(soak.context, channel, top), errorsOf(soak.context, channel, top - difference)];
  const parts = above.parts.map(({ source, share }, k) => ({ source, share: share - (below.parts[k]?.share ?? share) }));
  return { parts, stated: above.stated };
}

function perWatt(course: Course, meter: Meter | Reason, name: FigureName, which: Which): Entry {
  const outcome = perWattOf(course, meter, which, name);
  const inferred = isReason(meter) ? {} : { inferred: meter.inferred };
  return [addressOf(name, course.channel, course.index), figureOf(name, course.soak, outcome, inferred)];
}

/** The step of the power is what the load added to that of the idle phase. */
function perWattOf(course: Course, meter: Meter | Reason, which: Which, name: FigureName): Measured | Reason {
  const { soak } = course;
  const amplitude = amplitudeAt(course, which, name);
  if (isReason(amplitude)) return withoutBound(amplitude);
  if (isReason(meter)) return meter;
  const [idle, load] = [phaseOf(soak, 'idle'), phaseOf(soak, 'load')];
  if (!idle || !load) return noPhase(soak, idle ? 'load' : 'idle');
  const during = meterMean(soak, meter, rowsOf(load), 'load_power', overPhase(load));
  const before = meterMean(soak, meter, rowsOf(idle), 'idle_power', overPhase(idle));
  if (isReason(during)) return during;
  if (isReason(before)) return before;
  const added = orRefused(subtract(during.quantity, before.quantity));
  if (isReason(added)) return added;
  if (!(added.value > 0)) return { absent: 'out-of-range', why: 'The load did not add to the power of the idle phase.' };
  const quantity = orRefused(divide(amplitude.quantity, added));
  if (isReason(quantity)) return quantity;
  return { quantity, from: joinFrom(amplitude.from, during.from), of: { ...amplitude.of, ...meterWords(meter) } };
}

function withoutBound({ bound: _, ...reason }: Reason): Reason {
  return reason;
}

/** How long a load would have been needed is no bound on a temperature. */
function withoutSeconds(reason: Reason): Reason {
  return reason.bound?.unit === 's' ? withoutBound(reason) : reason;
}

/** °C: where the temperature would end under this load, at the mean ambient of the load phase. */
export function asymptoteTemperature(course: Course): Entry {
  return entryOf(course, 'asymptote_temperature', asymptoteOf(course));
}

/**
 * The fit runs over the rise where the ambient is measured; its mean is put back, so the thermometer's offset cancels and
 * only its scatter stays. The temperature sensor's own errors come once, at the asymptote.
 */
export function asymptoteOf(course: Course): Lopsided | Reason {
  const { soak, channel, index, series, response } = course;
  if (!isResponse(response)) return withoutSeconds(response);
  const { end } = response;
  const ambient = ambientChannel(soak);
  const room = ambient && meanOf(soak, ambient, rowsOf(series.phase), 'ambient.load', { about: 'line' });
  if (room && isReason(room)) return room;
  const mean = room;
  const base = mean?.quantity.value ?? 0;
  const value = end.value + base;
  const scatter = mean?.quantity.parts?.filter((part) => part.source.id.endsWith('/sampling')) ?? [];
  const errors = errorsOf(soak.context, channel, value);
  const step = stepOf(soak.context, channel);
  const floor = stepPart(soak.context, addressOf('asymptote_temperature', channel, index), step);
  const shifted: Estimate = { ...end, value, low: end.low + base, high: end.high + base };
  const others = [...errors.parts, ...end.more, ...scatter, floor];
  if (end.untold) return course.climbing() ?? untoldEnd(course, end.untold, shifted, others, response);
  const measured = lopsidedOf(course, response, shifted, others, channel.unit, { stated: errors.stated, step });
  return { ...measured, from: joinFrom(fromOf(soak, [channel], series.readings), mean?.from ?? null) };
}

function untoldEnd(
  { soak, channel: { unit } }: Course,
  untold: 'open' | 'hidden',
  end: Estimate,
  others: readonly Part[],
  response: Response,
): Reason {
  const slow = response.parts[response.parts.length - 1]!.timeConstant;
  const measured = ambientChannel(soak) !== null;
  const low = end.low - (measured || untold === 'hidden' ? 0 : driftRoom(soak));
  const [lowest] = together({ ...end, value: low, low }, quantityOf(low, unit, others, { stated: true, step: 0 }));
  const bound: Bound = { relation: '>', value: lowest, unit };
  const why =
    untold === 'open'
      ? `A slower part, with a time constant above ${duration(slow.low)}, had not shown where it ends when the load ended.${measured ? '' : roomWords(soak)}`
      : `The load was too short to exclude a slower part: if none is hidden, the temperature would end at ${plain(end.value)} ${unit}.`;
  return { absent: 'too-short', why, ...(Number.isFinite(lowest) ? { bound } : {}) };
}

/** K: by how much a room that is stated and not measured may have been warmer when the load ended than over the load; 0 where it is not stated. */
function driftRoom({ context: { ambient } }: Soak): number {
  const stated = ambient && intervalOf(ambient);
  return stated ? ambient.value - stated[0] : 0;
}

function roomWords({ context: { ambient } }: Soak): string {
  const same = ' A room that warmed would look the same: no channel measures the ambient.';
  return ambient ? same : `${same} A lower end holds for the room as it was when the load ended.`;
}

/** What the figures of a response say of their fit. */
function fitWords({ channel, series }: Fitted, { constants, main, skipped }: Response): Of {
  const one = 'one exponential, with room for a slower part that the readings do not exclude';
  const two = `two exponentials, the second part is the ${main === 1 ? 'faster' : 'slower'} one`;
  return {
    channel: channel.name,
    fit: constants === 1 ? one : two,
    ...(skipped > 0 ? { skipped: `the first ${duration(skipped)} do not follow the rest and are left out` } : {}),
    ...gapsOf(series.readings),
  };
}
