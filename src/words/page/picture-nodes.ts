/**
 * Pictures of Markdown, `![what is to be seen](path "caption")`: a paragraph that holds nothing else becomes one figure, or a set of them.
 * Their words become paragraphs of the tree, with the offsets that they have in the source, so that all that holds for words holds for them.
 */
import type { Blockquote, Image, Nodes, Paragraph, Parents, PhrasingContent, Root } from 'mdast';
import { SKIP, visit } from 'unist-util-visit';
import type { Span } from '../expression/expression-tree.ts';

/** A picture as its author wrote it. */
export interface WrittenPicture {
  /** Where Markdown's address leads, as it reads it. */
  readonly url: string;
  /** The words between the brackets, of which the figure's second paragraph is made. */
  readonly alt: string;
  /** Where the caption stands; null where there is none. */
  readonly caption: Span | null;
  /** What opens the caption: a directive within must do without it. */
  readonly quote: string;
}

/** A figure of the tree: its picture's place, the words of its alternative text, its caption where there is one. */
export interface FigureNode extends Blockquote {
  readonly data: Blockquote['data'] & { readonly picture: WrittenPicture };
}

/** Whether a node is a figure that `layOutPictures` made. */
export function isFigure(node: Nodes): node is FigureNode {
  return node.type === 'blockquote' && node.data !== undefined && 'picture' in node.data;
}

/** Whether a node is a set of figures. */
export function isSet(node: Nodes): boolean {
  return node.type === 'blockquote' && node.data?.hName === 'div';
}

/** Where the captions of a tree stand, and what opens each. */
export function captionsIn(tree: Root): (Span & Pick<WrittenPicture, 'quote'>)[] {
  const captions: (Span & Pick<WrittenPicture, 'quote'>)[] = [];
  visit(tree, 'blockquote', (node) => {
    if (isFigure(node) && node.data.picture.caption)
      captions.push({ ...node.data.picture.caption, quote: node.data.picture.quote });
  });
  return captions;
}

/** Lays the pictures of a tree out; `parse` reads Markdown. A picture that stands among words stays as it is, for the rule that refuses it. */
export function layOutPictures(tree: Root, source: string, parse: (text: string) => Root): void {
  visit(tree, 'paragraph', (node, index, parent) => {
    if (!parent || index === undefined) return undefined;
    const images = imagesAlone(node);
    const figures = images?.map((image) => figureOf(image, source, parse)) ?? [];
    if (figures.length === 0 || figures.some((figure) => figure === null)) return undefined;
    const [only, more] = figures as FigureNode[];
    const set: Blockquote = {
      type: 'blockquote',
      children: figures as FigureNode[],
      data: { hName: 'div', hProperties: { className: ['pictures'], dataCount: String(figures.length) } },
      ...(node.position && { position: node.position }),
    };
    (parent as Parents).children[index] = (more ? set : only!) as never;
    return SKIP;
  });
}

/** The pictures of a paragraph that holds nothing else but blanks and line breaks. */
function imagesAlone({ children }: Paragraph): Image[] | undefined {
  const rest = children.filter((child) => child.type !== 'break' && !(child.type === 'text' && child.value.trim() === ''));
  return rest.length > 0 && rest.every((child) => child.type === 'image') ? (rest as Image[]) : undefined;
}

function figureOf(image: Image, source: string, parse: (text: string) => Root): FigureNode | null {
  const { start, end } = { start: image.position?.start.offset ?? 0, end: image.position?.end.offset ?? 0 };
  const spans = spansOf(source, start, end);
  if (spans === null) return null;
  const { alt, caption, quote } = spans;
  const words = paragraphOf(source, alt, parse);
  const below = caption === null ? [] : [paragraphOf(source, caption, parse)];
  words.data = { hProperties: { className: ['described'] } };
  for (const each of below) each.data = { hName: 'figcaption' };
  const place: Paragraph = { type: 'paragraph', children: [], data: { hName: 'div', hProperties: { className: ['seen'] } } };
  return {
    type: 'blockquote',
    children: [place, words, ...below],
    data: {
      hName: 'figure',
      hProperties: { className: ['picture'] },
      picture: { url: image.url, alt: image.alt ?? '', caption, quote },
    },
    ...(image.position && { position: image.position }),
  };
}

/** Words of the source as a paragraph, at the offsets at which they stand. */
function paragraphOf(source: string, { start, end }: Span, parse: (text: string) => Root): Paragraph {
  // A comma before them keeps a blank, a number or a dash at their beginning from being read as a list or as code.
  const shield = ',';
  const [first] = parse(shield + source.slice(start, end)).children;
  const children = first?.type === 'paragraph' ? first.children : [];
  const shift = start - shield.length;
  for (const child of children) visit(child, (node: Nodes) => moved(node, shift));
  return { type: 'paragraph', children: unshielded(children), position: { start: at(start), end: at(end) } };
}

function unshielded(children: PhrasingContent[]): PhrasingContent[] {
  const [first, ...rest] = children;
  if (first?.type !== 'text') return children;
  first.value = first.value.slice(1);
  return first.value === '' ? rest : children;
}

/** Only offsets are asked for: lines and columns follow from the source. */
function moved(node: Nodes, by: number): void {
  const { start, end } = node.position ?? {};
  if (start?.offset === undefined || end?.offset === undefined) return;
  node.position = { start: at(start.offset + by), end: at(end.offset + by) };
}

function at(offset: number): { line: number; column: number; offset: number } {
  return { line: 1, column: offset + 1, offset };
}

/** Where alternative text and caption of `![…](… "…")` stand; null where that cannot be told. */
function spansOf(source: string, start: number, end: number): (Pick<WrittenPicture, 'caption' | 'quote'> & { alt: Span }) | null {
  const close = closingBracket(source, start + 1, end);
  if (close === null || source[close + 1] !== '(' || source[end - 1] !== ')') return null;
  const alt = { start: start + 2, end: close };
  const inside = source.slice(close + 2, end - 1);
  const address = /^\s*(?:<(?:\\.|[^\\<>\r\n])*>|(?:\\.|[^\\\s])*)/.exec(inside)![0];
  const title = /^(\s+)(["'(])([\s\S]*)["')]\s*$/.exec(inside.slice(address.length));
  if (!title) return { alt, caption: null, quote: '' };
  const from = close + 2 + address.length + title[1]!.length + 1;
  return { alt, caption: { start: from, end: from + title[3]!.length }, quote: title[2]! };
}

/** The bracket that closes the one at `open`; code and escaped characters close none. */
function closingBracket(source: string, open: number, end: number): number | null {
  let depth = 0;
  for (let at = open; at < end; at += 1) {
    const character = source[at];
    if (character === '\\') at += 1;
    else if (character === '`') at = pastCode(source, at, end);
    else if (character === '[') depth += 1;
    else if (character === ']') {
      depth -= 1;
      if (depth === 0) return at;
    }
  }
  return null;
}

/** The last backquote of the code that begins at `from`; `from` where it is no code. */
function pastCode(source: string, from: number, end: number): number {
  const fence = /^`+/.exec(source.slice(from, end))![0];
  const close = source.slice(from + fence.length, end).search(new RegExp(`(?<!\`)${fence}(?!\`)`));
  return close < 0 ? from + fence.length - 1 : from + fence.length + close + fence.length - 1;
}
