import { describe, expect, test } from 'vitest';
import { swingOf } from '../../../src/figures/thermal/swings.ts';
import { wandering } from '../../simulator/noise.ts';
import { random } from '../../simulator/random.ts';
import { every } from '../build.ts';

const t = every(1, 3600);
const climb = (time: number) => 60 - 40 * Math.exp(-time / 300);
const readings = (values: (time: number) => number) => ({ t, y: t.map(values) });

describe('figures/thermal/swings', () => {
  test('a saw and a wave of known period and height are told, by both', () => {
    for (const [period, height] of [
      [60, 3],
      [120, 3],
      [240, 6],
      [400, 4],
    ] as const) {
      const chance = random(period);
      const saw = swingOf(readings((time) => climb(time) + height * ((time / period) % 1) + 0.1 * chance.normal()));
      const wave = swingOf(
        readings((time) => climb(time) + (height / 2) * Math.sin((2 * Math.PI * time) / period) + 0.1 * chance.normal()),
      );
      for (const swing of [saw, wave]) {
        expect(swing!.period / period).toBeGreaterThan(0.9);
        expect(swing!.period / period).toBeLessThan(1.2);
        expect(swing!.height / height).toBeGreaterThan(0.8);
        expect(swing!.height / height).toBeLessThan(1.3);
      }
    }
  });

  test('noise does not swing, nor does what lasts from reading to reading, nor a course that only bends', () => {
    for (let seed = 1; seed <= 30; seed++) {
      const chance = random(seed);
      expect(swingOf(readings((time) => climb(time) + chance.normal()))).toBeNull();
      const wander = wandering(chance, 1, 30, 1);
      expect(swingOf(readings((time) => climb(time) + wander()))).toBeNull();
    }
    expect(swingOf(readings(climb))).toBeNull();
    expect(swingOf(readings(() => 50))).toBeNull();
  });

  test('fewer than four swings, or too few readings, tell nothing', () => {
    expect(swingOf(readings((time) => climb(time) + 3 * Math.sin((2 * Math.PI * time) / 900)))).toBeNull();
    const few = every(200, 3600);
    expect(swingOf({ t: few, y: few.map((time) => time % 400) })).toBeNull();
  });
});
