import { describe, expect, it } from 'vitest';
import { flagBase, parseFlag } from '../../src/intake/flags.ts';

describe('intake/flags', () => {
  it.each([
    ['0x50005', 0x50005],
    ['throttled=0xe0008', 0xe0008],
    ['yes', 1],
    ['FALSE', 0],
    ['0', 0],
    ['5', 5],
    ['00012', 12],
  ])('reads %s', (cell, value) => {
    expect(parseFlag(cell, 10)).toBe(value);
  });

  it('reads bare words as hexadecimal only where letters prove it', () => {
    expect(flagBase(['0', '50005', 'e0008']).base).toBe(16);
    expect(flagBase(['0', '50005']).base).toBe(10);
    expect(parseFlag('50005', 16)).toBe(0x50005);
  });

  it('refuses the rest', () => {
    for (const cell of ['', 'maybe', '1.5', '-1', '0x', 'key=']) expect(parseFlag(cell, 10)).toBeNaN();
  });
});
