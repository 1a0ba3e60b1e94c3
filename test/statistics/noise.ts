/** Seeded noise for coverage tests: the same numbers on every machine. */
import { seededRandom } from './seeded-random.ts';

/** Standard normal deviates by the method of Box and Muller, The Annals of Mathematical Statistics 29, 1958, 610–611. */
export function gaussian(seed: number): () => number {
  const random = seededRandom(seed);
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** A stationary first-order autoregressive series of mean 0 and standard deviation 1: each value keeps `memory` of the one before. */
export function autoregressive(n: number, memory: number, normal: () => number): Float64Array {
  const series = new Float64Array(n);
  let value = normal();
  for (let i = 0; i < n; i++) {
    series[i] = value;
    value = memory * value + Math.sqrt(1 - memory * memory) * normal();
  }
  return series;
}

/** Readings as a sensor with this step gives them. */
export function stepped(values: Float64Array, step: number): Float64Array {
  return values.map((value) => Math.round(value / step) * step);
}
