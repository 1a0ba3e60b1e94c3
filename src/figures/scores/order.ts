/** Repeats in the order in which they ran. */
import { between } from './moments.ts';
import type { Repeat } from './score-table.ts';

type Ordered = Pick<Repeat, 'window' | 'line'>;

/** By their start, where all state it on one scale; else null. Lines decide between equal starts. */
export function byStart<Each extends Ordered>(repeats: readonly Each[]): readonly Each[] | null {
  const first = repeats[0]?.window;
  const after = ({ window }: Each) => (first && window ? between(first.start, window.start) : null);
  if (repeats.some((repeat) => after(repeat) === null)) return null;
  return repeats.toSorted((a, b) => after(a)! - after(b)! || a.line - b.line);
}

/** By their start, where all state it on one scale; else as the table has them. */
export function inOrder<Each extends Ordered>(repeats: readonly Each[]): readonly Each[] {
  return byStart(repeats) ?? repeats;
}
