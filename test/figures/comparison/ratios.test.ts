import { describe, expect, test } from 'vitest';
import { standardUncertainty } from '../../../src/quantities/uncertainty.ts';
import { expectNear } from '../../statistics/near.ts';
import { presentAt } from '../build.ts';
import { absentAt, compareRuns, figure, part, type Sketch } from './runs.ts';

/** Seconds by program as scores of which less is better. */
const seconds = (values: readonly number[]): Sketch => ({
  better: 'lower',
  unit: 's',
  scores: Object.fromEntries(values.map((value, k) => [`p${k}`, value])),
});

const value = (figures: ReturnType<typeof compareRuns>, address: string) => presentAt(figures, address).quantity.value;

describe('speedup', () => {
  // P. J. Fleming and J. J. Wallace, Communications of the ACM 29(3), 1986, 218–221 (data from memory, results recomputed from it).
  test('the geometric mean of Fleming and Wallace’s three machines, from either reference', () => {
    const r = seconds([417, 83, 66, 39449, 772]);
    const m = seconds([244, 70, 153, 33527, 368]);
    const z = seconds([134, 70, 135, 66000, 369]);
    const toR = compareRuns({ r, m, z });
    expectNear(1 / value(toR, 'speedup.m'), 0.857437, 1e-6);
    expectNear(1 / value(toR, 'speedup.z'), 0.849844, 1e-6);
    const toM = compareRuns({ m, r, z });
    expectNear(1 / value(toM, 'speedup.r'), 1.166267, 1e-6);
    expectNear(1 / value(toM, 'speedup.z'), 0.991145, 1e-6);
    expectNear(value(toR, 'speedup.z') / value(toR, 'speedup.m'), value(toM, 'speedup.z'), 1e-14);
  });

  // L. Null and J. Lobur, The Essentials of Computer Organization and Architecture, Tables 10.4 and 10.5: printed to four decimals.
  test('the systems A, B and C of Null and Lobur', () => {
    const a = seconds([50, 200, 250, 400, 5000]);
    const b = seconds([100, 400, 500, 800, 4100]);
    const c = seconds([500, 600, 500, 800, 3500]);
    const toB = compareRuns({ b, a, c });
    expect(value(toB, 'speedup.a').toFixed(4)).toBe('1.6733');
    expect(value(toB, 'speedup.c').toFixed(4)).toBe('0.6898');
    const toC = compareRuns({ c, a, b });
    expect(value(toC, 'speedup.a').toFixed(4)).toBe('2.4258');
    expect(value(toC, 'speedup.b').toFixed(4)).toBe('1.4497');
  });

  test('higher over lower, and the other way round; the extremes go along', () => {
    const figures = compareRuns({ rated: { scores: { a: 50, b: 100 } }, fast: { scores: { a: 60, b: 110 } } });
    expectNear(value(figures, 'speedup.fast.a'), 1.2, 1e-14);
    expect(presentAt(figures, 'speedup.fast')).toMatchObject({
      of: { run: 'fast', reference: 'rated', tests: 2, smallest: 1.1, largest: 1.2, verdict: 'these two runs differ' },
      from: { figures: ['r-fast/score.a', 'r-fast/score.b', 'r-rated/score.a', 'r-rated/score.b'] },
    });
  });

  // Relative uncertainties of a quotient add as squares (JCGM 100:2008, 5.1.6); that of a mean of n logarithms falls by √n.
  test('uncertainty of a ratio, and of a mean of ratios', () => {
    const figures = compareRuns({
      rated: { scores: { a: [100, 1, null], b: [100, 1, null] } },
      fast: { scores: { a: [100, 1, null], b: [100, 1, null] } },
    });
    expectNear(standardUncertainty(presentAt(figures, 'speedup.fast.a').quantity)!, 0.01 * Math.SQRT2, 1e-12);
    expectNear(standardUncertainty(presentAt(figures, 'speedup.fast').quantity)!, 0.01, 1e-12);
    expect(presentAt(figures, 'speedup.fast').of?.verdict).toBe('these two runs do not differ');
  });

  test('two speedups share the reference: its error cancels in their quotient, here to nothing', () => {
    const figures = compareRuns({
      rated: { scores: { a: [100, 3, 4] } },
      brisk: { scores: { a: 110 } },
      fast: { scores: { a: 120 } },
    });
    const [brisk, fast] = ['brisk', 'fast'].map((alias) => presentAt(figures, `speedup.${alias}`).quantity.parts!);
    expect(brisk!.map(({ source }) => source.id)).toEqual(fast!.map(({ source }) => source.id));
    expectNear(brisk![0]!.share / 1.1, fast![0]!.share / 1.2, 1e-14);
  });

  test('of single repeats the verdict cannot be told', () => {
    const single = {
      more: { 'score.a': figure('score', { value: 5, unit: 'points', parts: null }, { test: 'a', title: 'a', better: 'higher' }) },
    };
    expect(presentAt(compareRuns({ rated: single, fast: single }), 'speedup.fast').of?.verdict).toBe('cannot be told');
  });

  test('tests that one run lacks are left out of the mean, by name', () => {
    const figures = compareRuns({ rated: { scores: { a: 50, b: 60 } }, fast: { scores: { a: 60, c: 7, d: null } } });
    expect(presentAt(figures, 'speedup.fast').of).toMatchObject({ tests: 1, left_out: 'b; c; d' });
    expect(absentAt(figures, 'speedup.fast.b')).toMatchObject({ absent: 'operand-absent', why: 'The run fast has no score.b.' });
    expect(absentAt(figures, 'speedup.fast.c')).toMatchObject({ why: 'The run rated has no score.c.' });
  });

  test.each([
    ['no scores', {}, {}, 'no-readings', 'Neither fast nor rated has scores.'],
    [
      'no result',
      { scores: { a: 5 } },
      { scores: { a: null } },
      'operand-absent',
      'score.a of fast is absent. No repeat of a gave a result.',
    ],
    [
      'directions',
      { scores: { a: 5 } },
      { scores: { a: 5 }, better: 'lower' },
      'out-of-range',
      'The tables of fast and rated state different directions for a.',
    ],
    [
      'units',
      { scores: { a: 5 } },
      { scores: { a: 5 }, unit: 'MB/s' },
      'out-of-range',
      'a is in MB/s in fast and in points in rated.',
    ],
    [
      'zero',
      { scores: { a: 0 } },
      { scores: { a: 5 } },
      'out-of-range',
      'The score a of rated is not above zero, so that no ratio can be made of it.',
    ],
  ] as const)('absent: %s', (_, rated, fast, code, why) => {
    expect(absentAt(compareRuns({ rated, fast } as never), 'speedup.fast')).toMatchObject({ absent: code, why });
  });
});

