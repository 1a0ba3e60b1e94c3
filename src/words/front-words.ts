/**
 * The words of a front matter that readers see: title, summary, disclosure. They may hold numbers as the text does, by the directives
 * of a sentence; all else in them is plain text and no Markdown.
 */
import type { Root as HastRoot } from 'hast';
import type { Nodes, Paragraph, Root, Text } from 'mdast';
import type { FrontKey, Note } from '../register/register.ts';
import { readDirective } from './directives/read-directive.ts';
import type { Span } from './expression/expression-tree.ts';
import { textOf } from './page/page-node.ts';
import type { Writing } from './page/writing.ts';
import type { PlainWords, Written } from './written.ts';

/** One of these texts on its way to the page. */
export interface FrontText {
  readonly key: FrontKey;
  /** Its source is the text; its places are those of the file. */
  readonly writing: Writing;
  readonly tree: Root;
}

/** Title and summary, which stand above the text, then the disclosure at its foot; those that the note has. */
export function frontTexts({ front = [] }: Pick<Note, 'front'>, writing: Writing): FrontText[] {
  return front.map(({ key, text, place }) => {
    const start = (writing.lines[place.line - 1] ?? 0) + place.column - 1;
    const offsets = offsetsIn(writing.source, start, text);
    const own: Writing = { ...writing, source: text, within: { outer: writing, offsets } };
    return { key, writing: own, tree: plainTree(text) };
  });
}

/** The offset in `source` of each character of a value that begins at `start`, and of its end; all the start where they cannot be told. */
export function offsetsIn(source: string, start: number, text: string): readonly number[] {
  const header = /^(?:[|>][-+\d]*[ \t]*\r?\n)?[ \t]*/.exec(source.slice(start, start + REACH));
  let at = start + (header?.[0].length ?? 0);
  const offsets: number[] = [];
  for (const character of text.split('')) {
    const step = stepAt(source, at, character);
    if (step === undefined) return Array.from({ length: text.length + 1 }, () => start);
    offsets.push(at + step.skip);
    at += step.skip + step.length;
  }
  return [...offsets, at];
}

/** Farthest that a line's indentation reaches. */
const REACH = 400;

/** What of the source stands for a character of the value: a line's end with the next line's indentation for a blank or a line's end, a quote written twice for one. */
function stepAt(source: string, at: number, character: string): { readonly skip: number; readonly length: number } | undefined {
  const lineEnd = /^[ \t]*\r?\n[ \t]*/.exec(source.slice(at, at + REACH));
  if (lineEnd && (character === ' ' || character === '\n')) return { skip: 0, length: lineEnd[0].length };
  if (source[at] === character) return { skip: 0, length: 1 };
  const twice = source.startsWith("''", at - 1) && source[at + 1] === character;
  return twice ? { skip: 1, length: 1 } : undefined;
}

type TextDirective = Extract<Nodes, { type: 'textDirective' }>;

const OURS = /(?<![:\\\p{L}\p{N}]):(?:value|stated|claim|unheld)(?=[[{])/gu;

/** One paragraph of plain text and our directives. */
function plainTree(source: string): Root {
  const children: (Text | TextDirective)[] = [];
  let from = 0;
  for (const { index, 0: head } of source.matchAll(OURS)) {
    if (index < from) continue;
    const read = readDirective(source, index);
    const end = 'rule' in read ? index + head.length : read.end;
    const label = 'rule' in read || !read.label ? [] : [labelNode(source, read.label)];
    if (index > from) children.push(textNode(source, from, index));
    children.push({ type: 'textDirective', name: head.slice(1), children: label, ...position(index, end) });
    from = end;
  }
  if (from < source.length) children.push(textNode(source, from, source.length));
  const paragraph: Paragraph = { type: 'paragraph', children, ...position(0, source.length) };
  return { type: 'root', children: [paragraph], ...position(0, source.length) };
}

/** The words between brackets; a backslash before a bracket or another backslash is no part of them. */
function labelNode(source: string, { start, end }: Span): Text {
  const written = textNode(source, start, end);
  return { ...written, value: written.value.replace(/\\([[\]\\])/g, '$1') };
}

function textNode(source: string, start: number, end: number): Text {
  return { type: 'text', value: source.slice(start, end), ...position(start, end) };
}

/** Only offsets are asked for: lines and columns follow from the writing. */
function position(start: number, end: number): Pick<Text, 'position'> {
  const at = (offset: number) => ({ line: 1, column: offset + 1, offset });
  return { position: { start: at(start), end: at(end) } };
}

/** The words as the page prints them, once held numbers have their numbers. */
export function plainWords(page: HastRoot): PlainWords {
  const pieces: (string | number)[] = [];
  const within = (node: HastRoot['children'][number]): void => {
    const held = node.type === 'element' ? node.properties.dataN : undefined;
    if (typeof held === 'string') pieces.push(Number(held));
    else if (node.type === 'text') pieces.push(node.value);
    else if (node.type === 'element' && node.tagName !== 'p') pieces.push(textOf(node));
    else if (node.type === 'element') node.children.forEach(within);
  };
  page.children.forEach(within);
  return pieces;
}

/** The note with title, summary and disclosure as they print, for pages and files that show their words alone. */
export function withPlainFront(note: Note, { front, entries }: Pick<Written, 'front' | 'entries'>): Note {
  const printed = Object.entries(front ?? {}).map(([key, words]) => [key, plainText(words, entries)]);
  return { ...note, ...Object.fromEntries(printed) };
}

function plainText(words: PlainWords, entries: Written['entries']): string {
  return words.map((piece) => (typeof piece === 'string' ? piece : (entries[piece - 1]?.shown ?? ''))).join('');
}
