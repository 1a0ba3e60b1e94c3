/** Paragraphs, headings and cells in which a number is held already, as a reader reads them: with what the directives show in their place. */
import type { Nodes, Root } from 'mdast';
import type { TextDirective } from 'mdast-util-directive';
import { SKIP, visit } from 'unist-util-visit';
import type { Span } from '../expression/expression-tree.ts';
import { spanOf } from './writing.ts';

const HOLDERS = new Set(['paragraph', 'heading', 'tableCell']);
const APART = new Set(['inlineCode', 'html', 'image', 'imageReference', 'footnoteReference', 'link', 'linkReference']);
/** Directives whose words are those that are read. */
const WORDS = new Set(['stated', 'unheld', 'claim']);

export interface HeldText extends Span {
  /** As long as the source, so that offsets stay: what is not read is blank. */
  readonly text: string;
  /** Where directives stand. Offsets are into the source. */
  readonly held: readonly Span[];
}

/** Those that hold a directive at least. `shown` is what a `:value` with this label prints; undefined where that is not known. */
export function heldTexts(source: string, tree: Root, shown: (label: string) => string | undefined): HeldText[] {
  const texts: HeldText[] = [];
  visit(tree, (node: Nodes) => {
    if (!HOLDERS.has(node.type)) return undefined;
    const span = spanOf(node);
    const held: Span[] = [];
    let text = source.slice(span.start, span.end);
    const put = (at: Span, words: string) => {
      const length = at.end - at.start;
      const from = at.start - span.start;
      text = text.slice(0, from) + words.slice(0, length).padEnd(length) + text.slice(from + length);
    };
    visit(node, (inner: Nodes) => {
      if (APART.has(inner.type)) put(spanOf(inner), '');
      if (inner.type === 'textDirective') {
        held.push(spanOf(inner));
        put(spanOf(inner), wordsOf(source, inner, shown));
      }
      return APART.has(inner.type) || inner.type === 'textDirective' ? SKIP : undefined;
    });
    if (held.length > 0) texts.push({ ...span, text, held });
    return SKIP;
  });
  return texts;
}

function wordsOf(source: string, { name, children }: TextDirective, shown: (label: string) => string | undefined): string {
  const [first, last] = [children[0], children.at(-1)];
  if (!first?.position || !last?.position) return '';
  const label = source.slice(spanOf(first).start, spanOf(last).end);
  if (WORDS.has(name)) return label;
  return name === 'value' ? (shown(label) ?? '') : '';
}
