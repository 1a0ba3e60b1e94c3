/** Elements of the page, as the tree of HTML has them. */
import type { Comment, Element, ElementContent, Properties, Text } from 'hast';

/** An element whose children are given, or stay those of the Markdown that it stands for. */
export interface PageElement {
  readonly tagName: string;
  readonly properties: Properties;
  readonly children: ElementContent[] | 'own';
}

/** An element; strings become text. */
export function element(tagName: string, properties: Properties, children: readonly (ElementContent | string)[]): Element {
  const content = children.map((child) => (typeof child === 'string' ? text(child) : child));
  return { type: 'element', tagName, properties, children: content };
}

/** Text of the page. */
function text(value: string): Text {
  return { type: 'text', value };
}

/** The link of a number that is held; the page numbers it later. `draft` is its index among the drafts. */
export function heldAnchor(draft: number, shown: string): Element {
  return element('a', { className: ['held'], dataDraft: String(draft) }, [shown]);
}

/** The address of an element of the page, as `Permalink.astro` prints it. */
export function permalink(id: string, name: string): Element {
  return element('a', { className: ['permalink'], href: `#${id}`, ariaLabel: `Address of ${name}` }, []);
}

/** Index of the draft that an element links, or undefined. */
export function draftOf(node: Element): number | undefined {
  const draft = node.properties.dataDraft;
  return typeof draft === 'string' ? Number(draft) : undefined;
}

const PLOT = '\0plot ';

/** Where a plot goes. Markdown replaces U+0000, so no text of an author's can look like it. */
export function plotMark(index: number): Comment {
  return { type: 'comment', value: `${PLOT}${index}` };
}

const PICTURE = '\0picture ';

/** Where a picture goes: `withPictures` puts it there. */
export function pictureMark(index: number): Comment {
  return { type: 'comment', value: `${PICTURE}${index}` };
}

/** HTML with the pictures in their places; `html` gives that of a picture by its number. */
export function withPictures(text: string, html: (index: number) => string): string {
  return text.replaceAll(new RegExp(`<!--${PICTURE}(\\d+)-->`, 'g'), (_mark, index: string) => html(Number(index)));
}

/** Splits HTML at the marks: strings, and the number of a plot between two of them. */
export function splitAtPlots(html: string): (string | number)[] {
  return html.split(new RegExp(`<!--${PLOT}(\\d+)-->`)).map((piece, index) => (index % 2 === 0 ? piece : Number(piece)));
}

/** All text within a node, for headings and checks. */
export function textOf(node: ElementContent): string {
  if (node.type === 'text') return node.value;
  return node.type === 'element' ? node.children.map(textOf).join('') : '';
}
