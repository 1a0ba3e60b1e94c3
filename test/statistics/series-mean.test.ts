import { describe, expect, test } from 'vitest';
import { mean } from '../../src/statistics/mean.ts';
import { sampleDeviation } from '../../src/statistics/sample-deviation.ts';
import { seriesMean } from '../../src/statistics/series-mean.ts';
import { studentQuantile } from '../../src/statistics/student-quantile.ts';
import { expectNear } from './near.ts';
import { nist } from './nist.ts';
import { autoregressive, gaussian, stepped } from './noise.ts';

const ramp = (n: number) => Float64Array.from({ length: n }, (_, i) => i / (n - 1));

/** Share of runs whose 95 % interval holds the true mean of 0; `hidden` is a step's own uncertainty, added as a caller would. */
function coverage(runs: number, series: (run: number) => Float64Array, hidden = 0, weights?: number[]): number {
  let held = 0;
  for (let run = 0; run < runs; run++) {
    const found = seriesMean(series(run), weights);
    if (Math.abs(found.mean) <= studentQuantile(0.975, found.dof) * Math.hypot(found.u, hidden)) held++;
  }
  return held / runs;
}

describe('statistics/series-mean', () => {
  test('no reading, one, two, three', () => {
    expect(seriesMean([])).toEqual({ mean: Number.NaN, u: Number.NaN, dof: 0, n: 0, effectiveCount: 0 });
    expect(seriesMean([4])).toEqual({ mean: 4, u: Number.NaN, dof: 0, n: 1, effectiveCount: 1 });
    expect(seriesMean([4, 6])).toEqual({ mean: 5, u: 1, dof: 1, n: 2, effectiveCount: 2 });
    const three = seriesMean([1, 3, 2]);
    expectNear(three.u, 1 / Math.sqrt(3), 1e-14);
    expectNear(three.dof, 2, 1e-14);
  });

  test('constant readings show no scatter', () => {
    expect(seriesMean(new Float64Array(50).fill(71))).toEqual({ mean: 71, u: 0, dof: 49, n: 50, effectiveCount: 50 });
  });

  test('a constant that doubles cannot hold is still constant', () => {
    expect(seriesMean(new Array(77).fill(0.1))).toMatchObject({ u: 0, dof: 76, effectiveCount: 77 });
  });

  test('anticorrelated readings are not taken for better than independent ones (NIST NumAcc2, lag-1 coefficient −0.999)', () => {
    const { y } = nist('NumAcc2');
    const found = seriesMean(y);
    expectNear(found.u, 0.1 / Math.sqrt(1001), 2e-3);
    expect(found.effectiveCount).toBeGreaterThan(990);
  });

  test('the digits of π are no better than independent, and seem slow by chance on 32 blocks (NIST PiDigits, lag-1 coefficient −0.004)', () => {
    const { y } = nist('PiDigits');
    const ratio = seriesMean(y).u / (sampleDeviation(y) / Math.sqrt(5000));
    expect(ratio).toBeGreaterThanOrEqual(0.999);
    expect(ratio).toBeLessThan(2.2);
  });

  // Variance of the mean of a first-order autoregressive series: Zięba & Ramza 2011, or any text on time series (closed form).
  test.each([0, 0.5, 0.9])(
    'memory %d: u² is on average the variance of the mean, or up to half as much again, as the widest of three is taken',
    (memory) => {
      const [n, runs] = [2000, 200];
      const normal = gaussian(11);
      let sum = 0;
      for (let run = 0; run < runs; run++) sum += seriesMean(autoregressive(n, memory, normal)).u ** 2 / runs;
      const end = (2 * memory * (1 - memory ** n)) / (n * (1 - memory) ** 2);
      const ratio = (sum * n) / ((1 + memory) / (1 - memory) - end);
      expect(ratio).toBeGreaterThan(0.95);
      expect(ratio).toBeLessThan(1.5);
    },
  );

  // 400 runs: a coverage of 0.95 is seen within 0.92 … 0.98 but once in a hundred times; small counts are allowed a little less.
  test.each([
    [20, 0, 0.92, 0.99],
    [20, 0.5, 0.9, 0.98],
    [100, 0.5, 0.92, 0.98],
    [600, 0.9, 0.92, 0.98],
    [600, 0.98, 0.9, 0.98],
    [3600, 0, 0.92, 0.99],
    [3600, 0.98, 0.92, 0.99],
  ])('%i readings of memory %d: the interval covers in %d … %d of the runs', (n, memory, least, most) => {
    const normal = gaussian(n + 1000 * memory);
    const covered = coverage(400, () => autoregressive(n, memory, normal));
    expect(covered).toBeGreaterThanOrEqual(least);
    expect(covered).toBeLessThanOrEqual(most);
  });

  test('stepped readings: with the step’s own uncertainty added, the interval covers', () => {
    const normal = gaussian(5);
    for (const step of [0.5, 2, 5]) {
      const at = (run: number) => step * ((run % 20) / 20 - 0.5);
      const series = (run: number) => {
        const true_ = autoregressive(600, 0.9, normal).map((value) => value + at(run));
        return stepped(true_, step).map((value) => value - at(run));
      };
      expect(coverage(300, series, step / Math.sqrt(12))).toBeGreaterThanOrEqual(0.92);
    }
  });

  test('a reading held for ten rows counts once', () => {
    const normal = gaussian(9);
    const slow = Float64Array.from({ length: 200 }, () => normal());
    const held = Float64Array.from({ length: 2000 }, (_, i) => slow[Math.floor(i / 10)]!);
    expectNear(seriesMean(held).u, sampleDeviation(slow) / Math.sqrt(200), 0.15);
    expect(seriesMean(held).effectiveCount).toBeLessThan(260);
  });

  test('a drift is slow noise: u is about a quarter of it, few degrees of freedom, whatever the number of rows', () => {
    for (const n of [30, 1000, 50_000]) {
      const found = seriesMean(ramp(n));
      expectNear(found.mean, 0.5, 1e-12);
      expect(found.u).toBeGreaterThan(0.2);
      expect(found.u).toBeLessThan(0.5);
      expect(found.dof).toBeLessThan(3);
    }
  });

  describe('about a course', () => {
    const [n, quick] = [400, 25];
    const along = (shape: ArrayLike<number>) => ({ shapes: [shape], parameters: 1 });
    const bend = Float64Array.from({ length: n }, (_, i) => Math.exp(-i / quick));

    test('what follows it is no scatter, and the mean stays as it is', () => {
      const normal = gaussian(23);
      const values = bend.map((value) => 3 + 7 * value + normal() / 10);
      const plain = seriesMean(values);
      const found = seriesMean(values, undefined, along(bend));
      expect(found.mean).toBe(plain.mean);
      expect(plain.u).toBeGreaterThan(0.3);
      expect(found.u * Math.sqrt(n)).toBeGreaterThan(0.09);
      expect(found.u * Math.sqrt(n)).toBeLessThan(0.15);
    });

    test('with noise about it the interval covers', () => {
      const normal = gaussian(21);
      let held = 0;
      for (let run = 0; run < 300; run++) {
        const values = autoregressive(n, 0.8, normal).map((value, i) => value + 5 * (bend[i]! - quick / n));
        const truth = 5 * (bend.reduce((sum, value) => sum + value, 0) / n - quick / n);
        const { mean: found, u, dof } = seriesMean(values, undefined, along(bend));
        if (Math.abs(found - truth) <= studentQuantile(0.975, dof) * u) held++;
      }
      expect(held / 300).toBeGreaterThan(0.92);
    });

    test('a flat one changes nothing, a few readings have none, and its length must fit', () => {
      const values = [1, 4, 2, 5, 3, 4, 2, 5, 1, 3];
      expect(seriesMean(values, undefined, along(new Array(10).fill(1)))).toEqual(seriesMean(values));
      expect(seriesMean(values.slice(0, 7), undefined, along([0, 1, 2, 3, 4, 5, 6]))).toEqual(seriesMean(values.slice(0, 7)));
      expect(() => seriesMean(values, undefined, along([1, 2]))).toThrow('found a course of 2 for 10 values');
    });
  });

  test('a small slow part under quick noise is seen on few blocks', () => {
    const normal = gaussian(31);
    const covered = coverage(200, () => autoregressive(3600, Math.exp(-1 / 240), normal).map((value) => 0.3 * value + normal()));
    expect(covered).toBeGreaterThan(0.9);
  });

  test('equal weights change nothing, a scale of the weights neither', () => {
    const y = autoregressive(300, 0.8, gaussian(3));
    const plain = seriesMean(y);
    const weighted = seriesMean(y, new Array(300).fill(7));
    for (const key of ['mean', 'u', 'dof', 'effectiveCount'] as const) expectNear(weighted[key], plain[key], 1e-10);
  });

  test('weights of time undo uneven sampling', () => {
    const t = [0, 1, 2, 3, 4, 14, 24, 34, 44];
    const values = t.map((at) => (at < 4 ? 10 : 20));
    const found = seriesMean(values, [1, 1, 1, 1, 10, 10, 10, 10, 10]);
    expectNear(found.mean, (4 * 10 + 50 * 20) / 54, 1e-14);
    expect(found.mean).toBeGreaterThan(mean(values));
  });

  test('unequal weights: the interval covers', () => {
    const normal = gaussian(21);
    const weights = Array.from({ length: 600 }, (_, i) => (i % 7 === 0 ? 7 : 1));
    const covered = coverage(400, () => autoregressive(600, 0.8, normal), 0, weights);
    expect(covered).toBeGreaterThanOrEqual(0.92);
    expect(covered).toBeLessThanOrEqual(0.99);
  });

  test('one reading with all the weight says nothing about scatter', () => {
    expect(seriesMean([1, 2, 3], [0, 1, 0])).toMatchObject({ mean: 2, u: Number.NaN, dof: 0 });
  });

  test('what is no series is refused', () => {
    expect(() => seriesMean([1, Number.NaN])).toThrow('values[1] is NaN');
    expect(() => seriesMean([1, 2], [1])).toThrow('found 1 weights for 2 values');
    expect(() => seriesMean([1, 2], [1, -1])).toThrow('weights[1] is -1');
    expect(() => seriesMean([1, 2], [0, 0])).toThrow('the weights sum to 0');
  });
});
