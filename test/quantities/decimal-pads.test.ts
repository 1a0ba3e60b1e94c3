import { describe, expect, it } from 'vitest';
import { decimalPads } from '../../src/quantities/decimal-pads.ts';

describe('quantities/decimal-pads', () => {
  it('completes fractions to the longest of the same unit', () => {
    expect(decimalPads(['71.32\u00a0°C', '\u22128\u00a0°C', '5.1\u00a0°C', '6.432\u00a0W', '2.0'])).toEqual([
      '',
      '.00',
      '0',
      '',
      '',
    ]);
  });

  it('pads nothing where all are alike, where there is no number, and beside powers of ten of other units', () => {
    expect(decimalPads(['12\u00a0min', '7\u00a0min'])).toEqual(['', '']);
    expect(decimalPads(['absent', '', '1.25\u00a0K'])).toEqual(['', '', '']);
    expect(decimalPads(['1.2\u00a0×\u00a010⁻⁷\u00a0A', '3\u00a0A'])).toEqual(['', '']);
    expect(decimalPads([])).toEqual([]);
  });
});
