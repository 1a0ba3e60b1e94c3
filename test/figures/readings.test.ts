import { describe, expect, test } from 'vitest';
import { duration, plain } from '../../src/figures/in-words.ts';
import { readingsOf } from '../../src/figures/readings.ts';
import { timeWhere } from '../../src/figures/time-where.ts';
import { logOf } from './build.ts';

const NONE = Number.NaN;

describe('readings', () => {
  test('leave missing ones out, and stand for half the step to each side', () => {
    const log = logOf([0, 1, 2, 3, 4, 5], { soc: { quantity: 'temperature', values: [NONE, 1, NONE, 3, 4, NONE] } });
    const readings = readingsOf(log, log.channels[0]!.values, { from: 0, to: 6 });
    expect([...readings.t]).toEqual([1, 3, 4]);
    expect([...readings.y]).toEqual([1, 3, 4]);
    expect([...readings.weights]).toEqual([1, 1.5, 0.5]);
    expect(readings).toMatchObject({ observed: 3, gaps: 0, lines: [3, 6] });
  });

  test('do not stand for gaps of more than five steps, also where only readings are missing', () => {
    const values = [1, 1, ...new Array<number>(8).fill(NONE), 1, 1];
    const log = logOf(
      values.map((_, row) => row),
      { soc: { quantity: 'temperature', values } },
    );
    const readings = readingsOf(log, log.channels[0]!.values, { from: 0, to: 12 });
    expect([...readings.weights]).toEqual([0.5, 0.5, 0.5, 0.5]);
    expect(readings).toMatchObject({ observed: 2, gaps: 1, gapTime: 9 });
  });

  test('none at all', () => {
    const log = logOf([0, 1], { soc: { quantity: 'temperature', values: [NONE, NONE] } });
    expect(readingsOf(log, log.channels[0]!.values, { from: 0, to: 2 })).toMatchObject({ observed: 0, lines: null });
    expect(readingsOf(log, log.channels[0]!.values, { from: 2, to: 2 }).y).toHaveLength(0);
  });

  test('time where a condition holds; one that changes as fast as it was read is known as five glances tell it, √(n·p·(1 − p)) steps', () => {
    const log = logOf([0, 1, 2, 3, 4], { soc: { quantity: 'temperature', values: [0, 9, 9, 0, 9] } });
    const readings = readingsOf(log, log.channels[0]!.values, { from: 0, to: 5 });
    expect(timeWhere(readings, (value) => value > 5, 1, { from: 0, to: 4 })).toEqual({
      time: 2.5,
      u: expect.closeTo(Math.sqrt(5 * 0.6 * 0.4), 12),
    });
    // The last reading stands for the rest of its phase, up to a step.
    expect(timeWhere(readings, (value) => value > 5, 1, { from: 0, to: 5 }).time).toBe(3.5);
    expect(timeWhere(readings, (value) => value > 5, 1, { from: 0, to: 50 }).time).toBe(2.5);
  });
});

test('durations in words', () => {
  expect([45, 119.6, 120, 750, 3600, 10_800, 16_200].map(duration)).toEqual([
    '45 s',
    '120 s',
    '2 min',
    '12.5 min',
    '60 min',
    '3 h',
    '4.5 h',
  ]);
  expect([0, 1e-9, 1234.5, 0.1 + 0.2].map(plain)).toEqual(['0', '1e-9', '1230', '0.3']);
});
