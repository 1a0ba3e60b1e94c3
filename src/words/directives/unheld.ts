/** `:unheld[words]`: a number that no data is to hold, such as a price, a name or a common fact; it prints as it stands. */
import type { Nodes } from 'mdast';
import { element, type PageElement } from '../page/page-node.ts';
import type { Writing } from '../page/writing.ts';
import { wordsOf } from './directive-words.ts';
import type { WrittenDirective } from './read-directive.ts';

/** The words alone, or null after reporting what is wrong. */
export function unheld(writing: Writing, read: WrittenDirective, node: Nodes): PageElement | null {
  const words = wordsOf(writing, read, node, 'a number left unheld');
  return words === null ? null : (element('span', {}, [words]) as PageElement);
}
