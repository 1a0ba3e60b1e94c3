/** Markdown without what no page prints: comments, and definitions and footnotes that nothing refers to. They may be private. */
import type { Nodes, Root } from 'mdast';
import { visit } from 'unist-util-visit';
import type { Span } from '../expression/expression-tree.ts';
import { parseMarkdown } from './markdown.ts';
import { COMMENT } from './prose-spans.ts';
import { spanOf } from './writing.ts';

/**
 * Blanks stand in their place, so that all else keeps its line and column.
 * @param whole - whether front matter may stand first, which is left as it is.
 */
export function withoutRemarks(source: string, whole: boolean): string {
  const tree = parseMarkdown(source, whole);
  const spans = [...commentsIn(tree, source), ...unusedIn(tree)].toSorted((a, b) => b.start - a.start);
  return spans.reduce((text, { start, end }) => text.slice(0, start) + blanks(text.slice(start, end)) + text.slice(end), source);
}

function blanks(text: string): string {
  return text.replace(/[^\r\n]/g, ' ');
}

/** The words between the marks of a comment. The marks stay: Markdown reads the lines around them by them. */
function commentsIn(tree: Root, source: string): Span[] {
  const spans: Span[] = [];
  visit(tree, 'html', (node: Nodes) => {
    const { start, end } = spanOf(node);
    for (const { index, 0: comment } of source.slice(start, end).matchAll(COMMENT)) {
      if (comment.length > '<!---->'.length)
        spans.push({ start: start + index + '<!--'.length, end: start + index + comment.length - '-->'.length });
    }
  });
  return spans;
}

function unusedIn(tree: Root): Span[] {
  const used = new Set<string>();
  visit(tree, (node: Nodes) => {
    if (node.type === 'linkReference' || node.type === 'imageReference' || node.type === 'footnoteReference')
      used.add(`${node.type === 'footnoteReference' ? '^' : ''}${node.identifier}`);
  });
  const spans: Span[] = [];
  visit(tree, (node: Nodes) => {
    if (node.type !== 'definition' && node.type !== 'footnoteDefinition') return;
    const name = `${node.type === 'footnoteDefinition' ? '^' : ''}${node.identifier}`;
    if (used.has(name)) used.delete(name);
    else spans.push(spanOf(node));
  });
  return spans;
}
