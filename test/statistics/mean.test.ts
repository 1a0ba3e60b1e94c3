import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { TWENTY_TEMPERATURES } from '../../src/figures/checks/gum-data.ts';
import { mean } from '../../src/statistics/mean.ts';
import { expectNear } from './near.ts';
import { nist } from './nist.ts';

describe('statistics/mean', () => {
  // NIST Statistical Reference Datasets, univariate, certified means.
  test.each(['Lew', 'Michelso', 'PiDigits', 'NumAcc1', 'NumAcc2', 'NumAcc3'])('%s: certified mean', (name) => {
    const { y, certified } = nist(name);
    expectNear(mean(y), certified.mean, 1e-15);
  });

  test('GUM 4.4.3, table 1: twenty temperatures (data from memory)', () => {
    expectNear(mean(TWENTY_TEMPERATURES), 100.145, 1e-14);
  });

  test('a mean lies between the smallest and the largest, and moves with an offset', () => {
    const numbers = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 50 });
    fc.assert(
      fc.property(numbers, fc.integer({ min: -1000, max: 1000 }), (values, offset) => {
        const centre = mean(values);
        expect(centre).toBeGreaterThanOrEqual(Math.min(...values) - 1e-9);
        expect(centre).toBeLessThanOrEqual(Math.max(...values) + 1e-9);
        expect(Math.abs(mean(values.map((value) => value + offset)) - centre - offset)).toBeLessThan(1e-8);
      }),
      { seed: 1 },
    );
  });

  test('no values, or one that is no number, is refused with what was found', () => {
    expect(() => mean([])).toThrow('found no values');
    expect(() => mean([1, Number.NaN])).toThrow('values[1] is NaN');
  });
});
