/** Which of a run's logs comes first. */
import type { Looked } from './look-at.ts';

/** The log whose clock the run has comes first: one that tells the day, and of those the one with the most columns. */
export function firstFirst(paths: readonly string[], looked: ReadonlyMap<string, Looked>): string[] {
  const weight = (path: string) => {
    const { time, columns } = looked.get(path)!.inspection;
    return (time?.date === undefined ? 0 : 2000) + (time?.certain ? 1000 : 0) + columns.length;
  };
  return [...paths].sort((a, b) => weight(b) - weight(a));
}
