/** Bits of a throttle flag's words: those that say what is now, and sticky ones, which stay set from the first time until the next boot. */
import type { Channel } from '../../intake/log.ts';

export interface Bit {
  readonly reason: string;
  readonly isSet: (word: number) => boolean;
}

export interface StickyBit extends Bit {
  /** 0 for the lowest. */
  readonly number: number;
}

type Flag = Pick<Channel, 'bits' | 'sticky'>;

/**
 * Bits that mean "now". Where a channel names no bit at all, every word but zero says "throttled"; where it names sticky bits alone, it
 * has none.
 */
export function nowBits({ bits, sticky }: Flag): readonly Bit[] {
  if (bits === undefined && sticky === undefined) return [{ reason: 'throttled', isSet: (word) => word !== 0 }];
  return Object.entries(bits ?? {}).map(([key, reason]) => ({ reason, isSet: isSetAt(Number(key)) }));
}

/** Bits that mean "has occurred since boot". */
export function stickyBits({ sticky }: Flag): readonly StickyBit[] {
  return Object.entries(sticky ?? {}).map(([key, reason]) => ({ number: Number(key), reason, isSet: isSetAt(Number(key)) }));
}

/** By division, since bitwise operators stop at the 31st bit. */
function isSetAt(number: number): (word: number) => boolean {
  const mask = 2 ** number;
  return (word) => Math.floor(word / mask) % 2 === 1;
}
