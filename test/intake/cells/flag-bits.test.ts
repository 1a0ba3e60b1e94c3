import { describe, expect, it } from 'vitest';
import { flagOddities, usedBits } from '../../../src/intake/cells/flag-bits.ts';

describe('intake/cells/flag-bits', () => {
  it('tells bits that go off again from those that stay', () => {
    expect(usedBits([0, 0x4, 0x40004, 0x40000, Number.NaN, 0x40000])).toEqual([
      { number: 2, goesOff: true },
      { number: 18, goesOff: false },
    ]);
    expect(usedBits([2 ** 40, 0])).toEqual([{ number: 40, goesOff: true }]);
    expect(usedBits([2 ** 47, 2 ** 48])).toEqual([{ number: 47, goesOff: true }]);
    expect(usedBits([])).toEqual([]);
  });

  it('asks for the meaning of bits, and of a plain 0 and 1 for nothing', () => {
    expect(flagOddities([0, 1, 0])).toEqual([]);
    expect(flagOddities([0, 0xe0008, 0x50005])).toEqual([
      'bits that come and go: 3, 17, 19; name those that tell of throttling now under `bits`',
      'bits that never go off again: 0, 2, 16, 18; if they stay set until the next boot, name them under `sticky`',
    ]);
  });
});
