import { describe, expect, test } from 'vitest';
import { correct } from '../../../src/figures/surface/correct.ts';
import { bandLaw, fractionBelow, LONG_WAVE, TOTAL } from '../../../src/figures/surface/radiation.ts';
import { apart } from '../build.ts';

const seen = (reading: number, emissivitySet: number, emissivity: number, reflected: number) => ({
  reading,
  emissivitySet,
  emissivity,
  reflected,
});

describe('surface/radiation', () => {
  // Blackbody fractions: textbook tables to the digits that they share with the constants of the SI of 2019 (computed from Planck's law).
  test.each([
    [1000, 0.000321],
    [2000, 0.06673],
    [2898, 0.250106],
    [3000, 0.273229],
    [4107, 0.499956],
    [5000, 0.633726],
    [10000, 0.914157],
  ])('share below %f µm·K', (product, expected) => {
    expect(fractionBelow(product).toFixed(6)).toBe(expected.toFixed(6));
  });

  // Exitance from 8 to 14 µm, computed from Planck's law.
  test.each([
    [300, 172.5786],
    [373.15, 429.7018],
  ])('exitance at %f K', (kelvin, expected) => {
    expect(LONG_WAVE.radiance(kelvin).toFixed(4)).toBe(expected.toFixed(4));
  });

  test.each([TOTAL, LONG_WAVE, bandLaw(7.5, 14)])('$band: inverse and slope belong to the radiance', (law) => {
    for (const kelvin of [220, 273.15, 300, 350, 600]) {
      expect(apart(law.temperature(law.radiance(kelvin)), kelvin)).toBeLessThan(1e-12);
      const difference = (law.radiance(kelvin * 1.0001) - law.radiance(kelvin * 0.9999)) / (0.0002 * kelvin);
      expect(apart(law.slope(kelvin), difference)).toBeLessThan(1e-6);
    }
  });
});

describe('surface/correct', () => {
  // T⁴ written out by hand: T_obj⁴ = (ε_set T⁴ + (ε − ε_set) T_r⁴)/ε.
  test.each([
    [seen(60, 1, 0.95, 22), 61.6705],
    [seen(60, 1, 0.9, 22), 63.4977],
    [seen(60, 1, 0.5, 22), 88.1936],
    [seen(60, 1, 0.1, 22), 210.8735],
    [seen(60, 0.95, 0.9, 22), 61.7626],
    [seen(45, 0.95, 0.3, 23), 81.2623],
    [seen(40, 1, 0.6, 40), 40],
    [seen(80, 1, 0.95, -20), 83.3712],
  ])('by T⁴: %o', (given, expected) => {
    expect(correct(given, TOTAL)!.temperature.toFixed(4)).toBe(expected.toFixed(4));
  });

  // Planck's law in a camera's band, by numerical integration; 7.5 to 14 µm, and 8 to 14 µm.
  test.each([
    [seen(60, 1, 0.95, 22), 61.707, 61.721],
    [seen(60, 1, 0.9, 22), 63.579, 63.61],
    [seen(60, 1, 0.5, 22), 89.41, 89.792],
    [seen(60, 0.95, 0.9, 22), 61.801, 61.816],
  ])('in a band: %o', (given, wide, long) => {
    expect(correct(given, bandLaw(7.5, 14))!.temperature.toFixed(3)).toBe(wide.toFixed(3));
    expect(correct(given, LONG_WAVE)!.temperature.toFixed(3)).toBe(long.toFixed(3));
  });

  // Data sheet of the MLX90640, T_a-r of its worked example at another emissivity, by hand; its own numbers are in the table of checks.
  test('what surroundings radiate through an emissivity of 0.95', () => {
    const surrounding = TOTAL.radiance(correct(seen(39.184, 1, 0.95, 31), TOTAL)!.temperature + 273.15);
    expect(apart(surrounding, 9566964549.2957)).toBeLessThan(1e-13);
  });

  test('derivatives are those of the correction', () => {
    const given = seen(59, 0.95, 0.8, 23);
    const { by } = correct(given, LONG_WAVE)!;
    for (const [key, name] of [
      ['reading', 'reading'],
      ['emissivity', 'emissivity'],
      ['reflected', 'reflected'],
    ] as const) {
      const step = 1e-4;
      const at = (sign: number) => correct({ ...given, [key]: given[key] + sign * step }, LONG_WAVE)!.temperature;
      expect(apart(by[name], (at(1) - at(-1)) / (2 * step))).toBeLessThan(1e-6);
    }
  });

  test('nothing where the surface would radiate less than nothing', () => {
    expect(correct(seen(-40, 1, 0.1, 80), TOTAL)).toBeNull();
  });
});
