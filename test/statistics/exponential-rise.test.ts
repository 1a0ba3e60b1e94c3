import { describe, expect, test } from 'vitest';
import { exponentialRise } from '../../src/statistics/exponential-rise.ts';
import { leastSquares } from '../../src/statistics/least-squares.ts';
import { expectAllNear, expectNear } from './near.ts';
import { autoregressive, gaussian, stepped } from './noise.ts';

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

  test.each([
    ['white noise', 0, 0],
    ['slow noise in steps', 0.9, 0.5],
  ])('%s: the same parameters as the general least squares, proved on NIST sets', (_, memory, grain) => {
    const t = Float64Array.from({ length: 800 }, (_, i) => 3 * i);
    const noise = autoregressive(800, memory, gaussian(2));
    const noisy = t.map((at, i) => 71 - 44 * Math.exp(-at / 430) + 0.4 * noise[i]!);
    const readings = grain ? stepped(noisy, grain) : noisy;
    const rise = exponentialRise(t, readings, [300])!;
    const reference = leastSquares({
      model: (at, [a, b, c]) => a! - b! * Math.exp(-at / c!),
      start: [70, 40, 400],
      x: t,
      y: readings,
    });
    expectAllNear([rise.asymptote, ...rise.amplitudes, ...rise.timeConstants], reference.parameters, 1e-7);
    expectNear(Math.sqrt(rise.rss / 797), reference.residualDeviation, 1e-9);
  });

  test('two with noise: the same as the general least squares', () => {
    const t = Float64Array.from({ length: 1200 }, (_, i) => 3 * i);
    const noise = autoregressive(1200, 0, gaussian(6));
    const readings = t.map((at, i) => 70 - 15 * Math.exp(-at / 40) - 30 * Math.exp(-at / 700) + 0.2 * noise[i]!);
    const rise = exponentialRise(t, readings, [50, 600])!;
    const reference = leastSquares({
      model: (at, [a, b, c, d, e]) => a! - b! * Math.exp(-at / d!) - c! * Math.exp(-at / e!),
      start: [69, 14, 31, 50, 650],
      x: t,
      y: readings,
    });
    expectAllNear([rise.asymptote, ...rise.amplitudes, ...rise.timeConstants], reference.parameters, 1e-6);
  });
});
