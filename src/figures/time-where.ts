/** How long a condition held. */
import type { Readings } from './readings.ts';

/**
 * Time that readings of a phase stand for where a condition holds, s; the first and the last one stand for the phase's edges too, up to
 * a step. Each change of state is known to step/√12 (rectangular).
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
  let before: boolean | null = null;
  readings.y.forEach((value, i) => {
    const now = holds(value, i);
    if (now) time += readings.weights[i]!;
    if (before !== null && now !== before) edges++;
    before = now;
  });
  return { time, u: (step / Math.sqrt(12)) * Math.sqrt(edges) };
}
