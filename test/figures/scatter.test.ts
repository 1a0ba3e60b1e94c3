import { describe, expect, test } from 'vitest';
import { scatterOf, typicalScatter } from '../../src/figures/scatter.ts';
import { gaussian } from '../statistics/noise.ts';

describe('figures/scatter', () => {
  const normal = gaussian(7);
  const noisy = Float64Array.from({ length: 4000 }, (_, i) => 0.01 * i + 0.3 * normal());

  test('the scatter of white noise on a straight course, by squares and by the median', () => {
    expect(Math.abs(scatterOf(noisy).deviation / 0.3 - 1)).toBeLessThan(0.05);
    expect(Math.abs(typicalScatter(noisy) / 0.3 - 1)).toBeLessThan(0.05);
  });

  test('jumps swell the squares and leave the median', () => {
    const jumping = noisy.map((value, i) => value + (i > 1000 && i < 3000 ? 60 : 0));
    expect(scatterOf(jumping).deviation).toBeGreaterThan(2 * 0.3);
    expect(Math.abs(typicalScatter(jumping) / 0.3 - 1)).toBeLessThan(0.05);
  });

  test('readings that jump to and fro by one: the factor of the median is that of a normal distribution', () => {
    // Φ(0.6744898) = 0.75 (any table of the normal distribution): half of all deviations are smaller.
    const wave = Float64Array.from({ length: 101 }, (_, i) => i % 2);
    expect(Math.abs((typicalScatter(wave) * 0.6744898 * Math.sqrt(6)) / 2 - 1)).toBeLessThan(1e-9);
  });

  test('a line has none, nor have two readings', () => {
    expect(typicalScatter(Float64Array.of(1, 2, 3, 4))).toBe(0);
    expect(typicalScatter(Float64Array.of(1, 5))).toBe(0);
  });
});
