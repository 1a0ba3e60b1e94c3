/** The words between a directive's brackets as they print. */
import type { Nodes } from 'mdast';
import { report, type Writing } from '../page/writing.ts';
import type { WrittenDirective } from './read-directive.ts';

/** Plain words, escapes and entities undone; null after reporting what is wrong. `what` names the directive: "a claim". */
export function wordsOf(writing: Writing, read: WrittenDirective, node: Nodes, what: string): string | null {
  const label = read.label;
  if (!label || !('children' in node)) return null;
  const refuse = (found: string, expected: string, remedy?: string): null => {
    report(writing, { rule: 'directive-label', start: label.start, end: label.end, found, expected, ...(remedy && { remedy }) });
    return null;
  };
  const texts = node.children.map((child) => (child.type === 'text' ? child.value : null));
  if (texts.includes(null)) {
    const remedy = 'put the emphasis around the whole of it, or escape the sign with `\\`';
    return refuse(`Markdown within the words of ${what}`, 'plain words', remedy);
  }
  const words = texts.join('').trim();
  return words === '' ? refuse(`${what} without words`, 'the words that it is about') : words;
}
