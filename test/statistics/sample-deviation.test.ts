import { describe, expect, test } from 'vitest';
import { TWENTY_TEMPERATURES } from '../../src/figures/checks/gum-data.ts';
import { sampleDeviation } from '../../src/statistics/sample-deviation.ts';
import { expectNear } from './near.ts';
import { nist } from './nist.ts';

describe('statistics/sample-deviation', () => {
  // NIST Statistical Reference Datasets, univariate. The data themselves are rounded to doubles: that floor is 3.5e-10 for NumAcc3.
  test.each([
    ['Lew', 1e-14],
    ['Michelso', 3e-14],
    ['PiDigits', 1e-14],
    ['NumAcc1', 0],
    ['NumAcc2', 2e-14],
    ['NumAcc3', 4e-10],
  ])('%s: certified deviation', (name, tolerance) => {
    const { y, certified } = nist(name);
    expectNear(sampleDeviation(y), certified.stdDev, tolerance);
  });

  test('GUM 4.4.3: s = 1.489 °C, u of the mean 0.333 °C (data from memory; more digits computed)', () => {
    const s = sampleDeviation(TWENTY_TEMPERATURES);
    expectNear(s, 1.48884448, 1e-8);
    expectNear(s / Math.sqrt(20), 0.33291575, 1e-8);
  });

  test('one value has no spread: refused', () => {
    expect(() => sampleDeviation([3])).toThrow('found 1 values, expected at least 2');
  });
});
