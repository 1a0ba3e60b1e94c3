import { describe, expect, test } from 'vitest';
import { readerForm } from '../../src/quantities/numeral-print.ts';

describe('quantities/numeral-print', () => {
  test.each([
    ['71.3', '71.3'],
    ['-0.5', '−0.5'],
    ['999999999', '999999999'],
    ['1234600000000', '1.2346\u00a0×\u00a010¹²'],
    ['-1000000000', '−1\u00a0×\u00a010⁹'],
    ['0.00001', '0.00001'],
    ['0.0000012', '1.2\u00a0×\u00a010⁻⁶'],
    ['0.00000120', '1.20\u00a0×\u00a010⁻⁶'],
    ['0', '0'],
    ['0.000000', '0.000000'],
  ])('%s reads %s', (numeral, text) => {
    expect(readerForm(numeral)).toBe(text);
  });
});
