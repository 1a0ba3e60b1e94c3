/** Figures of a battery that the device ran from: what it gave, how long it lasts, what it holds. */
import type { Channel } from '../../intake/log.ts';
import { divide } from '../../quantities/arithmetic.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { studentQuantile } from '../../statistics/student-quantile.ts';
import { trend } from '../../statistics/trend.ts';
import { absent, isReason, noPhase, noReadings, type Reason } from '../absent.ts';
import { fromOf, gapsOf, type Measured } from '../average.ts';
import type { FigureName } from '../catalogue.ts';
import type { Phase } from '../figure.ts';
import { plain } from '../in-words.ts';
import { joinFrom, orRefused } from '../joined.ts';
import { figureOf, present } from '../present.ts';
import { readingsOf } from '../readings.ts';
import { channelsOf, type Entry, phaseOf, rowsOf, type Soak } from '../soak.ts';
import { quantityOf, samplingPart, stepOf, stepPart } from '../sources.ts';
import { integralOf } from './integral.ts';
import type { Meter } from './meters.ts';

/** A level that fell by less says too little of a whole charge. */
const LEAST_FALL = 0.1;
/** Degrees of freedom that the slope of a level is taken to be known with: its steps repeat each other. */
const FEW = 4;

/** `battery_energy`, `battery_runtime`, `battery_capacity`: of the load. */
export function batteryFigures(soak: Soak, meters: readonly Meter[]): Entry[] {
  const load = phaseOf(soak, 'load');
  if (!load) return NAMES.map((name) => [name, absent(name, noPhase(soak, 'load'))]);
  const energy = energyOf(soak, meters, load);
  const level = channelsOf(soak.log, 'charge_level')[0];
  const fall = level ? fallOf(soak, level, load) : NO_LEVEL;
  return [
    ['battery_energy', figureOf('battery_energy', soak, energy)],
    ['battery_runtime', runtimeOf(soak, fall)],
    ['battery_capacity', figureOf('battery_capacity', soak, capacityOf(energy, fall))],
  ];
}

const NAMES: readonly FigureName[] = ['battery_energy', 'battery_runtime', 'battery_capacity'];
const NO_LEVEL: Reason = { absent: 'no-channel', why: 'The log has no charge level of a battery.' };

function energyOf(soak: Soak, meters: readonly Meter[], load: Phase): Measured | Reason {
  const meter = meters.find(({ at }) => at === 'battery');
  if (!meter) return { absent: 'no-channel', why: 'The log has no power at a battery, and no current and voltage there.' };
  const pieces = [{ name: load.name, rows: rowsOf(load), span: load }];
  const energy = integralOf(soak, meter, { rows: rowsOf(load), words: 'the load phase', pieces }, 'battery_energy');
  if (isReason(energy) || energy.quantity.value > 0) return energy;
  return {
    absent: 'out-of-range',
    why: 'The battery gave no energy under load: it was charged, or its current counts the other way round.',
  };
}

/** How fast a level fell. */
interface Fall {
  /** 1/s, above zero, with the half width of its 95 % interval. */
  readonly rate: number;
  readonly half: number;
  /** Of the whole load, without unit. */
  readonly share: Quantity;
  readonly measured: Pick<Measured, 'from' | 'of'>;
}

function fallOf(soak: Soak, level: Channel, load: Phase): Fall | Reason {
  const readings = readingsOf(soak.log, level.values, rowsOf(load));
  const { t, y } = readings;
  if (y.length < 4) return noReadings(level.name, 'the load phase');
  const length = t[t.length - 1]! - t[0]!;
  const { slope, u } = trend(t, y);
  const fallen = -slope * length;
  if (!(fallen >= LEAST_FALL)) {
    const why = `The level ${level.name} fell by ${plain(100 * Math.max(0, fallen))} % under load; it takes ${100 * LEAST_FALL} % to tell a whole charge.`;
    return { absent: 'too-short', why };
  }
  const scatter = samplingPart(soak.context, 'battery_fall', u * length, FEW);
  const step = stepOf(soak.context, level);
  const ends = stepPart(soak.context, 'battery_fall.step', step, Math.SQRT2);
  const whole = load.to - load.from;
  const share = quantityOf(
    (fallen * whole) / length,
    '1',
    [scatter, ends].map((part) => scaledBy(part, whole / length)),
    {
      stated: true,
      step: 0,
    },
  );
  const half = Math.hypot(studentQuantile(0.975, FEW) * u, (step * Math.SQRT1_2) / length);
  const of = { channel: level.name, fell_by: `${plain(100 * fallen)} %`, ...gapsOf(readings) };
  return { rate: -slope, half, share, measured: { from: fromOf(soak, [level], readings), of } };
}

function scaledBy({ source, share }: NonNullable<Quantity['parts']>[number], factor: number) {
  return { source, share: share * factor };
}

/** Lopsided, as one over a rate is. */
function runtimeOf(soak: Soak, fall: Fall | Reason): Entry[1] {
  if (isReason(fall)) return absent('battery_runtime', fall);
  const { rate, half, measured } = fall;
  if (!(half < rate / 2)) {
    const why = 'The level does not tell to better than half of itself how fast it fell.';
    return absent('battery_runtime', { absent: 'too-short', why, bound: { relation: '>', value: 1 / (rate + half), unit: 's' } });
  }
  const part = samplingPart(soak.context, 'battery_runtime', half / studentQuantile(0.975, FEW) / rate ** 2, FEW);
  const quantity = quantityOf(1 / rate, 's', [part], { stated: true, step: 0 });
  return present('battery_runtime', soak, { quantity, ...measured }, { interval: [1 / (rate + half), 1 / (rate - half)] });
}

function capacityOf(energy: Measured | Reason, fall: Fall | Reason): Measured | Reason {
  if (isReason(energy)) return energy;
  if (isReason(fall)) return fall;
  const quantity = orRefused(divide(energy.quantity, fall.share));
  if (isReason(quantity)) return quantity;
  return { quantity, from: joinFrom(energy.from, fall.measured.from), of: { ...energy.of, ...fall.measured.of } };
}