describe('clock ratio, efficiency, gain', () => {
  // The clock model T = a/f + b with a = 144 GHz·s and b = 40 s: 160 s at 1.2 GHz, 100 s at 2.4 GHz.
  const figures = compareRuns({
    slow: { ...seconds([160]), clock: 1.2e9 },
    fast: { ...seconds([100]), clock: 2.4e9 },
  });

  test('the clock model', () => {
    expectNear(value(figures, 'clock_ratio.fast'), 2, 1e-14);
    expectNear(value(figures, 'speedup.fast'), 1.6, 1e-14);
    expectNear(value(figures, 'scaling_efficiency.fast'), 0.8, 1e-14);
    expectNear(value(figures, 'gain_per_clock.fast.p0'), 0.6, 1e-14);
  });

  test('the load’s clock standing in for the scores’ is said', () => {
    expect(presentAt(figures, 'scaling_efficiency.fast')).toMatchObject({
      of: { over: 'the load phase' },
      inferred: ['The clock during the scores was not logged: the mean clock of the load phase stands in for it.'],
    });
  });

  test('clocks during the scores count where both logs have them', () => {
    const at = (clock: number, during: number): Sketch => ({
      ...seconds([clock === 1e9 ? 100 : 50]),
      clock,
      more: { 'score_clock.p0': figure('score_clock', { value: during, unit: 'Hz', parts: [] }, { test: 'p0' }) },
    });
    const own = compareRuns({ slow: at(1e9, 1e9), fast: at(1.5e9, 2e9) });
    expectNear(value(own, 'clock_ratio.fast'), 2, 1e-14);
    expectNear(value(own, 'clock_ratio.fast.p0'), 2, 1e-14);
    expect(presentAt(own, 'scaling_efficiency.fast')).toMatchObject({ of: { over: 'the time of the scores' } });
    expect(presentAt(own, 'scaling_efficiency.fast').inferred).toBeUndefined();
  });

  test('absent without a measured clock, which the setting does not replace; no gain where the clocks are not told apart', () => {
    const bare = compareRuns({ slow: { ...seconds([160]), setting: 1.2e9 }, fast: { ...seconds([100]), setting: 2.4e9 } });
    for (const name of ['clock_ratio', 'scaling_efficiency', 'gain_per_clock'])
      expect(absentAt(bare, `${name}.fast`)).toMatchObject({ absent: 'operand-absent', why: 'The run slow has no mean_clock.' });
    const noisy = (hz: number): Sketch => ({
      ...seconds([10]),
      more: { mean_clock: figure('mean_clock', { value: hz, unit: 'Hz', parts: [part(`run:${hz}`, 1e6)] }) },
    });
    expect(absentAt(compareRuns({ a: noisy(2e9), b: noisy(2.001e9) }), 'gain_per_clock.b')).toMatchObject({
      absent: 'out-of-range',
      why: 'The measured clocks of b and a are not told apart.',
    });
  });
});

