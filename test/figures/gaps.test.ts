import { describe, expect, test } from 'vitest';
import { fillGaps, isFilled } from '../../src/figures/gaps.ts';
import { readingsOf } from '../../src/figures/readings.ts';
import { every, logOf } from './build.ts';

const readings = (t: ArrayLike<number>, value: (t: number) => number) => {
  const log = logOf(t, { input: { quantity: 'power', values: value } });
  return readingsOf(log, log.channels[0]!.values, { from: 0, to: log.rows });
};
const without = (from: number, to: number, end = 3600) => [...every(1, end)].filter((t) => t <= from || t >= to);

describe('figures/gaps', () => {
  test('without a gap nothing is filled', () => {
    expect(
      fillGaps(
        readings(every(1, 100), () => 5),
        { from: 0, to: 101 },
      ),
    ).toMatchObject({ integral: 0, u: 0, seconds: 0, count: 0 });
  });

  test('a straight course is guessed exactly', () => {
    const filled = fillGaps(
      readings(without(1000, 1200), (t) => 2 + t / 100),
      null,
    );
    if (!isFilled(filled)) throw new Error('not filled');
    expect(filled.integral).toBeCloseTo(200 * (2 + 11), 9);
    expect(filled.u).toBeCloseTo(0, 9);
    // 1000 s and 2400 s were logged: stretches of 200 s and a side of 100 s, of which 3 and 7 fit.
    expect(filled).toMatchObject({ seconds: 200, count: 1, dof: 9 });
  });

  // By hand: the level changes somewhere in 200 s, rectangular: (8 − 1)·200/√12.
  test('a level that is another behind the gap changed anywhere in it', () => {
    const filled = fillGaps(
      readings(without(1000, 1200), (t) => (t <= 1000 ? 1 : 8)),
      null,
    );
    if (!isFilled(filled)) throw new Error('not filled');
    expect(filled.integral).toBeCloseTo(200 * 4.5, 9);
    expect(filled.u).toBeCloseTo(1400 / Math.sqrt(12), 9);
  });

  test('a wave is as uncertain as the same guess proves where it was logged', () => {
    const wave = (t: number) => Math.sin((2 * Math.PI * t) / 400);
    const filled = fillGaps(readings(without(1000, 1200), wave), null);
    if (!isFilled(filled)) throw new Error('not filled');
    expect(filled.u).toBeGreaterThan(50);
    const truth = (400 / (2 * Math.PI)) * (Math.cos((2 * Math.PI * 1000) / 400) - Math.cos((2 * Math.PI * 1200) / 400));
    expect(Math.abs(filled.integral - truth)).toBeLessThan(2 * filled.u);
  });

  test('a gap that three logged stretches do not match is not filled', () => {
    expect(
      fillGaps(
        readings(without(1200, 2400), () => 5),
        null,
      ),
    ).toEqual({ longest: 1200, seconds: 1200 });
  });

  test('what the span has beyond the readings is a gap of one side', () => {
    const filled = fillGaps(
      readings(every(1, 3600), () => 5),
      { from: -100, to: 3602 },
    );
    expect(filled).toMatchObject({ integral: 500, seconds: 100, count: 1 });
  });
});
