import { describe, expect, test } from 'vitest';
import { leastSquares } from '../../src/statistics/least-squares.ts';
import { type TwoTimeConstants, twoTimeConstants } from '../../src/statistics/two-time-constants.ts';
import { expectAllNear, expectNear } from './near.ts';
import { autoregressive, gaussian } from './noise.ts';

const t = Float64Array.from({ length: 1200 }, (_, i) => 3 * i);
const response = t.map((at) => 70 - 15 * Math.exp(-at / 40) - 30 * Math.exp(-at / 700));

function fitted(y: Float64Array): TwoTimeConstants {
  const fit = twoTimeConstants(t, y);
  if ('failed' in fit) throw new Error(fit.failed);
  return fit;
}

describe('statistics/two-time-constants', () => {
  test('an exact response comes back, shorter time constant first', () => {
    const fit = fitted(response);
    expectAllNear([fit.asymptote, ...fit.amplitudes, ...fit.timeConstants], [70, 15, 30, 40, 700], 1e-8);
    expect([fit.start, fit.rows]).toEqual([0, 1200]);
  });

  test('a short part of opposite sign', () => {
    const fit = fitted(t.map((at) => 50 + 4 * Math.exp(-at / 60) - 20 * Math.exp(-at / 500)));
    expectAllNear([...fit.amplitudes, ...fit.timeConstants], [-4, 20, 60, 500], 1e-8);
  });

  test('with noise: the same parameters and covariance as the general least squares, proved on NIST sets', () => {
    const noise = autoregressive(1200, 0, gaussian(6));
    const y = response.map((value, i) => value + 0.2 * noise[i]!);
    const fit = fitted(y);
    const reference = leastSquares({
      model: (at, [a, b, c, d, e]) => a! - b! * Math.exp(-at / d!) - c! * Math.exp(-at / e!),
      start: [69, 14, 31, 50, 650],
      x: t,
      y,
    });
    expectAllNear([fit.asymptote, ...fit.amplitudes, ...fit.timeConstants], reference.parameters, 1e-6);
    const inflation = fit.covariance[0]![0]! / reference.covariance[0]![0]!;
    expect(inflation).toBeGreaterThan(0.99);
    expect(inflation).toBeLessThan(1.5);
    fit.covariance.forEach((row, k) => {
      expectNear(row[k]!, inflation * reference.covariance[k]![k]!, 1e-4);
    });
  });

  test('a single exponential holds no second one', () => {
    const why = twoTimeConstants(
      t,
      t.map((at) => 5 - Math.exp(-at / 300)),
    ) as { failed: string };
    expect(why.failed).toBe('no two time constants can be told apart in the readings');
    expect(twoTimeConstants([0, 1, 2], [1, 2, 3])).toEqual({ failed: '3 readings are too few, 7 are needed' });
  });
});
