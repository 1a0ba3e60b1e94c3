/** The ambient of a run: measured where there is an ambient channel, else as stated. */
import type { Channel } from '../../intake/log.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { isReason, type Of, type Reason } from '../absent.ts';
import { rangeMarks } from '../accurate-range.ts';
import { type Measured, meanOf } from '../average.ts';
import type { From } from '../figure.ts';
import { channelsOf, type Rows, type Soak } from '../soak.ts';

export interface Ambient {
  readonly quantity: Quantity;
  /** Null where it is stated, not measured. */
  readonly from: From | null;
  readonly of: Of;
}

export function ambientChannel(soak: Soak): Channel | null {
  return channelsOf(soak.log, 'ambient')[0] ?? null;
}

/** Mean ambient over rows, or the stated one; absent when there is neither. `address` names its sampling source. */
export function ambientOver(soak: Soak, rows: Rows, address: string): Ambient | Reason {
  const channel = ambientChannel(soak);
  const measured: Measured | Reason | null = channel && meanOf(soak, channel, rows, address, { about: 'line' });
  if (measured && !isReason(measured))
    return {
      quantity: measured.quantity,
      from: measured.from,
      of: { ambient: `measured, channel ${channel!.name}`, ...rangeMarks(measured) },
    };
  const stated = soak.context.ambient;
  if (stated)
    return { quantity: stated, from: null, of: { ambient: channel ? 'stated: too few readings of its channel here' : 'stated' } };
  return { absent: 'no-condition', why: 'The ambient is neither measured by a channel nor stated under conditions.' };
}

/** Temperature less the ambient at the same row; less nothing where the ambient is not measured, which changes no shape. */
export function riseValues(soak: Soak, channel: Channel): Float64Array {
  const ambient = ambientChannel(soak);
  return !ambient || ambient.values.every(Number.isNaN) ? channel.values : lessAmbient(channel, ambient.values);
}

/** Temperature less an ambient at the same row, or the last one before it. */
export function lessAmbient(channel: Channel, ambient: Float64Array): Float64Array {
  const rise = new Float64Array(channel.values.length);
  let latest = ambient.find((value) => !Number.isNaN(value)) ?? 0;
  for (let row = 0; row < rise.length; row++) {
    const reading = ambient[row]!;
    if (!Number.isNaN(reading)) latest = reading;
    rise[row] = channel.values[row]! - latest;
  }
  return rise;
}
