import { describe, expect, test } from 'vitest';
import { correct } from '../../../src/figures/surface/correct.ts';
import { bandLaw, fractionBelow, LONG_WAVE, type RadiationLaw, TOTAL } from '../../../src/figures/surface/radiation.ts';
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

  // Data sheet of the MLX90640 sensor, worked example (quoted by public drivers): T_a-r = Tr⁴ − (Tr⁴ − Ta⁴)/ε, Ta 39.184, Tr 31.
  test('the data sheet example of an infrared sensor', () => {
    const surrounding = (emissivity: number) =>
      TOTAL.radiance(correct(seen(39.184, 1, emissivity, 31), TOTAL)!.temperature + 273.15);
    expect(apart(surrounding(1), 9516495632.56)).toBeLessThan(1e-11);
    expect(apart(surrounding(0.95), 9566964549.2957)).toBeLessThan(1e-13);
    const [signal, alpha, ksTo] = [679.250909123826, 1.1876487360496e-7, -0.00080108642578125];
    const sx = ksTo * (alpha ** 3 * signal + alpha ** 4 * surrounding(1)) ** 0.25;
    const object = signal / (alpha * (1 - 273.15 * ksTo) + sx) + surrounding(1);
    expect((TOTAL.temperature(object) - 273.15).toFixed(5)).toBe('80.36331');
  });

  // README and help of Thermimage (R): raw signals of a camera, its calibration constants, air of 1 m at 50 % humidity, a window.
  test('a camera’s raw signals with its own calibration', () => {
    const [r1, b, f, o, r2] = [21106.77, 1501, 1, -7340, 0.012545258];
    const camera: RadiationLaw = {
      band: 'of the camera',
      radiance: (kelvin) => r1 / (r2 * (Math.exp(b / kelvin) - f)),
      slope: (kelvin) => (r1 * b * Math.exp(b / kelvin)) / (r2 * (Math.exp(b / kelvin) - f) ** 2 * kelvin ** 2),
      temperature: (radiance) => b / Math.log(r1 / (r2 * radiance) + f),
    };
    const celsius = (signal: number) => camera.temperature(signal + o) - 273.15;
    const air = transmission(20, 0.5, 1);
    // With everything around at one temperature, air and window act as a lower emissivity does.
    const behind = (signal: number) => correct(seen(celsius(signal), 1, 0.95 * 0.96 * air * air, 20), camera)!.temperature;
    expect(behind(17994.06).toFixed(5)).toBe('23.31223');
    expect(celsius(18109).toFixed(5)).toBe('23.62433');
    expect(behind(18109).toFixed(5)).toBe('24.00022');
    expect((camera.radiance(23 + 273.15) - o).toFixed(2)).toBe('17994.06');
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

/** Transmission of half of a path of air, as Thermimage has it: °C, relative humidity, m. */
function transmission(air: number, humidity: number, distance: number): number {
  const water = humidity * Math.exp(1.5587 + 0.06939 * air - 0.00027816 * air ** 2 + 0.00000068455 * air ** 3);
  const part = (alpha: number, beta: number) => Math.exp(-Math.sqrt(distance / 2) * (alpha + beta * Math.sqrt(water)));
  return 1.9 * part(0.006569, -0.002276) + (1 - 1.9) * part(0.01262, -0.00667);
}
