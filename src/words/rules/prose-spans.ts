/** The stretches of source that print as prose: paragraphs, headings and cells, less code, raw HTML and our own directives. */
import type { Nodes, Parents, Root } from 'mdast';
import { SKIP, visit } from 'unist-util-visit';
import type { Span } from '../expression-tree.ts';
import { spanOf } from '../writing.ts';

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

/** Raw HTML other than comments. */
export function htmlSpans(tree: Root): Span[] {
  const spans: Span[] = [];
  visit(tree, 'html', (node) => {
    if (!node.value.startsWith('<!--')) spans.push(spanOf(node));
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
