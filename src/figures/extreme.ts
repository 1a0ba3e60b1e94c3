/** The highest or lowest reading of a channel under load. */
import type { Channel } from '../intake/log.ts';
import { noPhase, noReadings, type Reason } from './absent.ts';
import { fromOf, gapsOf, type Measured, placeOf, samplingWords } from './average.ts';
import { readingsOf } from './readings.ts';
import { successiveDifferences } from './scatter.ts';
import { phaseOf, rowsOf, type Soak } from './soak.ts';
import { errorsOf, intervalOf, quantityOf, samplingPart, stepOf } from './sources.ts';

export interface Extreme extends Measured {
  /** Lopsided: between two readings the channel may have gone further than either. */
  readonly interval?: readonly [number, number];
}

/**
 * Largest (or smallest) reading of the load phase. Its repeatability is that of a single reading, by successive differences.
 * The interval reaches further outward by half the largest change between neighbours: what a series that never changes
 * faster than it was seen to can hide between two readings.
 */
export function extremeOf(soak: Soak, channel: Channel, side: 'highest' | 'lowest', address: string): Extreme | Reason {
  const phase = phaseOf(soak, 'load');
  if (!phase) return noPhase(soak, 'load');
  const readings = readingsOf(soak.log, channel.values, rowsOf(phase));
  if (readings.y.length < 2) return noReadings(channel.name, 'the load phase');
  const sign = side === 'highest' ? 1 : -1;
  let value = readings.y[0]!;
  for (const reading of readings.y) if (sign * (reading - value) > 0) value = reading;
  const { deviation, largest } = successiveDifferences(readings.y);
  const step = stepOf(soak.context, channel);
  const errors = errorsOf(soak.context, channel, value);
  const floor = step / Math.sqrt(12);
  const dof = deviation > floor ? readings.y.length - 1 : null;
  const sampling = samplingPart(soak.context, address, Math.max(deviation, floor), dof);
  const quantity = quantityOf(value, channel.unit, [...errors.parts, sampling], { stated: errors.stated, step });
  const known = intervalOf(quantity);
  return {
    quantity,
    from: fromOf(soak, [channel], readings),
    of: { ...placeOf(channel), ...samplingWords(soak), ...gapsOf(readings) },
    ...(known ? { interval: outward(known, sign, largest / 2) } : {}),
  };
}

function outward([low, high]: readonly [number, number], sign: number, reach: number): readonly [number, number] {
  return sign > 0 ? [low, high + reach] : [low - reach, high];
}
