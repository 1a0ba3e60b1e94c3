/** Throttle flags as they are drawn: 1 while the device says that it throttles, else 0. */
import type { Channel } from '../intake/log.ts';

/**
 * 1 where a bit that means "now" is set (any bit, where none is declared), else 0; NaN without a reading. Keys of `bits` are
 * numbers of bits, 0 for the lowest, as the figures read them.
 */
export function throttledNow(channel: Channel): Float64Array {
  const masks = Object.keys(channel.bits ?? {}).map((key) => 2 ** Number(key));
  const isSet = (word: number) => (masks.length === 0 ? word !== 0 : masks.some((mask) => Math.floor(word / mask) % 2 === 1));
  return channel.values.map((word) => (Number.isNaN(word) ? Number.NaN : Number(isSet(word))));
}
