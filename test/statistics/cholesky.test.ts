import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CURRENTS, PHASES, VOLTAGES } from '../../src/figures/checks/gum-data.ts';
import { cholesky } from '../../src/statistics/cholesky.ts';
import { lineFit } from '../../src/statistics/line-fit.ts';
import { mean } from '../../src/statistics/mean.ts';
import { sampleDeviation } from '../../src/statistics/sample-deviation.ts';
import { expectNear } from './near.ts';

const times = (lower: number[][]) => lower.map((a) => lower.map((b) => a.reduce((sum, value, k) => sum + value * b[k]!, 0)));

describe('statistics/cholesky', () => {
  test('a matrix by hand', () => {
    const matrix = [
      [4, 12, -16],
      [12, 37, -43],
      [-16, -43, 98],
    ];
    expect(cholesky(matrix)).toEqual([
      [2, 0, 0],
      [6, 1, 0],
      [-8, 5, 3],
    ]);
  });

  // JCGM 100:2008, H.2, approach 1: resistance, reactance, impedance from voltage, current and phase that were read together. The
  // columns of the factor serve as independent sources, as the figures use them. Digits recomputed from the data of table H.2.
  test('GUM H.2: columns as independent sources carry the correlation of the inputs', () => {
    const inputs = [VOLTAGES, CURRENTS, PHASES];
    const covariance = inputs.map((a) => inputs.map((b) => (lineFit(a, b).slope * sampleDeviation(a) ** 2) / 5));
    const sources = cholesky(covariance);
    const [v, i, phi] = inputs.map(mean) as [number, number, number];
    const [c, s] = [Math.cos(phi), Math.sin(phi)];
    const results = [
      { value: (v / i) * c, by: [c / i, (-v * c) / i ** 2, (-v * s) / i], expected: [127.73217, 0.0710714] },
      { value: (v / i) * s, by: [s / i, (-v * s) / i ** 2, (v * c) / i], expected: [219.84651, 0.2955817] },
      { value: v / i, by: [1 / i, -v / i ** 2, 0], expected: [254.2597, 0.2363361] },
    ];
    const shares = results.map(({ by }) => [0, 1, 2].map((k) => by.reduce((sum, d, j) => sum + d * sources[j]![k]!, 0)));
    results.forEach(({ value, expected }, r) => {
      expectNear(value, expected[0]!, 1e-7);
      expectNear(Math.hypot(...shares[r]!), expected[1]!, 1e-5);
    });
    const correlation = (a: number[], b: number[]) =>
      a.reduce((sum, x, k) => sum + x * b[k]!, 0) / Math.hypot(...a) / Math.hypot(...b);
    expectNear(correlation(shares[0]!, shares[1]!), -0.58843, 1e-5);
    expectNear(correlation(shares[0]!, shares[2]!), -0.485259, 1e-5);
    expectNear(correlation(shares[1]!, shares[2]!), 0.992512, 1e-5);
  });

  test('full correlation leaves an empty column', () => {
    expect(
      cholesky([
        [4, 6],
        [6, 9],
      ]),
    ).toEqual([
      [2, 0],
      [3, 0],
    ]);
  });

  test('the factor times its transpose is the matrix', () => {
    const square = fc.array(fc.array(fc.integer({ min: -30, max: 30 }), { minLength: 4, maxLength: 4 }), {
      minLength: 4,
      maxLength: 4,
    });
    fc.assert(
      fc.property(square, (rows) => {
        const matrix = rows.map((a) => rows.map((b) => a.reduce((sum, value, k) => sum + value * b[k]!, 0)));
        const back = times(cholesky(matrix));
        matrix.forEach((row, i) => {
          row.forEach((value, j) => {
            expect(Math.abs(back[i]![j]! - value)).toBeLessThanOrEqual(1e-5 * Math.sqrt(matrix[i]![i]! * matrix[j]![j]!));
          });
        });
      }),
      { seed: 1 },
    );
  });

  test('what is no covariance is refused', () => {
    expect(() => cholesky([[-1]])).toThrow('pivot 0 is -1');
    expect(() =>
      cholesky([
        [1, 2],
        [2, 1],
      ]),
    ).toThrow('not positive semidefinite');
    expect(() =>
      cholesky([
        [0, 1],
        [1, 1],
      ]),
    ).toThrow('element 1, 0 has no pivot');
    expect(() => cholesky([[1, 2]])).toThrow('row 0 has 2 elements, expected 1');
    expect(() => cholesky([[Number.NaN]])).toThrow('element 0, 0 is NaN');
  });
});
