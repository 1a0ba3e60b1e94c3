/** What stood in for something that was not measured, of all that holds a number. */
import type { HeldBy } from '../written.ts';

/** Each once, as figures say it. */
export function standInsOf(held: readonly HeldBy[]): string[] {
  return [...new Set(held.flatMap(({ standsIn }) => (standsIn === undefined ? [] : standsIn.split('; '))))];
}

/** What is said beside a number: that it is quoted, and what stood in for something. */
export function besideOf(held: readonly HeldBy[]): string[] {
  const by = [...new Set(held.flatMap(({ quoted }) => quoted ?? []))];
  return [...by.map((source) => `quoted from ${source}`), ...standInsOf(held)];
}

/** " (the mean clock of the load phase stands in for that of the scores)": behind the number, in its own sentence; '' where nothing did. */
export function standInsText(held: readonly HeldBy[]): string {
  const all = besideOf(held);
  return all.length === 0 ? '' : ` (${all.join('; ')})`;
}
