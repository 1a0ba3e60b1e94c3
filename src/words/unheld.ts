/** `:unheld[words]`: a number that no data is to hold, such as a price, a name or a common fact; it prints as it stands. */
import type { Nodes } from 'mdast';
import { wordsOf } from './directive-words.ts';
import { element, type PageElement } from './page-node.ts';
import type { WrittenDirective } from './read-directive.ts';
import type { Writing } from './writing.ts';

/** The words alone, or null after reporting what is wrong. */
export function unheld(writing: Writing, read: WrittenDirective, node: Nodes): PageElement | null {
  const words = wordsOf(writing, read, node, 'a number left unheld');
  return words === null ? null : (element('span', {}, [words]) as PageElement);
}
