/** Raw HTML in Markdown is printed as the text that it is; a comment prints nothing. */
import type { Nodes, Parents, Root } from 'mdast';
import { SKIP, visit } from 'unist-util-visit';
import { warning } from '../../problem.ts';
import { COMMENT } from '../page/prose-spans.ts';
import { placeAt, report, spanOf, type Writing } from '../page/writing.ts';

/** Turns raw HTML into text, with a warning, and takes comments out. Markdown reads the line of a comment as HTML to its end. */
export function escapeRawHtml(writing: Writing, tree: Root): void {
  visit(tree, 'html', (node: Nodes, index, parent) => {
    if (node.type !== 'html' || !parent || index === undefined) return undefined;
    const siblings = (parent as Parents).children as Nodes[];
    const words = node.value.replace(COMMENT, '').trim();
    if (words === '') {
      siblings.splice(index, 1);
      return [SKIP, index];
    }
    if (words.includes('<!--')) reportUnclosed(writing, spanOf(node).start);
    else warnOfRawHtml(writing, spanOf(node).start, words);
    siblings[index] = isFlow(parent as Parents)
      ? { type: 'paragraph', children: [{ type: 'text', value: words }] }
      : { type: 'text', value: words };
    return [SKIP, index + 1];
  });
}

function warnOfRawHtml(writing: Writing, start: number, words: string): void {
  const remedy = 'it is printed as text; write it in Markdown, or put it in backquotes if it is meant to be read';
  const found = `raw HTML (${firstWords(words)})`;
  writing.problems.push(warning('raw-html', placeAt(writing, start), found, { expected: 'Markdown', remedy }));
}

function firstWords(html: string): string {
  const line = html.split(/[\r\n]/)[0] as string;
  return line.length > 40 ? `${line.slice(0, 40)}…` : line;
}

const FLOW = new Set(['root', 'blockquote', 'listItem', 'footnoteDefinition', 'containerDirective']);

function isFlow(parent: Parents): boolean {
  return FLOW.has(parent.type);
}

/** Markdown takes everything behind such a comment for part of it. */
function reportUnclosed(writing: Writing, start: number): void {
  const more = { expected: '`-->`', remedy: 'what follows it would not be printed' };
  report(writing, { rule: 'comment-unclosed', start, end: start + 4, found: 'a comment that is never closed', ...more });
}
