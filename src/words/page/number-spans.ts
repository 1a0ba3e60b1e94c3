/** The stretches of source in which a number would be read as the author's own: prose less where links lead to, footnote marks and addresses. */
import type { Nodes, Parents, Root } from 'mdast';
import { SKIP, visit } from 'unist-util-visit';
import type { Span } from '../expression/expression-tree.ts';
import { spanOf } from './writing.ts';

const HOLDERS = new Set(['paragraph', 'heading', 'tableCell']);
const APART = new Set(['inlineCode', 'textDirective', 'html', 'image', 'imageReference', 'footnoteReference']);

export interface NumberSpan extends Span {
  /** Within the words of a link, where no directive can stand. */
  readonly linked: boolean;
}

/** In the order of the source. */
export function numberSpans(tree: Root): NumberSpan[] {
  const spans: NumberSpan[] = [];
  visit(tree, (node: Nodes) => {
    if (!HOLDERS.has(node.type)) return undefined;
    spans.push(...within(spanOf(node), gapsIn(node as Parents), false));
    visit(node, ['link', 'linkReference'], (link: Nodes) => {
      spans.push(...linkWords(link as Parents));
    });
    return SKIP;
  });
  return spans.filter(({ start, end }) => end > start).sort((a, b) => a.start - b.start);
}

function gapsIn(holder: Parents): Span[] {
  const gaps: Span[] = [];
  visit(holder, (node: Nodes) => {
    if (node === holder) return undefined;
    if (!APART.has(node.type) && node.type !== 'link' && node.type !== 'linkReference') return undefined;
    gaps.push(spanOf(node));
    return SKIP;
  });
  return gaps;
}

/** The words between a link's brackets. An address that is a link of itself, bare or between angle brackets, has none. */
function linkWords(link: Parents): NumberSpan[] {
  const [first, last] = [link.children[0], link.children.at(-1)] as [Nodes | undefined, Nodes | undefined];
  if (!first?.position || !last?.position || isOwnAddress(link, last)) return [];
  return within({ start: spanOf(first).start, end: spanOf(last).end }, gapsIn(link), true);
}

/** Behind the words of a bracketed link stands more than one sign: its brackets and its address. */
function isOwnAddress(link: Parents, last: Nodes): boolean {
  return link.type === 'link' && spanOf(link).end - spanOf(last).end <= 1;
}

function within({ start, end }: Span, gaps: readonly Span[], linked: boolean): NumberSpan[] {
  const starts = [start, ...gaps.map((gap) => gap.end)];
  return starts.map((from, index) => ({ start: from, end: gaps[index]?.start ?? end, linked }));
}
