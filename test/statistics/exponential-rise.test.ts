import { describe, expect, test } from 'vitest';
import { exponentialRise } from '../../src/statistics/exponential-rise.ts';
import { expectAllNear } from './near.ts';

const s = Float64Array.from({ length: 300 }, (_, i) => 2 * i);
const y = s.map((at) => 20 - 8 * Math.exp(-at / 90));

describe('statistics/exponential-rise', () => {
  test.each([30, 60, 120, 300])('from a start of %i the same end', (start) => {
    const rise = exponentialRise(s, y, [start])!;
    expectAllNear([rise.asymptote, ...rise.amplitudes, ...rise.timeConstants], [20, 8, 90], 1e-10);
    expect(Math.max(...rise.residuals.map(Math.abs))).toBeLessThan(1e-10);
  });

  // (XᵀX)⁻¹ by finite differences of the model: X has the columns 1, −e^(−s/τ), −A·s/τ²·e^(−s/τ).
  test('the inverse is that of the model’s own derivatives', () => {
    const { inverse } = exponentialRise(s, y, [80])!;
    const columns = [s.map(() => 1), s.map((at) => -Math.exp(-at / 90)), s.map((at) => ((-8 * at) / 90 ** 2) * Math.exp(-at / 90))];
    const gram = columns.map((a) => columns.map((b) => a.reduce((sum, value, i) => sum + value * b[i]!, 0)));
    gram.forEach((row, i) => {
      inverse.forEach((_, j) => {
        const element = row.reduce((sum, value, k) => sum + value * inverse[k]![j]!, 0);
        expect(Math.abs(element - (i === j ? 1 : 0))).toBeLessThan(1e-6);
      });
    });
  });

  test('a straight line has no time constant, equal starts no two', () => {
    expect(
      exponentialRise(
        s,
        s.map((at) => 0.01 * at),
        [300],
      ),
    ).toBeNull();
    expect(exponentialRise(s, y, [90, 90])).toBeNull();
  });
});
