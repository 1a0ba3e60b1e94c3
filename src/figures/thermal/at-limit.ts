/** When a temperature is at the limit at which the device throttles, and whether the governor holds it there. */
import type { Channel } from '../../intake/log.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { isReason, type Reason } from '../absent.ts';
import { throttlingOf } from '../clock/throttle.ts';
import type { Rows, Soak } from '../soak.ts';
import { stepOf } from '../sources.ts';

/** The limit that the device states for a channel. */
export function limitOf(soak: Soak, channel: Channel): Quantity | Reason {
  const limit = soak.context.device.throttleAt[channel.name];
  if (!limit) return { absent: 'no-rating', why: `The device states no temperature at which ${channel.name} throttles.` };
  if (limit.unit !== channel.unit) {
    return {
      absent: 'no-rating',
      why: `The limit of ${channel.name} is stated in ${limit.unit}, its readings are in ${channel.unit}.`,
    };
  }
  return limit;
}

/** A channel is at its limit from this far below it, K, or from one step of its sensor where that is coarser. */
const AT_LIMIT = 1;

/** How far below its limit a channel counts as at it, K. */
export function toleranceOf(soak: Soak, channel: Channel): number {
  return Math.max(AT_LIMIT, stepOf(soak.context, channel));
}

/**
 * Whether the governor and not the air held the temperature over rows: half of their readings or more are at the limit, and the
 * device throttled under this load.
 */
export function isHeld(soak: Soak, channel: Channel, rows: Rows): boolean {
  const limit = limitOf(soak, channel);
  if (isReason(limit)) return false;
  const throttling = throttlingOf(soak);
  if (isReason(throttling) || throttling.onsets.length === 0) return false;
  const readings = channel.values.subarray(rows.from, rows.to).filter((value) => !Number.isNaN(value));
  const least = limit.value - toleranceOf(soak, channel);
  return 2 * readings.filter((value) => value >= least).length >= readings.length;
}
