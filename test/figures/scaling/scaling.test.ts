import { describe, expect, test } from 'vitest';
import { exponentOf, independentShareOf } from '../../../src/figures/scaling/estimators.ts';
import { type Point, throughFit } from '../../../src/figures/scaling/through-fit.ts';
import { divide } from '../../../src/quantities/arithmetic.ts';
import type { Quantity } from '../../../src/quantities/quantity.ts';
import { degreesOfFreedom, exact, interval95, standardUncertainty } from '../../../src/quantities/uncertainty.ts';
import { mean } from '../../../src/statistics/mean.ts';
import { normalQuantile } from '../../../src/statistics/normal-quantile.ts';
import { sampleDeviation } from '../../../src/statistics/sample-deviation.ts';
import { expectNear } from '../../statistics/near.ts';
import { nist } from '../../statistics/nist.ts';
import { seededRandom } from '../../statistics/seeded-random.ts';
import { presentAt } from '../build.ts';
import { absentAt, compareRuns, figure, part, type Sketch } from '../comparison/runs.ts';

const SOURCE = { id: 'comparison:steps/x/misfit', title: 'misfit' };

/** Runs over clocks in GHz whose score follows a law, exact. */
function settings(clocks: readonly number[], score: (ghz: number) => number, more: Partial<Sketch> = {}): Record<string, Sketch> {
  return Object.fromEntries(
    clocks.map((ghz, k) => [`s${k}`, { scores: { mix: score(ghz) }, clock: ghz * 1e9, setting: ghz * 1e9, ...more }]),
  );
}

/** The same with the clock that the scores ran at. */
function withClocks(runs: Record<string, Sketch>): Record<string, Sketch> {
  const own = ([alias, sketch]: [string, Sketch]): [string, Sketch] => [
    alias,
    {
      ...sketch,
      more: { 'score_clock.mix': figure('score_clock', { value: sketch.clock!, unit: 'Hz', parts: [] }, { test: 'mix' }) },
    },
  ];
  return Object.fromEntries(Object.entries(runs).map(own));
}

describe('scaling_exponent', () => {
  // NIST Statistical Reference Datasets, DanWood: y = b1·x^b2, certified b2 and its standard deviation, from scores of unknown uncertainty.
  test('the certified exponent and uncertainty of DanWood, as a comparison', () => {
    const { x, y, certified } = nist('DanWood');
    const runs = x.map((clock, k): [string, Sketch] => {
      const score = figure('score', { value: y[k]!, unit: 'points', parts: null }, { test: 'mix', title: 'mix', better: 'higher' });
      return [`s${k}`, { clock, setting: clock, more: { 'score.mix': score } }];
    });
    const { quantity } = presentAt(compareRuns(Object.fromEntries(runs)), 'scaling_exponent.mix');
    expectNear(quantity.value, certified.params[1]!, 1e-9);
    expectNear(standardUncertainty(quantity)!, certified.sd[1]!, 1e-7);
    expectNear(degreesOfFreedom(quantity)!, certified.df, 1e-12);
  });

  // T = a/f + b with 160 s at 1.2 GHz and 100 s at 2.4 GHz: ln 1.6 / ln 2.
  test('fewer than four settings give pairs', () => {
    const figures = compareRuns(settings([1.2, 2.4], (ghz) => 144 / ghz + 40, { better: 'lower', unit: 's' }));
    expectNear(presentAt(figures, 'scaling_exponent.s1').quantity.value, 0.678072, 1e-6);
    expectNear(presentAt(figures, 'scaling_exponent.s1.mix').quantity.value, Math.log(1.6) / Math.LN2, 1e-14);
    expect(absentAt(figures, 'scaling_exponent')).toMatchObject({
      absent: 'too-short',
      why: 'An exponent over the settings takes 4 of them; there are 2 here. There is one for each pair.',
    });
  });

  test('a setting that was run twice counts once', () => {
    const figures = compareRuns({ ...settings([1, 2, 3], (ghz) => ghz), again: { scores: { mix: 3 }, clock: 3e9, setting: 3e9 } });
    expect(absentAt(figures, 'scaling_exponent').why).toContain('there are 3 here');
  });

  test('the reference does not matter to the exponent', () => {
    const runs = settings([1, 1.5, 2, 2.5], (ghz) => ghz ** 0.8 + 0.01 * Math.sin(9 * ghz));
    const turned = Object.fromEntries(Object.entries(runs).reverse());
    const [a, b] = [compareRuns(runs), compareRuns(turned)].map((figures) => presentAt(figures, 'scaling_exponent').quantity);
    expectNear(a!.value, b!.value, 1e-9);
    expectNear(standardUncertainty(a!)!, standardUncertainty(b!)!, 1e-6);
  });

  test.each([
    [(ghz: number) => ghz ** 0.7, 'these runs grow more slowly than the clock'],
    [(ghz: number) => ghz ** 1.2, 'these runs grow faster than the clock'],
    [(ghz: number) => ghz * (1 + 0.02 * Math.sin(20 * ghz)), 'these runs do not exclude linear'],
  ])('what the data excludes (%#)', (score, verdict) => {
    const { of } = presentAt(compareRuns(withClocks(settings([1, 1.3, 1.6, 2], score))), 'scaling_exponent');
    expect(of?.verdict).toBe(verdict);
  });

  test('absent where clocks are not told apart, a clock is missing, or a score is', () => {
    const alike = settings([1, 1, 1, 1], (ghz) => ghz);
    const four = Object.fromEntries(Object.entries(alike).map(([alias, run], k) => [alias, { ...run, setting: k }]));
    expect(absentAt(compareRuns(four), 'scaling_exponent')).toMatchObject({ absent: 'out-of-range' });
    expect(absentAt(compareRuns(four), 'clock_independent_share.mix')).toMatchObject({
      absent: 'out-of-range',
      why: 'The measured clocks of the runs are not told apart.',
    });
    const bare = Object.fromEntries(Object.entries(four).map(([alias, { clock: _clock, ...run }]) => [alias, run]));
    expect(absentAt(compareRuns(bare), 'scaling_exponent')).toMatchObject({ absent: 'operand-absent' });
    const lost = { ...settings([1, 2, 3, 4], (ghz) => ghz), s3: { scores: { mix: null }, clock: 4e9, setting: 4e9 } };
    expect(absentAt(compareRuns(lost), 'scaling_exponent.mix')).toMatchObject({ absent: 'operand-absent' });
  });
});

