/** How long a condition held. */
import { sampleDeviation } from '../statistics/sample-deviation.ts';
import type { Readings } from './readings.ts';

/**
 * Time that readings of a phase stand for where a condition holds, s; the first and the last one stand for the phase's edges too, up to
 * a step. Each change of state is known to step/√12 (rectangular); where they recur in step with the log, all by the same error. Where
 * the state changes so fast that changes were missed, the larger error counts: that of a sum of so many glances.
 */
export function timeWhere(
  readings: Readings,
  holds: (value: number, at: number) => boolean,
  step: number,
  phase: { readonly from: number; readonly to: number },
): { time: number; u: number } {
  const { t, y } = readings;
  const last = y.length - 1;
  const edge = (length: number) => (length > 0 && length <= step * (1 + 1e-9) ? length : 0);
  let time = (holds(y[0]!, 0) ? edge(t[0]! - phase.from) : 0) + (holds(y[last]!, last) ? edge(phase.to - t[last]!) : 0);
  let edges = 0;
  const onsets: number[] = [];
  let before: boolean | null = null;
  readings.y.forEach((value, i) => {
    const now = holds(value, i);
    if (now) time += readings.weights[i]!;
    if (before !== null && now !== before) edges++;
    if (before === false && now) onsets.push(t[i]!);
    before = now;
  });
  // Of edges in step all begins share one error, and all ends another.
  const alike = recursInStep(onsets, step) ? edges / 2 : 1;
  const seen = Math.sqrt((edges * alike) / 12);
  const held = readings.y.reduce((count, value, i) => count + (holds(value, i) ? 1 : 0), 0);
  return { time, u: step * Math.max(seen, ofGlances(held, readings.y.length, edges)) };
}

/** From this autocorrelation of neighbouring glances on nearly all changes were seen: the edges tell as much, to 3 %. */
const SLOW = 0.9;

/**
 * Standard deviation, in steps, of the time that a state lasted as n glances tell it, where it comes and goes at random: its
 * autocorrelation falls as exp(−t/τ), and τ follows from how often it changed between two glances. With ρ = exp(−step/τ) and the variance v
 * of the state it is √(n·v·((1 + ρ)/(1 − ρ) + 2/ln ρ)): √(n·v) of a quick state, and √(edges/12) of a slow one (derived here; D. R. Cox,
 * Renewal Theory, 1962, for alternating states, from memory). ρ is taken two of its standard deviations lower than seen, √((1 − ρ²)/n) each. Zero for a slow one: its edges tell.
 */
function ofGlances(held: number, n: number, edges: number): number {
  const share = held / n;
  const v = share * (1 - share);
  if (v === 0 || edges === 0) return 0;
  const seen = 1 - edges / ((n - 1) * 2 * v);
  if (seen > SLOW) return 0;
  const kept = seen - 2 * Math.sqrt(Math.max(0, 1 - seen * seen) / n);
  if (!(kept > 0)) return Math.sqrt(n * v);
  return Math.sqrt(n * v * Math.max(0, (1 + kept) / (1 - kept) + 2 / Math.log(kept)));
}

/** From so many onsets on their spacing can be judged … */
const ONSETS = 4;
/** … and where it scatters by less than this share of a step, it is nearly a whole number of steps: else one in so many would be a step longer. */
const IN_STEP = 0.35;

function recursInStep(onsets: readonly number[], step: number): boolean {
  if (onsets.length < ONSETS) return false;
  const spacings = onsets.slice(1).map((at, i) => at - onsets[i]!);
  return sampleDeviation(spacings) < IN_STEP * step;
}
