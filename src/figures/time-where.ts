/** How long a condition held. */
import type { Readings } from './readings.ts';

/** Time that readings stand for where a condition holds; each change of state is known to step/√12 (rectangular). */
export function timeWhere(
  readings: Readings,
  holds: (value: number, at: number) => boolean,
  step: number,
): { time: number; u: number } {
  let time = 0;
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
