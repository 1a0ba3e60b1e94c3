/** A repeat that lies far from the others: named, and kept. */
import { grubbs } from '../../statistics/grubbs.ts';
import type { Repeat } from './score-table.ts';

/** Chance of naming one where none is. ISO 5725-2 calls a straggler what is beyond 5 %, an outlier what is beyond 1 % (from memory). */
const LEVEL = 0.01;

/** The name of the repeat that Grubbs' test finds at 1 %; null where it finds none. It stays in the mean. */
export function outlierIn(repeats: readonly Repeat[]): string | null {
  if (repeats.length < 3) return null;
  const inOrder = [...repeats].sort((a, b) => a.value - b.value || a.line - b.line);
  const found = grubbs(
    inOrder.map(({ value }) => value),
    LEVEL,
  );
  return found !== null && found.distance > found.critical ? inOrder[found.at]!.name : null;
}
