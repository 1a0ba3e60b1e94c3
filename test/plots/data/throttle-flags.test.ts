import { describe, expect, test } from 'vitest';
import { throttledNow } from '../../../src/plots/data/throttle-flags.ts';
import { channel } from '../subjects.ts';

describe('plots/data/throttle-flags', () => {
  test('bits that mean "now" raise the flag, others do not, a missing word stays missing', () => {
    const words = [0, 0b0001, 0b0100, 0b10_0000, 0b10_0100, Number.NaN, 2 ** 40 + 4];
    const flag = channel('flag', 'throttle_flag', '1', words, 1, { bits: { 0: 'low voltage', 2: 'hot' } });
    expect([...throttledNow(flag)]).toEqual([0, 1, 1, 0, 1, Number.NaN, 1]);
  });

  test('without declared bits every word but zero says so', () => {
    expect([...throttledNow(channel('flag', 'throttle_flag', '1', [0, 1, 8], 1))]).toEqual([0, 1, 1]);
  });
});
