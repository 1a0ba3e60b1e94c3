import { describe, expect, test } from 'vitest';
import { geometricMean } from '../../src/statistics/geometric-mean.ts';
import { mean } from '../../src/statistics/mean.ts';
import { expectAllNear } from './near.ts';

// Null & Lobur, Essentials of Computer Organization and Architecture, tables 10.4 and 10.5: seconds of five programs on three systems.
const SECONDS = { a: [50, 200, 250, 400, 5000], b: [100, 400, 500, 800, 4100], c: [500, 600, 500, 800, 3500] };
const ratios = (reference: number[]) => Object.values(SECONDS).map((system) => reference.map((time, k) => time / system[k]!));

describe('statistics/geometric-mean', () => {
  test('the book: normalised to the second and to the third system (printed 1.6733, 0.6898; 2.4258)', () => {
    expectAllNear(ratios(SECONDS.b).map(geometricMean), [1.67335, 1, 0.689812], 2e-6);
    expectAllNear(ratios(SECONDS.c).map(geometricMean), [2.425805, 1.44967, 1], 2e-6);
  });

  // Fleming & Wallace, Communications of the ACM 29(3), 1986 (data from memory): the order survives a change of reference, which it
  // does not for arithmetic means.
  test('Fleming & Wallace: three processors', () => {
    const seconds = [
      [417, 83, 66, 39449, 772],
      [244, 70, 153, 33527, 368],
      [134, 70, 135, 66000, 369],
    ];
    const to = (reference: number[]) => seconds.map((system) => system.map((time, k) => time / reference[k]!));
    expectAllNear(to(seconds[0]!).map(geometricMean), [1, 0.857437, 0.849844], 2e-6);
    expectAllNear(to(seconds[1]!).map(geometricMean), [1.166267, 1, 0.991145], 2e-6);
    expectAllNear(to(seconds[1]!).map(mean), [1.320113, 1, 1.080563], 2e-6);
  });

  test('a value that is not above zero is refused', () => {
    expect(() => geometricMean([1, 0])).toThrow('values[1] is 0, expected a number above zero');
    expect(() => geometricMean([])).toThrow('found no values');
  });
});
