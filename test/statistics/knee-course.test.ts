import { describe, expect, test } from 'vitest';
import { kneeCourse } from '../../src/statistics/knee-course.ts';
import { seriesMean } from '../../src/statistics/series-mean.ts';
import { studentQuantile } from '../../src/statistics/student-quantile.ts';
import { autoregressive, gaussian } from './noise.ts';

const times = (n: number) => Float64Array.from({ length: n }, (_, i) => 4 * i);

/** 10 until 1200 s, then 8 and what of 1 settles with 150 s. */
const governed = (t: number) => (t < 1200 ? 10 : 8 + Math.exp((1200 - t) / 150));

describe('statistics/knee-course', () => {
  test('takes two levels and what settles between them out of the scatter, and leaves the mean', () => {
    const t = times(900);
    const normal = gaussian(41);
    const y = t.map((time) => governed(time) + 0.1 * normal());
    const found = seriesMean(y, undefined, kneeCourse(t, y)!);
    expect(found.mean).toBe(seriesMean(y).mean);
    expect(seriesMean(y).u).toBeGreaterThan(0.3);
    expect(found.u).toBeLessThan(0.02);
  });

  test('with noise about it that has a memory, the interval covers', () => {
    const t = times(900);
    const normal = gaussian(43);
    const truth = t.reduce((sum, time) => sum + governed(time) / t.length, 0);
    let held = 0;
    for (let run = 0; run < 100; run++) {
      const y = autoregressive(t.length, 0.9, normal).map((value, i) => governed(t[i]!) + 0.1 * value);
      const { mean, u, dof } = seriesMean(y, undefined, kneeCourse(t, y)!);
      if (Math.abs(mean - truth) <= studentQuantile(0.975, dof) * u) held++;
    }
    expect(held).toBeGreaterThanOrEqual(90);
  });

  test('a few readings have none', () => {
    expect(kneeCourse(times(31), times(31))).toBeNull();
  });
});
