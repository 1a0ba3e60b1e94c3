import { describe, expect, it } from 'vitest';
import { flagBase, parseFlag } from '../../../src/intake/cells/flags.ts';

describe('intake/cells/flags', () => {
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

  it('lets no damaged cell change how the intact ones are read', () => {
    expect(flagBase([...Array(20).fill('10'), 'e0'])).toEqual({
      base: 10,
      how: 'decimal: only 1 of 21 words that are not 0 hold a letter a to f',
    });
    expect(flagBase([...Array(9).fill('1'), '0', 'e0']).base).toBe(10);
    expect(flagBase([...Array(200).fill('0x10'), 'e0']).base).toBe(10);
  });

  it('takes words with letters for hexadecimal from three and one in twenty on, or from half on', () => {
    const column = (lettered: number, others: number) => [...Array(lettered).fill('e0008'), ...Array(others).fill('50005')];
    expect(flagBase(column(2, 10)).base).toBe(10);
    expect(flagBase(column(3, 10)).base).toBe(16);
    expect(flagBase(column(5, 95)).base).toBe(16);
    expect(flagBase(column(4, 96)).base).toBe(10);
    expect(flagBase(column(1, 1)).base).toBe(16);
    expect(flagBase(['0', '0', '0', 'e0008']).base).toBe(16);
  });

  it('refuses the rest', () => {
    for (const cell of ['', 'maybe', '1.5', '-1', '0x', 'key=']) expect(parseFlag(cell, 10)).toBeNaN();
  });
});
