/**
 * What an author wrote of a directive, read from the source and not from parsed Markdown: Markdown drops a list that does not parse,
 * keeps the last of two equal attributes, and makes emphasis of `a*b*c`.
 */
import type { Span } from '../expression/expression-tree.ts';
import type { TextProblem } from '../expression/text-problem.ts';

export interface WrittenAttribute extends Span {
  readonly name: string;
  readonly value: string;
  /** Offset of the value's first character, inside its quotes. */
  readonly valueStart: number;
}

export interface WrittenDirective {
  readonly name: string;
  /** Words between the brackets, as they stand; null without brackets. */
  readonly label: (Span & { readonly text: string }) | null;
  readonly attributes: readonly WrittenAttribute[];
  /** Offset after its last character. */
  readonly end: number;
}

/** Reads `:name[label]{attributes}` at an offset. Offsets are into `source`; a directive stands on one line. */
export function readDirective(source: string, start: number): WrittenDirective | TextProblem {
  const name = /^:+([a-z]+)/.exec(source.slice(start, start + 40));
  if (!name) throw new RangeError(`no directive at offset ${start}`);
  let end = start + name[0].length;
  const label = source[end] === '[' ? readLabel(source, end) : null;
  if (label && 'rule' in label) return label;
  if (label) end = label.end + 1;
  const attributes = source[end] === '{' ? readAttributes(source, end) : null;
  if (attributes && 'rule' in attributes) return attributes;
  return { name: name[1] as string, label, attributes: attributes?.list ?? [], end: attributes?.end ?? end };
}

/** Words between brackets that balance; `\[`, `\]` and `\\` don't count. `start` is the offset of `[`. */
function readLabel(source: string, start: number): (Span & { readonly text: string }) | TextProblem {
  let depth = 0;
  for (let at = start + 1; at < source.length && !isLineEnd(source[at]); at += 1) {
    const character = source[at];
    if (character === '\\' && /[[\]\\]/.test(source[at + 1] ?? '')) at += 1;
    else if (character === '[') depth += 1;
    else if (character === ']' && depth > 0) depth -= 1;
    else if (character === ']') return { start: start + 1, end: at, text: clean(source.slice(start + 1, at)) };
  }
  const found = 'brackets that are not closed on the line on which they open';
  return {
    rule: 'directive-lines',
    start,
    end: start + 1,
    found,
    expected: 'the whole directive on one line',
    remedy: 'close it with `]`',
  };
}

/** An attribute list `{name=value other="a value"}`; `start` is the offset of `{`. */
export function readAttributes(
  source: string,
  start: number,
): { readonly list: readonly WrittenAttribute[]; readonly end: number } | TextProblem {
  const list: WrittenAttribute[] = [];
  let at = start + 1;
  for (;;) {
    at += blanksAt(source, at);
    if (source[at] === '}') return { list, end: at + 1 };
    if (at >= source.length || isLineEnd(source[at])) return notClosed(start);
    const attribute = readAttribute(source, at);
    if ('rule' in attribute) return attribute;
    const twin = list.find(({ name }) => name === attribute.name);
    if (twin) return repeated(attribute);
    list.push(attribute);
    at = attribute.end;
    if (source[at] !== '}' && blanksAt(source, at) === 0 && !isLineEnd(source[at])) return glued(source, at);
  }
}

const NAME = /[A-Za-z_][A-Za-z0-9_-]*/y;
const UNQUOTED = /[^\s"'=<>`{}]+/y;

function readAttribute(source: string, start: number): WrittenAttribute | TextProblem {
  const name = matchAt(NAME, source, start);
  if (name === '') return unparsed(source, start, 'the name of an attribute');
  const equals = start + name.length;
  if (source[equals] !== '=') return unparsed(source, equals, `\`=\` after \`${name}\`, without a blank`);
  const at = equals + 1;
  const quote = source[at];
  if (quote !== '"' && quote !== "'") return readUnquoted(source, start, name, at);
  const close = source.indexOf(quote, at + 1);
  const value = source.slice(at + 1, close);
  if (close < 0 || /[\r\n]/.test(value))
    return unparsed(source, at, `the value of \`${name}\` closed by ${quote} on the same line`);
  return { name, value: clean(value), start, valueStart: at + 1, end: close + 1 };
}

function readUnquoted(source: string, start: number, name: string, at: number): WrittenAttribute | TextProblem {
  const value = matchAt(UNQUOTED, source, at);
  if (value === '') return unparsed(source, at, `a value after \`${name}=\``);
  const curly = /[“”„‟‘’‚«»]/.exec(value);
  if (curly) return curlyQuote(at + curly.index, curly[0]);
  return { name, value: clean(value), start, valueStart: at, end: at + value.length };
}

function unparsed(source: string, at: number, expected: string): TextProblem {
  const character = String.fromCodePoint(source.codePointAt(at) ?? 10);
  if (/[“”„‟‘’‚«»]/.test(character)) return curlyQuote(at, character);
  const found =
    at >= source.length || isLineEnd(character)
      ? 'the end of the line in an attribute list'
      : `\`${character}\` in an attribute list`;
  return {
    rule: 'directive-attributes',
    start: at,
    end: at + 1,
    found,
    expected,
    remedy: 'write `{name=value}` or `{name="two words"}`',
  };
}

function notClosed(start: number): TextProblem {
  const found = 'an attribute list that is not closed on the line on which it opens';
  return {
    rule: 'directive-lines',
    start,
    end: start + 1,
    found,
    expected: 'the whole directive on one line',
    remedy: 'close it with `}`',
  };
}

function repeated({ name, start, end }: WrittenAttribute): TextProblem {
  return {
    rule: 'repeated-attribute',
    start,
    end,
    found: `\`${name}\` a second time`,
    expected: 'each attribute once',
    remedy: 'remove one of them',
  };
}

function glued(source: string, at: number): TextProblem {
  return unparsed(source, at, 'a blank between attributes, or `}`');
}

function curlyQuote(at: number, character: string): TextProblem {
  const found = `the typographic quote ${character} in an attribute list`;
  return { rule: 'curly-quotes', start: at, end: at + 1, found, expected: 'straight quotes', remedy: 'write `"` or `\'`' };
}

function matchAt(pattern: RegExp, source: string, at: number): string {
  pattern.lastIndex = at;
  return pattern.exec(source)?.[0] ?? '';
}

function blanksAt(source: string, at: number): number {
  let length = 0;
  while (source[at + length] === ' ' || source[at + length] === '\t') length += 1;
  return length;
}

function isLineEnd(character: string | undefined): boolean {
  return character === '\n' || character === '\r';
}

/** Markdown replaces U+0000 everywhere; so do we. */
function clean(text: string): string {
  return text.replaceAll('\0', '\uFFFD');
}
