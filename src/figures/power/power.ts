/** Electrical figures of a run: currents, powers, energy. */
import type { Channel } from '../../intake/log.ts';
import { absent, noChannel, noPhase, noReadings, type Reason } from '../absent.ts';
import { fromOf, gapsOf, type Measured, meanOf, overPhase } from '../average.ts';
import type { POWER } from '../catalogue/power.ts';
import type { FigureName } from '../catalogue.ts';
import { extremeValue, lopsided } from '../extreme-value.ts';
import { samplingOf } from '../in-words.ts';
import { stepIn } from '../origin.ts';
import { figureOf, ofChannel, present } from '../present.ts';
import { readingsOf } from '../readings.ts';
import { addressOf, channelsOf, type Entry, phaseOf, rowsOf, type Soak } from '../soak.ts';
import { intervalOf, quantityOf, samplingPart } from '../sources.ts';
import { adapterEfficiency } from './adapter.ts';
import { batteryFigures } from './battery.ts';
import { energyFigures } from './energy.ts';
import { type Meter, meterMean, meterRange, meterWords } from './meters.ts';
import { powerPercentile } from './percentile.ts';

/** What electrical figures are made from. */
interface Electrical {
  readonly soak: Soak;
  readonly meters: readonly Meter[];
  /** Why there is no meter, or null. */
  readonly why: Reason | null;
}

/** One function makes all three. */
const BATTERY = {
  battery_energy: ({ soak, meters }: Electrical) => batteryFigures(soak, meters),
  battery_runtime: () => [],
  battery_capacity: () => [],
};

/** What makes each electrical figure: one of the catalogue that is left out here does not compile. */
const FIGURES: Readonly<Record<keyof typeof POWER, (electrical: Electrical) => Entry[]>> = {
  idle_current: ofCurrents('idle', 'idle_current'),
  idle_power: ofMeters('idle_power', (soak, meter, index) => powerIn(soak, meter, index, 'idle', 'idle_power')),
  load_current: ofCurrents('load', 'load_current'),
  load_power: ofMeters('load_power', (soak, meter, index) => powerIn(soak, meter, index, 'load', 'load_power')),
  peak_power: ofMeters('peak_power', peakPower),
  power_percentile_95: ofMeters('power_percentile_95', powerPercentile),
  adapter_efficiency: ({ soak, meters }) => [['adapter_efficiency', adapterEfficiency(soak, meters)]],
  ...BATTERY,
  energy: ({ soak, meters, why }) => energyFigures(soak, meters, why),
};

/** `why`: the reason for which there is no meter, or null. */
export function powerFigures(soak: Soak, meters: readonly Meter[], why: Reason | null): Entry[] {
  return Object.values(FIGURES).flatMap((make) => make({ soak, meters, why }));
}

function ofCurrents(phase: string, name: FigureName): (electrical: Electrical) => Entry[] {
  return ({ soak }) => {
    const channels = channelsOf(soak.log, 'current');
    if (channels.length === 0) return [[name, absent(name, noChannel('current'))]];
    return channels.flatMap((channel, index) => ofChannel(channel, [currentIn(soak, channel, index, phase, name)]));
  };
}

function ofMeters(name: FigureName, make: (soak: Soak, meter: Meter, index: number) => Entry): (electrical: Electrical) => Entry[] {
  return ({ soak, meters, why }) =>
    meters.length === 0
      ? [[name, absent(name, why ?? noChannel('power'))]]
      : meters.flatMap((meter, index) => ofChannel(meter, [make(soak, meter, index)]));
}

function currentIn(soak: Soak, channel: Channel, index: number, phaseName: string, name: FigureName): Entry {
  const address = addressOf(name, channel, index);
  const phase = phaseOf(soak, phaseName);
  if (!phase) return [address, absent(name, noPhase(soak, phaseName))];
  const mean = meanOf(soak, channel, rowsOf(phase), address, overPhase(phase));
  return [address, figureOf(name, soak, mean, { of: { phase: phaseName } })];
}

function powerIn(soak: Soak, meter: Meter, index: number, phaseName: string, name: FigureName): Entry {
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
  const extreme = extremeValue(readings, 'highest', meter.grain);
  const errors = meter.errorsAt(extreme.value, rowsOf(phase));
  const sampling = samplingPart(soak.context, address, extreme.u, extreme.dof);
  const quantity = quantityOf(extreme.value, 'W', [...errors.parts, sampling], { stated: errors.stated, step: meter.step });
  const averaging = `none beyond the instrument's own; ${samplingOf(stepIn(soak.log, meter.channels[0]?.log))}`;
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
