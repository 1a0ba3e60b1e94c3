/** Several runs of one setting. All runs are invented. */
import { describe, expect, test } from 'vitest';
import { compare } from '../../../src/figures/comparison/compare.ts';
import type { ComparedRun } from '../../../src/figures/comparison/compared.ts';
import { isPresent } from '../../../src/figures/figure.ts';
import { degreesOfFreedom, expandedUncertainty, standardUncertainty } from '../../../src/quantities/uncertainty.ts';
import { welch } from '../../../src/statistics/welch.ts';
import { expectNear } from '../../statistics/near.ts';
import { presentAt } from '../build.ts';
import { absentAt, figure, part, runOf } from './runs.ts';

/** Runs of one setting whose load power is as given; what each says of itself is small. */
function powers(alias: string, values: readonly number[], own = 1e-6): ComparedRun[] {
  return values.map((value, k) => {
    const id = `r-${alias}-${k}`;
    const parts = [part('instrument:meter/power/gain', 0.01 * value), part(`run:${id}/load_power/sampling`, own * value, 50)];
    return { ...runOf(alias, { more: { load_power: figure('load_power', { value, unit: 'W', parts }) } }), run: id };
  });
}

function compared(runs: Readonly<Record<string, readonly ComparedRun[]>>, repeats: readonly (readonly ComparedRun[])[] = []) {
  const [reference, ...others] = Object.entries(runs).map(([alias, of]) => ({ alias, runs: of }));
  return compare({ id: 'steps', reference: reference!, others, repeats });
}

/** Rises lie apart by kelvins, so that sums of squares can be checked by hand. */
function rises(alias: string, values: readonly number[]): ComparedRun[] {
  return values.map((value, k) => {
    const quantity = { value, unit: 'K', parts: [part(`run:r-${alias}-${k}/temperature_rise/sampling`, 1e-6, 50)] };
    return { ...runOf(alias, { more: { temperature_rise: figure('temperature_rise', quantity) } }), run: `r-${alias}-${k}` };
  });
}

