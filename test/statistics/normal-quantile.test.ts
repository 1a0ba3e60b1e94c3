import { describe, expect, test } from 'vitest';
import { normalQuantile } from '../../src/statistics/normal-quantile.ts';
import { expectNear } from './near.ts';

describe('statistics/normal-quantile', () => {
  // mpmath 1.3, forty digits: √2·erfinv(2p − 1).
  test.each([
    [0.6, 0.2533471031357997],
    [0.975, 1.9599639845400538],
  ])('p = %d', (p, expected) => {
    expectNear(normalQuantile(p), expected, 1e-15);
    expectNear(normalQuantile(1 - p), -expected, 1e-14);
  });

  // SciPy 1.17, stats.norm.ppf: the far tail.
  test('p = 1e-20', () => expectNear(normalQuantile(1e-20), -9.262340089798409, 1e-14));

  test('ends and middle; p out of range is refused', () => {
    expect([0, 0.5, 1].map(normalQuantile)).toEqual([Number.NEGATIVE_INFINITY, 0, Number.POSITIVE_INFINITY]);
    expect(() => normalQuantile(-0.1)).toThrow('p is -0.1');
  });
});
