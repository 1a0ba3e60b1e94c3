/** Noise that logs have: white, and with a memory. */
import type { Random } from './random.ts';

/**
 * A first-order autoregressive series with standard deviation `deviation` and correlation time `memory` (s), sampled every
 * `step` seconds: r₁ = e^(−step/memory). It starts in its stationary distribution (Box and Jenkins, "Time Series Analysis", AR(1)).
 */
export function wandering(random: Random, deviation: number, memory: number, step: number): () => number {
  const keep = Math.exp(-step / memory);
  const fresh = deviation * Math.sqrt(1 - keep * keep);
  let value = deviation * random.normal();
  return () => {
    const current = value;
    value = keep * value + fresh * random.normal();
    return current;
  };
}

/** Rounds to a multiple of an instrument's step, halves up; a step of 0 leaves the value as it is. */
export function quantise(value: number, step: number): number {
  return step === 0 ? value : Math.round(value / step) * step;
}
