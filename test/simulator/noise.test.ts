import { describe, expect, test } from 'vitest';
import { quantise, wandering } from './noise.ts';
import { random } from './random.ts';

describe('simulator/noise', () => {
  test('wandering noise has the deviation and the lag-one correlation of an AR(1) process, e^(−step/memory)', () => {
    const next = wandering(random(3), 2, 10, 1);
    const values = Array.from({ length: 60_000 }, next);
    const mean = values.reduce((a, b) => a + b) / values.length;
    const square = values.reduce((sum, x) => sum + (x - mean) ** 2, 0);
    const lagged = values.slice(1).reduce((sum, x, k) => sum + (x - mean) * ((values[k] ?? 0) - mean), 0);
    expect(Math.abs(Math.sqrt(square / values.length) / 2 - 1)).toBeLessThan(0.04);
    expect(Math.abs(lagged / square - Math.exp(-0.1))).toBeLessThan(0.01);
  });

  test('quantise rounds to steps, and leaves alone without one', () => {
    expect([quantise(71.3, 0.5), quantise(71.24, 0.5), quantise(-0.3, 0.5), quantise(71.3, 0)]).toEqual([71.5, 71, -0.5, 71.3]);
  });
});
