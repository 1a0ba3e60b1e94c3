/** The stretches of source that print as prose: paragraphs, headings and cells, less code, raw HTML and our own directives. */
import type { Nodes, Parents, Root } from 'mdast';
import { SKIP, visit } from 'unist-util-visit';
import type { Span } from '../expression/expression-tree.ts';
import { spanOf } from './writing.ts';

/** A comment of HTML; `<!-->` and `<!--->` are whole ones (CommonMark 0.31.2, 6.6). */
export const COMMENT = /<!--(?:-?>|[\s\S]*?-->)/g;

const HOLDERS = new Set(['paragraph', 'heading', 'tableCell']);
const APART = new Set(['inlineCode', 'textDirective', 'html']);

/** In the order of the source. Text nodes themselves won't do: some lose their position when addresses in them become links. */
export function proseSpans(tree: Root): Span[] {
  const spans: Span[] = [];
  visit(tree, (node: Nodes) => {
    if (!HOLDERS.has(node.type)) return undefined;
    spans.push(...between(spanOf(node), apartIn(node as Parents)));
    return SKIP;
  });
  return spans;
}

/** Raw HTML less the comments in it. */
export function htmlSpans(tree: Root, source: string): Span[] {
  const spans: Span[] = [];
  visit(tree, 'html', (node) => {
    const whole = spanOf(node);
    const comments = source.slice(whole.start, whole.end).matchAll(COMMENT);
    const gaps = [...comments].map(({ index, 0: comment }) => ({
      start: whole.start + index,
      end: whole.start + index + comment.length,
    }));
    spans.push(...between(whole, gaps));
  });
  return spans;
}

function apartIn(holder: Parents): Span[] {
  const spans: Span[] = [];
  visit(holder, (node: Nodes) => {
    if (!APART.has(node.type)) return undefined;
    spans.push(spanOf(node));
    return SKIP;
  });
  return spans;
}

function between({ start, end }: Span, gaps: readonly Span[]): Span[] {
  const spans: Span[] = [];
  let from = start;
  for (const gap of gaps) {
    spans.push({ start: from, end: gap.start });
    from = gap.end;
  }
  return [...spans, { start: from, end }];
}
