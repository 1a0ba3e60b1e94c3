/** Electrical figures of a run: currents, powers, energy. */
import type { Channel } from '../../intake/log.ts';
import { absent, noChannel, noPhase, noReadings, type Reason } from '../absent.ts';
import { fromOf, gapsOf, type Measured, meanOf, overPhase } from '../average.ts';
import { extremeValue, lopsided } from '../extreme-value.ts';
import { samplingOf } from '../in-words.ts';
import { figureOf, ofChannel, present } from '../present.ts';
import { readingsOf } from '../readings.ts';
import { addressOf, channelsOf, type Entry, phaseOf, rowsOf, type Soak } from '../soak.ts';
import { intervalOf, quantityOf, samplingPart } from '../sources.ts';
import { energyFigures } from './energy.ts';
import { type Meter, meterMean, meterRange, meterWords } from './meters.ts';

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
  const mean = meanOf(soak, channel, rowsOf(phase), address, overPhase(phase));
  return [address, figureOf(name, soak, mean, { of: { phase: phaseName } })];
}

function powerIn(soak: Soak, meter: Meter, index: number, phaseName: string, name: string): Entry {
  const address = addressOf(name, meter, index);
  const phase = phaseOf(soak, phaseName);
  if (!phase) return [address, absent(name, noPhase(soak, phaseName))];
  const outcome = meterMean(soak, meter, rowsOf(phase), address, overPhase(phase));
  return [address, figureOf(name, soak, outcome, { of: { phase: phaseName }, inferred: meter.inferred })];
}

/** Largest power of the load phase as logged; its interval is lopsided, see `extremeValue`. */
function peakPower(soak: Soak, meter: Meter, index: number): Entry {
  const address = addressOf('peak_power', meter, index);
  const phase = phaseOf(soak, 'load');
  if (!phase) return [address, absent('peak_power', noPhase(soak, 'load'))];
  const readings = readingsOf(soak.log, meter.values, rowsOf(phase));
  if (readings.y.length < 2) return [address, absent('peak_power', noReadings(meter.name, 'the load phase'))];
  const extreme = extremeValue(readings.y, 'highest', meter.grain);
  const errors = meter.errorsAt(extreme.value, rowsOf(phase));
  const sampling = samplingPart(soak.context, address, extreme.u, extreme.dof);
  const quantity = quantityOf(extreme.value, 'W', [...errors.parts, sampling], { stated: errors.stated, step: meter.step });
  const averaging = `none beyond the instrument's own; ${samplingOf(soak.log.time.step)}`;
  const measured: Measured = {
    quantity,
    from: fromOf(soak, meter.channels, readings),
    of: {
      ...meterWords(meter),
      phase: 'load',
      averaging,
      ...gapsOf(readings),
      ...meterRange(soak, meter, extreme.value, rowsOf(phase)),
    },
  };
  const known = intervalOf(quantity);
  const interval = known ? { interval: lopsided(known, 'highest', extreme) } : {};
  return [address, present('peak_power', soak, measured, { inferred: meter.inferred, ...interval })];
}
