/** How long a condition held. */
import { sampleDeviation } from '../statistics/sample-deviation.ts';
import type { Readings } from './readings.ts';

/**
 * Time that readings of a phase stand for where a condition holds, s; the first and the last one stand for the phase's edges too, up to
 * a step. Each change of state is known to step/√12 (rectangular); where they recur in step with the log, all by the same error.
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
  return { time, u: (step / Math.sqrt(12)) * Math.sqrt(edges * alike) };
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
