/** Throttle flags as they are drawn: 1 while the device says that it throttles, else 0. */
import { nowBits } from '../../figures/clock/bits.ts';
import type { Channel } from '../../intake/log.ts';

/** 1 where a bit that means "now" is set, as the figures read it, else 0; NaN without a reading. */
export function throttledNow(channel: Channel): Float64Array {
  const bits = nowBits(channel);
  return channel.values.map((word) => (Number.isNaN(word) ? Number.NaN : Number(bits.some(({ isSet }) => isSet(word)))));
}
