import { describe, expect, test } from 'vitest';
import { trapezoid } from '../../src/statistics/trapezoid.ts';
import { expectNear } from './near.ts';

describe('statistics/trapezoid', () => {
  test('uneven steps by hand: 3 + 4 + 10 + 13.5 J', () => {
    expect(trapezoid([0, 1, 2, 4, 7], [2, 4, 4, 6, 3])).toBe(30.5);
  });

  // Burden & Faires, Numerical Analysis, first column of the Romberg table (from memory): sin over 0 … π, exact integral 2.
  test.each([
    [2, 1.570796327],
    [4, 1.896118898],
    [8, 1.974231602],
    [16, 1.993570344],
  ])('sine in %i panels', (panels, expected) => {
    const t = Array.from({ length: panels + 1 }, (_, k) => (k * Math.PI) / panels);
    expectNear(trapezoid(t, t.map(Math.sin)), expected, 1e-9);
  });

  test('a constant power: 5 W for 24 h is 0.12 kWh', () => {
    const t = Float64Array.from({ length: 8641 }, (_, k) => 1.7e9 + 10 * k);
    expectNear(
      trapezoid(
        t,
        t.map(() => 5),
      ) / 3.6e6,
      0.12,
      1e-13,
    );
  });

  test('no reading or one has no area; time that goes back is refused', () => {
    expect([trapezoid([], []), trapezoid([3], [5])]).toEqual([0, 0]);
    expect(trapezoid([0, 1, 1, 2], [1, 1, 3, 3])).toBe(4);
    expect(() => trapezoid([0, 2, 1], [1, 1, 1])).toThrow('t[2] is 1, before t[1] = 2');
  });
});
