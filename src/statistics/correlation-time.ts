import { correlationWindow } from './correlation-window.ts';

/** Blocks that autocorrelations are taken over: enough for hundreds of degrees of freedom, few enough to be quick on a drifting log. */
const MOST_BLOCKS = 1000;

/** How much of a series is repetition, in rows. */
export interface CorrelationTime {
  /** Rows for one independent reading: n over it is the effective count. 1 or more. */
  readonly time: number;
  /** Rows over which autocorrelations were summed, both sides: n over it is how well `time` itself is known, in degrees of freedom. */
  readonly window: number;
}

/**
 * Integrated autocorrelation time of deviations from a mean or a fit: 1 + 2·Σρ(k) over the window of `correlationWindow`. A series
 * of more than 1000 is first summed into at most 1000 blocks, which leaves the sum as it is. Anticorrelation counts as none.
 *
 * When: to turn a standard uncertainty that took readings for independent into an honest one: multiply it by √time.
 * @param deviations residuals in order of time, evenly spaced or nearly so. Unit: any.
 * @returns rows; 1 and 1 for a constant series
 * Source: U. Wolff, Computer Physics Communications 156, 2004, 143–153, for time and what its window says of it; `correlationWindow`;
 *   batch means: common practice, no source.
 * Cost: one pass, and at most about 400,000 products.
 * @example
 * correlationTime([1, -1, 1, -1]) // { time: 1, window: 1 }
 * correlationTime([2, 1, 0, -1, -2]) // { time: 1.8, window: 3 }
 */
export function correlationTime(deviations: ArrayLike<number>): CorrelationTime {
  const n = deviations.length;
  const size = Math.max(1, Math.ceil(n / MOST_BLOCKS));
  const blocks = new Float64Array(Math.ceil(n / size));
  let squares = 0;
  for (let i = 0; i < n; i++) {
    blocks[Math.floor(i / size)]! += deviations[i]!;
    squares += deviations[i]! ** 2;
  }
  if (squares === 0) return { time: 1, window: 1 };
  const { lag, sum } = correlationWindow(blocks);
  return sum > squares ? { time: sum / squares, window: size * (2 * lag + 1) } : { time: 1, window: size };
}
