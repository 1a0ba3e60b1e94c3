/** The highest or lowest reading of a channel under load. */
import type { Channel } from '../intake/log.ts';
import { noPhase, noReadings, type Reason } from './absent.ts';
import { rangeWords } from './accurate-range.ts';
import { fromOf, gapsOf, type Measured, placeOf, samplingWords } from './average.ts';
import { type ExtremeValue, extremeValue, lopsided, type Scatter } from './extreme-value.ts';
import { readingsOf } from './readings.ts';
import { phaseOf, rowsOf, type Soak } from './soak.ts';
import { errorsOf, intervalOf, quantityOf, samplingPart, stepOf } from './sources.ts';

export interface Extreme extends Measured {
  /** Lopsided: see `extremeValue`. */
  readonly interval?: readonly [number, number];
  readonly extreme: ExtremeValue;
}

/** Largest or smallest reading of the load phase, with the repeatability of a single reading and a lopsided interval. */
export function extremeOf(
  soak: Soak,
  channel: Channel,
  side: 'highest' | 'lowest',
  address: string,
  lasting: Scatter | null = null,
): Extreme | Reason {
  const phase = phaseOf(soak, 'load');
  if (!phase) return noPhase(soak, 'load');
  const readings = readingsOf(soak.log, channel.values, rowsOf(phase));
  if (readings.y.length < 2) return noReadings(channel.name, 'the load phase');
  const step = stepOf(soak.context, channel);
  const extreme = extremeValue(readings, side, step, lasting);
  const errors = errorsOf(soak.context, channel, extreme.value);
  const sampling = samplingPart(soak.context, address, extreme.u, extreme.dof);
  const quantity = quantityOf(extreme.value, channel.unit, [...errors.parts, sampling], { stated: errors.stated, step });
  const known = intervalOf(quantity);
  return {
    quantity,
    from: fromOf(soak, [channel], readings),
    of: {
      ...placeOf(channel),
      ...samplingWords(soak, channel),
      ...gapsOf(readings),
      ...rangeWords(soak.context, channel, extreme.value),
    },
    extreme,
    ...(known ? { interval: lopsided(known, side, extreme) } : {}),
  };
}
