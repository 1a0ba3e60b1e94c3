/** Notes and scripts by date. */
import { compareText } from '../../problem.ts';
import type { ComputedNote } from './site-contents.ts';

export function newestFirst(a: ComputedNote, b: ComputedNote): number {
  return compareText(b.note.date, a.note.date) || compareText(a.note.id, b.note.id);
}
