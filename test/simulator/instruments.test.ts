import { describe, expect, test } from 'vitest';
import { drawInstruments, read } from './instruments.ts';
import { benchInstruments, LIMITS } from './larch.ts';
import { random } from './random.ts';

describe('simulator/instruments', () => {
  test('a reading is gain and offset on the truth, rounded to the step', () => {
    const meter = { gain: 0.005, offset: 0.002, noise: 0, step: 0.001 };
    expect(read(meter, 1, random(1))).toBeCloseTo(1.007, 9);
  });

  // A rectangular distribution of half width a has the standard deviation a/√3 (JCGM 100:2008, 4.3.7).
  test('offsets are rectangular within the limits: standard deviation a/√3', () => {
    const source = random(5);
    const offsets = Array.from({ length: 5000 }, () => drawInstruments(source, LIMITS).probe.offset);
    const deviation = Math.sqrt(offsets.reduce((sum, x) => sum + x * x, 0) / offsets.length);
    expect(Math.abs((deviation * Math.sqrt(3)) / LIMITS.probe - 1)).toBeLessThan(0.03);
    expect(Math.max(...offsets.map(Math.abs))).toBeLessThanOrEqual(LIMITS.probe);
  });

  test('two specimens share the bench but for the sensor on their die', () => {
    const { die: first, ...bench } = benchInstruments('no-1');
    const { die: second, ...same } = benchInstruments('no-2');
    expect(same).toEqual(bench);
    expect(second.offset).not.toBe(first.offset);
  });
});
