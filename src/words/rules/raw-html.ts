/** Raw HTML in Markdown is printed as the text that it is; a comment prints nothing. */
import type { Nodes, Parents, Root } from 'mdast';
import { SKIP, visit } from 'unist-util-visit';
import { warning } from '../../problem.ts';
import { placeAt, spanOf, type Writing } from '../writing.ts';

/** Turns raw HTML into text, with a warning, and takes comments out. */
export function escapeRawHtml(writing: Writing, tree: Root): void {
  visit(tree, 'html', (node: Nodes, index, parent) => {
    if (node.type !== 'html' || !parent || index === undefined) return undefined;
    const siblings = (parent as Parents).children as Nodes[];
    if (/^<!--[\s\S]*-->\s*$/.test(node.value) && node.value.indexOf('-->') === node.value.trimEnd().length - 3) {
      siblings.splice(index, 1);
      return [SKIP, index];
    }
    const found = `raw HTML (${firstWords(node.value)})`;
    const more = {
      expected: 'Markdown',
      remedy: 'it is printed as text; write it in Markdown, or put it in backquotes if it is meant to be read',
    };
    writing.problems.push(warning('raw-html', placeAt(writing, spanOf(node).start), found, more));
    siblings[index] = isFlow(parent as Parents)
      ? { type: 'paragraph', children: [{ type: 'text', value: node.value }] }
      : { type: 'text', value: node.value };
    return [SKIP, index + 1];
  });
}

function firstWords(html: string): string {
  const line = html.split(/[\r\n]/)[0] as string;
  return line.length > 40 ? `${line.slice(0, 40)}…` : line;
}

const FLOW = new Set(['root', 'blockquote', 'listItem', 'footnoteDefinition', 'containerDirective']);

function isFlow(parent: Parents): boolean {
  return FLOW.has(parent.type);
}
