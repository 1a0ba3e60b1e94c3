/** Where a run's electrical power comes from: a power channel, current and voltage at one place, or current and the stated supply. */
import type { Channel, MeasuredAt } from '../../intake/log.ts';
import type { Part, Quantity } from '../../quantities/quantity.ts';
import { isReason, noReadings, type Of, type Reason } from '../absent.ts';
import { rangeWords, rangeWordsOf } from '../accurate-range.ts';
import { fromOf, isKnownMean, type Measured, meanAcross, type Stretch } from '../average.ts';
import { notObserved } from '../gaps.ts';
import { valuesBeside } from '../origin.ts';
import { type Readings, readingsOf } from '../readings.ts';
import { channelsOf, type Rows, type Soak } from '../soak.ts';
import { type Errors, errorsOf, quantityOf, scaled, stepOf } from '../sources.ts';

/** A power in watts, one value per row, and what it was made of. */
export interface Meter {
  /** Name of the power channel, or of the current channel that it was computed from. */
  readonly name: string;
  readonly at: MeasuredAt | null;
  readonly values: Float64Array;
  readonly channels: readonly Channel[];
  /** Smallest step of the power, W; 0 where it is not a single channel's. */
  readonly step: number;
  /** What the steps of its channels hide of one power, as a step, W. */
  readonly grain: number;
  readonly how: 'power channel' | 'current × voltage' | 'current × stated supply';
  readonly inferred: readonly string[];
  /** Errors of the instruments at the mean readings of the rows, in W. */
  readonly errorsAt: (power: number, rows: Rows) => Errors;
}

/** Power channels first, then currents at places that no power channel measures; the first is the primary. */
export function metersOf(soak: Soak): { readonly meters: readonly Meter[]; readonly why: Reason | null } {
  const powers = channelsOf(soak.log, 'power').map((channel) => powerMeter(soak, channel));
  const covered = (channel: Channel) => powers.some((meter) => (meter.at ?? undefined) === channel.at);
  const derived = channelsOf(soak.log, 'current')
    .filter((channel) => !covered(channel))
    .map((channel) => currentMeter(soak, channel));
  const meters = [...powers, ...derived.filter((each): each is Meter => !isReason(each))];
  const refused = derived.find(isReason) ?? null;
  if (meters.length > 0) return { meters, why: null };
  return { meters, why: refused ?? { absent: 'no-channel', why: 'The log has neither a power nor a current channel.' } };
}

function powerMeter(soak: Soak, channel: Channel): Meter {
  return {
    name: channel.name,
    at: channel.at ?? null,
    values: channel.values,
    channels: [channel],
    step: stepOf(soak.context, channel),
    grain: stepOf(soak.context, channel),
    how: 'power channel',
    inferred: [],
    errorsAt: (power) => errorsOf(soak.context, channel, power),
  };
}

function currentMeter(soak: Soak, current: Channel): Meter | Reason {
  if (current.at === 'wall') {
    return {
      absent: 'no-channel',
      why: `The channel ${current.name} is a current at the wall: alternating power is not volts times amperes, it takes a power channel.`,
    };
  }
  const voltages = channelsOf(soak.log, 'voltage');
  const voltage = voltages.find((channel) => channel.at === current.at);
  if (voltage) return productMeter(soak, current, voltage);
  const { supply } = soak.context;
  if (supply && supply.at === current.at) return suppliedMeter(soak, current, supply.voltage);
  const place = current.at ? `at the ${current.at}` : 'at a place that is not stated';
  if (supply || voltages.length > 0) {
    return {
      absent: 'different-places',
      why: `The current ${current.name} is measured ${place}, and no voltage is measured or stated for the same place.`,
    };
  }
  return {
    absent: 'no-condition',
    why: `The log has the current ${current.name} but no voltage, and conditions.supply states none: no voltage is assumed.`,
  };
}

const UNSTATED =
  'The place of measurement is stated neither for the current nor for the voltage; they are taken to be at the same one.';

function productMeter(soak: Soak, current: Channel, voltage: Channel): Meter {
  const values = new Float64Array(soak.log.rows);
  const volts = valuesBeside(soak.log, voltage, current);
  for (let row = 0; row < values.length; row++) values[row] = current.values[row]! * volts[row]!;
  return {
    name: current.name,
    at: current.at ?? null,
    values,
    channels: [current, voltage],
    step: 0,
    grain: productGrain(soak, current, voltage),
    how: 'current × voltage',
    inferred: current.at ? [] : [UNSTATED],
    errorsAt: (power, rows) => productErrors(soak, current, voltage, power, rows),
  };
}

