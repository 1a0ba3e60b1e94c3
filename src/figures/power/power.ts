/** Electrical figures of a run: currents, powers, energy. */
import type { Channel } from '../../intake/log.ts';
import { absent, isReason, noChannel, noPhase, noReadings, type Reason } from '../absent.ts';
import { fromOf, gapsOf, type Measured, meanOf, samplingWords } from '../average.ts';
import { duration } from '../in-words.ts';
import { figureOf, ofChannel } from '../present.ts';
import { readingsOf } from '../readings.ts';
import { successiveDifferences } from '../scatter.ts';
import { addressOf, channelsOf, type Entry, phaseOf, rowsOf, type Soak } from '../soak.ts';
import { intervalOf, quantityOf, samplingPart } from '../sources.ts';
import { energyFigures } from './energy.ts';
import { type Meter, meterMean, meterWords } from './meters.ts';

export const POWER_NAMES = ['idle_current', 'load_current', 'idle_power', 'load_power', 'peak_power', 'energy'] as const;

const BY_PHASE = [
  ['idle', 'idle_current', 'idle_power'],
  ['load', 'load_current', 'load_power'],
] as const;

/** `why`: the reason for which there is no meter, or null. */
export function powerFigures(soak: Soak, meters: readonly Meter[], why: Reason | null): Entry[] {
  const currents = channelsOf(soak.log, 'current');
  const perItem = <T extends { readonly name: string }>(
    name: string,
    reason: Reason | null,
    list: readonly T[],
    each: (item: T, index: number) => Entry,
  ): Entry[] =>
    list.length === 0
      ? [[name, absent(name, reason ?? noChannel('power'))]]
      : list.flatMap((item, index) => ofChannel(item, [each(item, index)]));
  return [
    ...BY_PHASE.flatMap(([phase, current, power]) => [
      ...perItem(current, noChannel('current'), currents, (channel, index) => currentIn(soak, channel, index, phase, current)),
      ...perItem(power, why, meters, (meter, index) => powerIn(soak, meter, index, phase, power)),
    ]),
    ...perItem('peak_power', why, meters, (meter, index) => peakPower(soak, meter, index)),
    ...energyFigures(soak, meters, why),
  ];
}

function currentIn(soak: Soak, channel: Channel, index: number, phaseName: string, name: string): Entry {
  const address = addressOf(name, channel, index);
  const phase = phaseOf(soak, phaseName);
  if (!phase) return [address, absent(name, noPhase(soak, phaseName))];
  const mean = meanOf(soak, channel, rowsOf(phase), address) ?? noReadings(channel.name, `the ${phaseName} phase`);
  return [address, figureOf(name, soak, mean, { of: { phase: phaseName } })];
}

function powerIn(soak: Soak, meter: Meter, index: number, phaseName: string, name: string): Entry {
  const address = addressOf(name, meter, index);
  const phase = phaseOf(soak, phaseName);
  if (!phase) return [address, absent(name, noPhase(soak, phaseName))];
  const mean = meterMean(soak, meter, rowsOf(phase), address);
  const outcome = isReason(mean) ? noReadings(meter.name, `the ${phaseName} phase`) : mean;
  return [address, figureOf(name, soak, outcome, { of: { phase: phaseName }, inferred: meter.inferred })];
}

function peakPower(soak: Soak, meter: Meter, index: number): Entry {
  const address = addressOf('peak_power', meter, index);
  const peak = highestPower(soak, meter, address);
  if (isReason(peak)) return [address, absent('peak_power', peak)];
  const known = intervalOf(peak.measured.quantity);
  const interval = known ? { interval: [known[0], known[1] + peak.hidden] as const } : {};
  return [address, figureOf('peak_power', soak, peak.measured, { of: { phase: 'load' }, inferred: meter.inferred, ...interval })];
}

/** Largest power of the load phase as logged, and what can hide between two readings (see `extremeOf`). */
function highestPower(soak: Soak, meter: Meter, address: string): { measured: Measured; hidden: number } | Reason {
  const phase = phaseOf(soak, 'load');
  if (!phase) return noPhase(soak, 'load');
  const readings = readingsOf(soak.log, meter.values, rowsOf(phase));
  if (readings.y.length < 2) return noReadings(meter.name, 'the load phase');
  const value = readings.y.reduce((highest, power) => Math.max(highest, power), Number.NEGATIVE_INFINITY);
  const { deviation, largest } = successiveDifferences(readings.y);
  const errors = meter.errorsAt(value, rowsOf(phase));
  const floor = meter.step / Math.sqrt(12);
  const sampling = samplingPart(
    soak.context,
    address,
    Math.max(deviation, floor),
    deviation > floor ? readings.y.length - 1 : null,
  );
  const step = soak.log.time.step ?? 0;
  const averaging = `none beyond the instrument's own; one reading in ${duration(step)}`;
  return {
    measured: {
      quantity: quantityOf(value, 'W', [...errors.parts, sampling], { stated: errors.stated, step: meter.step }),
      from: fromOf(soak, meter.channels, readings),
      of: { ...meterWords(meter), averaging, ...samplingWords(soak), ...gapsOf(readings) },
    },
    hidden: largest / 2,
  };
}
