import { describe, expect, test } from 'vitest';
import { correlationTime } from '../../src/statistics/correlation-time.ts';
import { expectNear } from './near.ts';
import { autoregressive, gaussian } from './noise.ts';

describe('statistics/correlation-time', () => {
  // Integrated autocorrelation time of a first-order autoregressive series: (1 + φ)/(1 − φ).
  test.each([
    [0, 1],
    [0.5, 3],
    [0.9, 19],
  ])('memory %d: %d rows for one independent reading, in blocks or not', (memory, expected) => {
    const normal = gaussian(17);
    for (const n of [1000, 40_000]) {
      const runs = 60;
      let sum = 0;
      for (let run = 0; run < runs; run++) sum += correlationTime(autoregressive(n, memory, normal)).time / runs;
      expectNear(sum, expected, 0.15);
    }
  });

  test('constant and empty series', () => {
    expect(correlationTime([0, 0, 0])).toEqual({ time: 1, window: 1 });
    expect(correlationTime([])).toEqual({ time: 1, window: 1 });
  });
});
