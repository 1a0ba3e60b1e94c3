import { quantile } from './quantile.ts';
import { requireFinite } from './require-finite.ts';
import { sampleDeviation } from './sample-deviation.ts';
import { seededRandom } from './seeded-random.ts';

export interface Bootstrap {
  /** The statistic of the sample itself. */
  readonly value: number;
  /** Spread of the statistic over the resamples: its standard uncertainty, in its unit. */
  readonly u: number;
  /** Percentile interval at the level asked for. */
  readonly interval: readonly [number, number];
}

export interface BootstrapOptions {
  /** Fixes the resamples. */
  readonly seed: number;
  /** 2000 when left out. */
  readonly resamples?: number;
  /** Coverage of the interval, 0.95 when left out. */
  readonly level?: number;
}

/**
 * Standard uncertainty and percentile interval of any statistic, from resampling with replacement.
 *
 * When: independent repeats and a statistic without a formula (a median, a ratio). Not for rows of a log, which repeat each other.
 * Small samples give intervals that are too narrow.
 * @param values two or more finite numbers. Unit: any.
 * @param statistic takes a resample, gives a finite number; it must not keep or change the array
 * @throws RangeError for fewer than two values, one that is not finite, or options out of range
 * Source: Efron & Tibshirani, An Introduction to the Bootstrap, 1993, chapters 6 and 13.
 * Cost: resamples × that of the statistic.
 */
export function bootstrap(
  values: ArrayLike<number>,
  statistic: (sample: Float64Array) => number,
  options: BootstrapOptions,
): Bootstrap {
  const { seed, resamples = 2000, level = 0.95 } = options;
  if (values.length < 2) throw new RangeError(`found ${values.length} values, expected at least 2`);
  if (!(Number.isInteger(resamples) && resamples >= 2)) throw new RangeError(`resamples is ${resamples}, expected 2 or more`);
  if (!(level > 0 && level < 1)) throw new RangeError(`level is ${level}, expected between 0 and 1`);
  requireFinite('values', values);
  const random = seededRandom(seed);
  const sample = new Float64Array(values.length);
  const replicates = new Float64Array(resamples);
  for (let k = 0; k < resamples; k++) {
    for (let i = 0; i < sample.length; i++) sample[i] = values[Math.floor(random() * sample.length)]!;
    replicates[k] = statistic(sample);
  }
  const ends = [(1 - level) / 2, (1 + level) / 2].map((p) => quantile(replicates, p)) as [number, number];
  return { value: statistic(Float64Array.from(values)), u: sampleDeviation(replicates), interval: ends };
}