describe('clock_independent_share', () => {
  const time = (ghz: number) => 144 / ghz + 40;
  const of = (clocks: readonly number[]) =>
    presentAt(compareRuns(settings(clocks, time, { better: 'lower', unit: 's' })), 'clock_independent_share.mix');

  // The model's own numbers: b = 40 s of 100 s at 2.4 GHz, of 160 s at 1.2 GHz; β = 1 − 0.4 = 0.6 as C.-H. Hsu and U. Kremer have it (from memory).
  test('the clock model, from two settings and from four, at either reference', () => {
    expectNear(of([2.4, 1.2]).quantity.value, 0.4, 1e-12);
    expectNear(of([1.2, 2.4]).quantity.value, 0.25, 1e-12);
    expectNear(of([2.4, 1.2, 1.8, 3]).quantity.value, 0.4, 1e-12);
    expect(of([2.4, 1.2]).of?.verdict).toBe('no verdict: the mean clock of the load phase stands in for that of the scores');
  });

  test('performance per score scales like one over time', () => {
    const figures = compareRuns(settings([2.4, 1.2], (ghz) => 1000 / time(ghz)));
    expectNear(presentAt(figures, 'clock_independent_share.mix').quantity.value, 0.4, 1e-12);
  });
});

describe('through a fit', () => {
  const point = (x: number, y: number, u: number, id: string): Point => ({
    x: exact(x, '1'),
    y: { value: y, unit: '1', parts: u === 0 ? [] : [part(id, u, 4)] },
  });

  test('two points: the sensitivities are those of ln y / ln x', () => {
    const quantity = throughFit([point(1, 1, 0, 'a'), point(1.3, 1.2, 0.01, 'b')], exponentOf, SOURCE);
    expectNear(quantity.parts![0]!.share, 0.01 / (1.2 * Math.log(1.3)), 1e-8);
    expect(quantity.parts!.map(({ source }) => source.id)).toEqual(['b']);
  });

  test('the share of time: 1/y over 1/x, by hand', () => {
    const quantity = throughFit([point(1, 1, 0, 'a'), point(2, 1.6, 0.016, 'b')], independentShareOf, SOURCE);
    expectNear(quantity.value, 0.25, 1e-12);
    expectNear(standardUncertainty(quantity)!, (2 * 0.016) / 1.6 ** 2, 1e-8);
  });

  test('the scatter about the fit adds only what the points do not explain', () => {
    const points = (u: number) => [1, 1.2, 1.4, 1.6].map((x, k) => point(x, x + (k % 2 === 0 ? 0.01 : -0.01), u, `p${k}`));
    const alone = standardUncertainty(throughFit(points(0), exponentOf, SOURCE))!;
    const little = throughFit(points(0.001), exponentOf, SOURCE);
    expectNear(standardUncertainty(little)!, alone, 1e-9);
    const much = throughFit(points(0.1), exponentOf, SOURCE);
    expect(much.parts!.some(({ source, share }) => source.id === SOURCE.id && share > 0)).toBe(false);
    expect(standardUncertainty(much)!).toBeGreaterThan(2 * alone);
  });

  // Coverage over simulated settings with known truth: five repeats each, normal scatter of 0.5 %, exact clocks.
  test('the interval of an exponent and of a ratio holds the truth in 93 % to 97 % of 2000 simulated comparisons', () => {
    const random = seededRandom(5);
    const scores = (ghz: number, id: string): Quantity => {
      const repeats = Array.from({ length: 5 }, () => ghz ** 0.85 * (1 + 0.005 * normalQuantile(random() || 0.5)));
      return { value: mean(repeats), unit: '1', parts: [part(id, sampleDeviation(repeats) / Math.sqrt(5), 4)] };
    };
    const holds = (quantity: Quantity, truth: number) => {
      const [low, high] = interval95(quantity)!;
      return low <= truth && truth <= high ? 1 : 0;
    };
    let [exponents, ratios] = [0, 0];
    for (let turn = 0; turn < 2000; turn++) {
      const measured = [2, 2.2, 2.4, 2.6].map((ghz) => ({ ghz, score: scores(ghz, `s${ghz}`) }));
      const base = measured[0]!.score;
      const points = measured.map(({ ghz, score }) => ({ x: exact(ghz / 2, '1'), y: divide(score, base) as Quantity }));
      exponents += holds(throughFit(points, exponentOf, SOURCE), 0.85);
      ratios += holds(points[3]!.y, 1.3 ** 0.85);
    }
    for (const held of [exponents, ratios]) {
      expect(held / 2000).toBeGreaterThanOrEqual(0.93);
      expect(held / 2000).toBeLessThanOrEqual(0.97);
    }
  });
});
