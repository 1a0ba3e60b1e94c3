/** Noise of families: white, or autoregressive with a memory that is a share of the stretch, or both. */
import { wandering } from '../simulator/noise.ts';
import type { Random } from '../simulator/random.ts';

export interface Noise {
  /** Correlation time as a share of the stretch; 0 for white noise. */
  readonly memory: number;
  /** White noise besides, as a multiple of that with a memory; the two together then have a standard deviation of 1. */
  readonly white?: number;
}

/** Successive deviates of standard deviation 1, for a stretch of n readings. */
export function noiseOf({ memory, white = 0 }: Noise, n: number, chance: Random): () => number {
  if (memory === 0) return () => chance.normal();
  const scale = 1 / Math.hypot(1, white);
  const slow = wandering(chance, scale, memory * n, 1);
  return white === 0 ? slow : () => slow() + white * scale * chance.normal();
}

/** Half width of the 95 % interval of the mean of n such readings, for who knows the noise. */
export function knownHalfWidth({ memory, white = 0 }: Noise, n: number): number {
  const scale = 1 / Math.hypot(1, white);
  const variance = memory === 0 ? 1 / n : scale ** 2 * (varianceOfMean(memory * n, n) + white ** 2 / n);
  return 1.959964 * Math.sqrt(variance);
}

/** Of the mean of n readings of a first-order autoregressive series (G. E. P. Box and G. M. Jenkins, Time Series Analysis; from memory). */
function varianceOfMean(memory: number, n: number): number {
  const keep = Math.exp(-1 / memory);
  return ((1 + keep) / (1 - keep) - (2 * keep * (1 - keep ** n)) / (n * (1 - keep) ** 2)) / n;
}