describe('performance per watt', () => {
  const drawing = (watts: number, at?: string): Sketch['more'] => ({
    load_power: figure(
      'load_power',
      { value: watts, unit: 'W', parts: [part('instrument:meter/power/gain', 0.01 * watts)] },
      at ? { at } : {},
    ),
  });

  // Voltage and clock both down by 15 %: power 0.85³ = 0.614125, energy per task 0.85² = 0.7225 (P = C·V²·f).
  test('the square of the voltage', () => {
    const figures = compareRuns({
      rated: { scores: { a: 100 }, more: drawing(10)! },
      low: { scores: { a: 85 }, more: drawing(6.14125)! },
    });
    expectNear(value(figures, 'performance_per_watt.low'), 1 / 0.7225, 1e-14);
    expect(presentAt(figures, 'performance_per_watt.low').quantity.parts).toEqual([]);
    expect(presentAt(figures, 'performance_per_watt.low').of?.over).toBe('the load phase');
  });

  test('power during the scores counts where both logs have it', () => {
    const scored = (watts: number): Sketch => ({
      scores: { a: 100 },
      more: { ...drawing(99), 'score_power.a': figure('score_power', { value: watts, unit: 'W', parts: [] }, { test: 'a' }) },
    });
    const figures = compareRuns({ rated: scored(10), low: scored(5) });
    expectNear(value(figures, 'performance_per_watt.low.a'), 2, 1e-14);
    expect(presentAt(figures, 'performance_per_watt.low').of?.over).toBe('the time of the scores');
  });

  test('absent without power, and across places', () => {
    const none = compareRuns({ rated: { scores: { a: 1 } }, low: { scores: { a: 1 } } });
    expect(absentAt(none, 'performance_per_watt.low')).toMatchObject({
      absent: 'operand-absent',
      why: 'The run low has no load_power.',
    });
    const apart = compareRuns({
      rated: { scores: { a: 1 }, more: drawing(10, 'wall')! },
      low: { scores: { a: 1 }, more: drawing(9, 'board input')! },
    });
    expect(absentAt(apart, 'performance_per_watt.low')).toMatchObject({
      absent: 'different-places',
      why: 'Power was measured at the board input in low and at the wall in rated.',
    });
  });
});