/** Steps of both factors at their means over the log; independent, so that they add as squares. */
function productGrain(soak: Soak, current: Channel, voltage: Channel): number {
  const all = { from: 0, to: soak.log.rows };
  const byCurrent = stepOf(soak.context, current) * plainMean(voltage.values, all);
  const byVoltage = stepOf(soak.context, voltage) * plainMean(current.values, all);
  const grain = Math.hypot(byCurrent, byVoltage);
  return Number.isFinite(grain) ? grain : 0;
}

/** δP = V δI + I δV at the mean readings; a gain acts on every reading alike, so its share is that of the mean power. */
function productErrors(soak: Soak, current: Channel, voltage: Channel, power: number, rows: Rows): Errors {
  const volts = plainMean(voltage.values, rows);
  const amperes = power / volts;
  if (!Number.isFinite(amperes)) return { parts: [], stated: false };
  const ofCurrent = errorsOf(soak.context, current, amperes);
  const ofVoltage = errorsOf(soak.context, voltage, volts);
  return {
    parts: [...scaled(ofCurrent.parts, volts), ...scaled(ofVoltage.parts, amperes)],
    stated: ofCurrent.stated && ofVoltage.stated,
  };
}

function suppliedMeter(soak: Soak, current: Channel, voltage: Quantity): Meter | Reason {
  if (voltage.unit !== 'V') return { absent: 'no-condition', why: `The supply is stated in ${voltage.unit}, not in volts.` };
  const parts: readonly Part[] = voltage.parts ?? [];
  return {
    name: current.name,
    at: current.at ?? null,
    values: current.values.map((value) => value * voltage.value),
    channels: [current],
    step: stepOf(soak.context, current) * voltage.value,
    grain: stepOf(soak.context, current) * voltage.value,
    how: 'current × stated supply',
    inferred: current.at ? [] : [UNSTATED],
    errorsAt: (power) => {
      const amperes = power / voltage.value;
      const ofCurrent = errorsOf(soak.context, current, amperes);
      return {
        parts: [...scaled(ofCurrent.parts, voltage.value), ...scaled(parts, amperes)],
        stated: ofCurrent.stated && voltage.parts !== null,
      };
    },
  };
}

function plainMean(values: Float64Array, rows: Rows): number {
  let sum = 0;
  let n = 0;
  for (let row = rows.from; row < rows.to; row++) {
    if (Number.isNaN(values[row]!)) continue;
    sum += values[row]!;
    n++;
  }
  return sum / n;
}

/** Mean power over rows, W; `address` names its sampling source. */
export function meterMean(
  soak: Soak,
  meter: Meter,
  rows: Rows,
  address: string,
  { about = 'level', words = 'this stretch', span = null }: Stretch = {},
): (Measured & { readings: Readings }) | Reason {
  const readings = readingsOf(soak.log, meter.values, rows);
  if (readings.y.length < 2) return noReadings(meter.name, words);
  const told = meanAcross(soak, readings, meter.grain, address, about, span);
  if (!isKnownMean(told)) return notObserved(told, words);
  const { mean, scatter, of } = told;
  const errors = meter.errorsAt(mean, rows);
  return {
    quantity: quantityOf(mean, 'W', [...errors.parts, ...scatter], { stated: errors.stated, step: meter.step }),
    from: fromOf(soak, meter.channels, readings),
    of: { ...meterWords(meter), ...of, ...meterRange(soak, meter, mean, rows) },
    readings,
  };
}

/** `rangeWords` of a power: of its own channel at `power`, or of what it is made from at its means over the rows. */
export function meterRange({ context }: Soak, { how, channels }: Meter, power: number, rows: Rows): Of {
  if (how === 'power channel') return rangeWords(context, channels[0]!, power);
  const means = channels.map((channel) => plainMean(channel.values, rows));
  return rangeWordsOf(context, channels, means);
}

/** Channel, place and kind of a power. */
export function meterWords(meter: Meter): Of {
  return { channel: meter.name, power: meter.how, ...(meter.at ? { at: meter.at } : {}) };
}
