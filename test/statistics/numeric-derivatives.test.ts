import { describe, expect, test } from 'vitest';
import { numericDerivatives } from '../../src/statistics/numeric-derivatives.ts';
import { expectAllNear } from './near.ts';

describe('statistics/numeric-derivatives', () => {
  test('derivatives of a·e^(−b·x) by a and b agree with the formulas', () => {
    const [a, b, x] = [3, 0.4, [0.5, 1, 4]];
    const [byA, byB] = numericDerivatives((at, [p, q]) => p! * Math.exp(-q! * at), x, [a, b]);
    expectAllNear(
      byA!,
      x.map((at) => Math.exp(-b * at)),
      1e-11,
    );
    expectAllNear(
      byB!,
      x.map((at) => -a * at * Math.exp(-b * at)),
      1e-11,
    );
  });

  test('at a parameter of zero the step is absolute', () => {
    const [derivative] = numericDerivatives((at, [p]) => Math.sin(p! * at), [2], [0]);
    expectAllNear(derivative!, [2], 1e-11);
    expect(derivative).toBeInstanceOf(Float64Array);
  });
});
