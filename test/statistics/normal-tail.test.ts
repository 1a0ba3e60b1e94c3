import { describe, expect, test } from 'vitest';
import { normalQuantile } from '../../src/statistics/normal-quantile.ts';
import { normalTail } from '../../src/statistics/normal-tail.ts';
import { expectNear } from './near.ts';

describe('statistics/normal-tail', () => {
  // M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, Table 26.1 (from memory): P(1), P(2) and P(3).
  test.each([
    [1, 0.341344746068543],
    [2, 0.477249868051821],
    [3, 0.498650101968369],
  ])('the area up to %d', (z, area) => {
    expectNear(normalTail(z).between, area, 1e-14);
  });

  test.each([0.001, 0.5, 1.959963984540054, 3.999, 4.001, 5])('turns the quantile of AS 241 round at %d', (z) => {
    expectNear(normalQuantile(0.5 + normalTail(z).between), z, 1e-9);
  });

  test('ends and refusals', () => {
    expect(normalTail(0)).toEqual({ between: 0, density: 1 / Math.sqrt(2 * Math.PI) });
    expect(normalTail(Number.POSITIVE_INFINITY)).toEqual({ between: 0.5, density: 0 });
    expect(() => normalTail(-1)).toThrow('z is -1, expected 0 or more');
  });
});