describe('runs of one setting', () => {
  // By hand: s² = (2·1² + 2·1²)/(2 + 2) = 1; u² = 1/3 + 1/3; ν = 4 (analysis of variance, as in JCGM 100:2008, H.5).
  test('the pooled spread, its degrees of freedom, and the mean', () => {
    const delta = presentAt(compared({ a: rises('a', [40, 41, 42]), b: rises('b', [42, 43, 44]) }), 'rise_delta.b');
    expectNear(delta.quantity.value, 2, 1e-12);
    expectNear(standardUncertainty(delta.quantity)!, Math.sqrt(2 / 3), 1e-12);
    expectNear(degreesOfFreedom(delta.quantity)!, 4, 1e-9);
    expect(delta.of).toMatchObject({ verdict: 'not told apart', runs: '3 against 3', between_runs_dof: 4 });
    expect(delta.from.figures).toHaveLength(6);
  });

  test('what the runs share stays, their own scatter gives way', () => {
    const delta = presentAt(compared({ a: powers('a', [10, 10.1]), b: powers('b', [12, 12.1]) }), 'power_delta.b');
    const shared = delta.quantity.parts!.filter(({ source }) => source.id.startsWith('instrument:'));
    expectNear(shared[0]!.share, 0.01 * 2, 1e-9);
    expect(delta.quantity.parts!.some(({ source }) => source.id.startsWith('run:'))).toBe(false);
  });

  test('runs that happen to agree count no less than they say of themselves', () => {
    const delta = presentAt(compared({ a: powers('a', [10, 10], 0.01), b: powers('b', [10, 10], 0.01) }), 'power_delta.b');
    expectNear(standardUncertainty(delta.quantity)!, 10 * 0.01, 1e-9);
    expectNear(degreesOfFreedom(delta.quantity)!, 2, 1e-9);
  });

  // By hand: pooled s² = (10 + 8)/(4 + 1) = 3.6, b alone 8 (F = 3.2 on 1 and 4, far from significant); u² = 3.6/5 + 8/2, ν = 4.72²/(0.72²/5 + 4²/1).
  test('a setting that was run less often and lies further apart keeps its own spread', () => {
    const often = rises('a', [40, 41, 42, 43, 44]);
    const delta = presentAt(compared({ a: often, b: rises('b', [42, 46]) }), 'rise_delta.b');
    expectNear(standardUncertainty(delta.quantity)!, Math.sqrt(4.72), 1e-12);
    expectNear(degreesOfFreedom(delta.quantity)!, 4.72 ** 2 / (0.72 ** 2 / 5 + 16), 1e-9);
    // The other way round, and as often as the other: the pooled one, (10 + 2)/5 and (8 + 2)/2.
    const calm = presentAt(compared({ a: often, b: rises('b', [42, 44]) }), 'rise_delta.b');
    expectNear(standardUncertainty(calm.quantity)!, Math.sqrt(2.4 * (1 / 5 + 1 / 2)), 1e-12);
    const even = presentAt(compared({ a: rises('a', [40, 42]), b: rises('b', [42, 46]) }), 'rise_delta.b');
    expectNear(standardUncertainty(even.quantity)!, Math.sqrt(5), 1e-12);
  });

  test('other repeats of the specimen outvote no setting', () => {
    const borrowed = [rises('x', [50, 51, 52, 53, 54])];
    const delta = presentAt(compared({ a: rises('a', [40, 42]), b: rises('b', [42, 46]) }, borrowed), 'rise_delta.b');
    expectNear(standardUncertainty(delta.quantity)!, Math.sqrt((10 + 2 + 8) / 6), 1e-12);
  });

  // NIST/SEMATECH e-Handbook, 1.3.5.3 for the test without the assumption of equal spreads; our own `welch` has its check there.
  test('spreads that differ for certain are not pooled', () => {
    const [quiet, loud] = [
      [40, 40.001, 39.999, 40.002, 39.998],
      [42, 44, 40, 43, 41],
    ] as const;
    const delta = presentAt(compared({ a: rises('a', quiet), b: rises('b', loud) }), 'rise_delta.b');
    const hand = welch(loud, quiet);
    expectNear(standardUncertainty(delta.quantity)!, hand.u, 1e-9);
    expectNear(degreesOfFreedom(delta.quantity)!, hand.dof, 1e-6);
  });

  test('one run each: the verdict is of these two runs, and what could have been told is not known', () => {
    const figures = compared({ a: rises('a', [40]), b: rises('b', [42]) });
    expect(presentAt(figures, 'rise_delta.b').of).toMatchObject({ verdict: 'these two runs differ', between_runs: 'unknown' });
    expect(absentAt(figures, 'smallest_told.rise_delta.b').why).toContain('No setting was run twice');
    expect(absentAt(figures, 'runs_to_tell.rise_delta.b').absent).toBe('too-short');
  });

  test('of other repeats whose spreads differ the larger one counts for single runs, in any order', () => {
    const [calm, loud] = [rises('x', [50, 50.1, 50.2]), rises('y', [50, 55, 60])];
    for (const repeats of [
      [calm, loud],
      [loud, calm],
    ]) {
      const delta = presentAt(compared({ a: rises('a', [40]), b: rises('b', [42]) }, repeats), 'rise_delta.b');
      expectNear(standardUncertainty(delta.quantity)!, 5 * Math.sqrt(2), 1e-9);
    }
  });

  test('other repeats of the specimen say how far single runs lie apart', () => {
    const figures = compared({ a: rises('a', [40]), b: rises('b', [42]) }, [rises('x', [30, 31, 32])]);
    const delta = presentAt(figures, 'rise_delta.b');
    expectNear(standardUncertainty(delta.quantity)!, Math.SQRT2, 1e-12);
    expect(delta.of).toMatchObject({ verdict: 'not told apart', between_runs_dof: 2 });
  });

  test('what goes together from run to run cancels in what is computed from both', () => {
    const run = (alias: string, k: number, day: number): ComparedRun => {
      const more = {
        load_power: figure('load_power', { value: 10 * day, unit: 'W', parts: [] }),
        'score_power.mix': figure('score_power', { value: 10 * day, unit: 'W', parts: [] }, { test: 'mix' }),
        'score.mix': figure(
          'score',
          { value: 100 * day, unit: 'points', parts: [] },
          { test: 'mix', title: 'Mix', better: 'higher' },
        ),
      };
      return { ...runOf(alias, { more }), run: `r-${alias}-${k}` };
    };
    const figures = compared({ a: [run('a', 0, 1), run('a', 1, 1.01)], b: [run('b', 0, 1.005), run('b', 1, 0.99)] });
    expect(standardUncertainty(presentAt(figures, 'speedup.b').quantity)!).toBeGreaterThan(0.005);
    expect(standardUncertainty(presentAt(figures, 'performance_per_watt.b').quantity)!).toBeLessThan(1e-9);
  });

  test('a figure that one run of a setting did not come to is absent, one that it did not measure is not', () => {
    const [first, second] = rises('a', [40, 41]) as [ComparedRun, ComparedRun];
    const lost = (absent: 'not-steady' | 'no-channel') => {
      const why = 'It was not there.';
      return { ...second, figures: new Map([['temperature_rise', { name: 'temperature_rise' as const, absent, why }]]) };
    };
    const others = rises('b', [42, 43]);
    expect(absentAt(compared({ a: [first, lost('not-steady')], b: others }), 'rise_delta.b').why).toContain('It was not there.');
    expectNear(presentAt(compared({ a: [first, lost('no-channel')], b: others }), 'rise_delta.b').quantity.value, 2.5, 1e-12);
  });

  test('the smallest difference is the bar of the verdict; ten tests at once have a higher one', () => {
    const figures = compared({ a: rises('a', [40, 41, 42]), b: rises('b', [42, 43, 44]), c: rises('c', [50, 51, 52]) });
    const b = presentAt(figures, 'rise_delta.b').quantity;
    const bar = presentAt(figures, 'smallest_told.rise_delta.b').quantity.value;
    expect(bar).toBeGreaterThanOrEqual(expandedUncertainty(b, 1 - 0.05 / 2)!);
    expect(bar).toBeLessThan(1.1 * expandedUncertainty(b, 1 - 0.05 / 2)!);
    expect(presentAt(figures, 'rise_delta.c').of?.verdict).toBe('told apart');
    const needed = presentAt(figures, 'runs_to_tell.rise_delta.b').quantity.value;
    expect(needed).toBeGreaterThan(presentAt(figures, 'runs_to_tell.rise_delta.c').quantity.value);
  });

  // By hand with s = 1, d = 2, ν = 2(n − 1): for n = 6 (2.228 + 1.372)·√(2/6) = 2.08 > 2, for n = 7 (2.179 + 1.356)·√(2/7) = 1.89 (quantiles
  // of a printed table of Student's t, from memory). With 2 runs against 4 the spread of one run is the same.
  test('seven runs of each would tell two standard deviations', () => {
    const needed = (b: readonly number[]) =>
      presentAt(compared({ a: rises('a', [40, 41, 42]), b: rises('b', b) }), 'runs_to_tell.rise_delta.b').quantity.value;
    expect(needed([42, 43, 44])).toBe(7);
    expect(needed([42, 42, 44, 44].map((value) => value + (Math.sqrt(0.75) - 1) * Math.sign(value - 43)))).toBe(7);
  });

  // S. Holm, Scandinavian Journal of Statistics 6, 1979, 65–70: of two figures the clearer is held against 2.5 %, the other then against 5 %.
  test('a figure that alone would be told is not, where it is the clearest of two', () => {
    const u = (alias: string) => rises(alias, [40, 41, 42]).map((run) => run);
    const shift = (runs: ComparedRun[], by: number, alias: string) =>
      runs.map((run, k) => {
        const found = run.figures.get('temperature_rise')!;
        if (!isPresent(found)) throw new Error('absent');
        const moved = { ...found, quantity: { ...found.quantity, value: found.quantity.value + by } };
        return { ...run, run: `r-${alias}-${k}`, figures: new Map([['temperature_rise', moved]]) };
      });
    // u = √(2/3): 95 % is 2.776 u = 2.267 K for four degrees of freedom, and with a third setting 2.447 u = 1.998 K.
    const alone = compared({ a: u('a'), b: shift(u('a'), 2.1, 'b'), c: shift(u('a'), 0.1, 'c') });
    expect(presentAt(alone, 'rise_delta.b').of).toMatchObject({ verdict: 'not told apart', verdicts: 2 });
    const both = compared({ a: u('a'), b: shift(u('a'), 2.1, 'b'), c: shift(u('a'), 9, 'c') });
    expect(presentAt(both, 'rise_delta.b').of?.verdict).toBe('told apart');
  });
});

describe('repeats of a test in two runs', () => {
  test('a run with two repeats that happen to agree learns from the ten of the other', () => {
    const scored = (alias: string, n: number, spread: number) => {
      const quantity = {
        value: 100,
        unit: 'points',
        parts: [part(`run:r-${alias}/score.mix/sampling`, spread / Math.sqrt(n), n - 1)],
      };
      return runOf(alias, {
        more: { 'score.mix': figure('score', quantity, { test: 'mix', title: 'Mix', better: 'higher', n, spread }) },
      });
    };
    const speedup = presentAt(compared({ a: [scored('a', 2, 0.001)], b: [scored('b', 10, 1)] }), 'speedup.b.mix').quantity;
    const pooled = Math.sqrt((0.001 ** 2 + 9) / 10) / 100;
    expectNear(standardUncertainty(speedup)!, Math.hypot(pooled / Math.SQRT2, 0.01 / Math.sqrt(10)), 1e-9);
  });
});
