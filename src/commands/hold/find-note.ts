/** A note as typed -> its path below the project folder. */
import { findContent } from '../find-content.ts';

/** The path of a note or script named by its path, or by its name alone; or what is wrong. */
export function findNote(root: string, typed: string): { readonly file: string } | { readonly refused: string } {
  return findContent(root, typed, ['notes', 'scripts'], 'note');
}
