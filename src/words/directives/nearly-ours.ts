/** Directives that an author meant and Markdown did not read: found in the source of the text that was left. */
import type { Root } from 'mdast';
import { editDistance } from '../../register/values/names.ts';
import type { Span } from '../expression/expression-tree.ts';
import type { TextProblem } from '../expression/text-problem.ts';
import { COLONS, DIRECTIVES, type DirectiveName, namesInWords } from '../page/directive-names.ts';
import { htmlSpans, proseSpans } from '../page/prose-spans.ts';
import { report, type Writing } from '../page/writing.ts';
import { readAttributes, readDirective } from './read-directive.ts';

const CANDIDATE = /(:+)([A-Za-z][A-Za-z0-9_-]*)([ \t\u00A0\u202F]*)([[{])/g;

/** Reports all of them in a tree whose directives still stand in it. Code and escaped colons (`\\:`) are left alone. */
export function reportNearlyOurs(writing: Writing, tree: Root): void {
  const prose = proseSpans(tree).map((span) => ({ ...span, html: false }));
  const html = htmlSpans(tree, writing.source).map((span) => ({ ...span, html: true }));
  for (const span of [...prose, ...html]) {
    for (const match of candidatesIn(writing.source, span)) {
      const problem = judge(writing.source, match, span);
      if (problem) report(writing, problem);
    }
    for (const problem of bareIn(writing.source, span)) report(writing, problem);
  }
}

/** Words or an address that stand after the name without brackets. Of `:value` and `:claim`, which are words of prose too, an address alone tells. */
const BARE =
  /(?<![\p{L}\p{N}:\\]):(?:(unheld|stated)|(value|claim)(?=[ \t]+[A-Za-z_]\w*\.[A-Za-z_"]))[ \t\u00A0\u202F]+(?=[^\s[{])/gu;

/** How far a candidate may reach beyond the stretch in which its colon stands. */
const REACH = 80;

interface Candidate {
  readonly start: number;
  readonly colons: string;
  readonly name: string;
  readonly blanks: string;
  readonly open: string;
}

function candidatesIn(source: string, { start, end }: Span): Candidate[] {
  const found: Candidate[] = [];
  for (const match of source.slice(start, end + REACH).matchAll(CANDIDATE)) {
    const at = start + match.index;
    if (at >= end) break;
    const [, colons = '', name = '', blanks = '', open = ''] = match;
    if (!isEscaped(source, at)) found.push({ start: at, colons, name, blanks, open });
  }
  return found;
}

function bareIn(source: string, { start, end }: Span): TextProblem[] {
  return [...source.slice(start, end).matchAll(BARE)].map(({ index, 1: own, 2: other }) => {
    const entry = DIRECTIVES.get((own ?? other) as string) as DirectiveName;
    const at = { start: start + index, end: start + index + 1 + entry.name.length };
    const found = `\`:${entry.name}\` without brackets`;
    return {
      rule: 'directive-label',
      ...at,
      found,
      expected: `\`${entry.example}\``,
      remedy: 'put what it is about into brackets',
    };
  });
}

/** `:value{fast.load_power}`: an address where attributes stand. */
export function addressInBraces(source: string, { name }: DirectiveName, { start }: Span): TextProblem | undefined {
  const at = start + 1 + name.length;
  const [whole, address] = (name === 'value' && /^\{([^{}="'\r\n]*[A-Za-z][^{}='\r\n]*)\}/.exec(source.slice(at, at + 200))) || [];
  if (whole === undefined || address === undefined) return undefined;
  return {
    rule: 'directive-label',
    start: at,
    end: at + whole.length,
    found: `\`${address}\` in braces`,
    expected: 'the address in brackets',
    remedy: `the address goes into brackets: \`:value[${address.trim()}]\``,
  };
}

function isEscaped(source: string, at: number): boolean {
  let backslashes = 0;
  while (source[at - 1 - backslashes] === '\\') backslashes += 1;
  return backslashes % 2 === 1;
}

function judge(source: string, candidate: Candidate, { html }: { readonly html: boolean }): TextProblem | undefined {
  const { start, colons, name, blanks, open } = candidate;
  const span = { start, end: start + colons.length + name.length };
  const entry = DIRECTIVES.get(name);
  if (!entry) return blanks === '' ? unknownName(colons, name, span) : undefined;
  if (html)
    return { rule: 'misplaced-directive', ...span, found: `a \`${entry.name}\` within raw HTML`, expected: 'Markdown around it' };
  if (blanks !== '') return isProse(source, span, open, blanks) ? undefined : blankBefore(entry, open, span);
  if (colons !== COLONS[entry.form] && !(entry.form === 'container' && colons.length > 3)) return wrongForm(entry, colons, span);
  return refusedByMarkdown(source, entry, span);
}

/** `key:value [1]`: a colon within a word, or a footnote, is no directive with a stray blank. */
function isProse(source: string, span: Span, open: string, blanks: string): boolean {
  const bracket = span.end + blanks.length;
  return /[\p{L}\p{N}]/u.test(source[span.start - 1] ?? ' ') || (open === '[' && source[bracket + 1] === '^');
}

function blankBefore(entry: DirectiveName, open: string, span: Span): TextProblem {
  const found = `a blank between \`${COLONS[entry.form]}${entry.name}\` and \`${open}\``;
  return { rule: 'directive-blank', ...span, found, expected: `\`${entry.example}\``, remedy: 'remove the blank' };
}

function wrongForm(entry: DirectiveName, colons: string, span: Span): TextProblem {
  const found = `\`${colons}${entry.name}\``;
  const expected = `\`${entry.example}\`, with ${inWords(COLONS[entry.form])}`;
  return { rule: 'directive-form', ...span, found, expected, remedy: `write \`${COLONS[entry.form]}${entry.name}\`` };
}

function inWords(colons: string): string {
  return ['one colon', 'two colons', 'three colons'][colons.length - 1] as string;
}

/** A name, form and bracket that are right, and yet Markdown left it as text: why. */
function refusedByMarkdown(source: string, entry: DirectiveName, span: Span): TextProblem {
  const braced = addressInBraces(source, entry, span);
  if (braced) return braced;
  const read = readDirective(source, span.start);
  if ('rule' in read) return read;
  const rest = /^[^\r\n]*/.exec(source.slice(read.end))?.[0] ?? '';
  const blank = /^([ \t]*)\{/.exec(rest);
  if (blank) return afterDirective(source, read.end, entry, span) as TextProblem;
  const found = `\`${COLONS[entry.form]}${entry.name}\` with other text on its line`;
  return {
    rule: 'directive-form',
    ...span,
    found,
    expected: 'the directive alone on its line',
    remedy: 'put a blank line before and after it',
  };
}

/** What follows a directive and looks like an attribute list that was meant for it. */
export function afterDirective(source: string, end: number, entry: DirectiveName, span: Span): TextProblem | undefined {
  const gap = /^[ \t\u00A0\u202F]*((?:\r\n|\n|\r)[ \t>]*)?(?=\{)/.exec(source.slice(end, end + 80));
  if (!gap) return undefined;
  if (gap[1] !== undefined) return brokenOverLines(entry, span);
  if (gap[0] !== '') return blankBefore(entry, '{', { start: end, end: end + gap[0].length });
  const read = readAttributes(source, end);
  const found = 'a second attribute list';
  return 'rule' in read ? read : { rule: 'directive-attributes', start: end, end: read.end, found, expected: 'one attribute list' };
}

/** A directive written over two lines or more. */
export function brokenOverLines(entry: DirectiveName, span: Span): TextProblem {
  const found = `a \`${COLONS[entry.form]}${entry.name}\` broken over lines`;
  return { rule: 'directive-lines', ...span, found, expected: 'the whole directive on one line', remedy: 'join the lines' };
}

function unknownName(colons: string, name: string, span: Span): TextProblem | undefined {
  const near = [...DIRECTIVES.values()].find((entry) => isNear(name.toLowerCase(), entry.name));
  if (!near) return undefined;
  const found = `unknown directive \`${colons}${name}\``;
  return {
    rule: 'unknown-directive',
    ...span,
    found,
    expected: namesInWords(),
    remedy: `did you mean \`${COLONS[near.form]}${near.name}\`?`,
  };
}

function isNear(name: string, ours: string): boolean {
  return editDistance(name, ours) <= (ours.length < 5 ? 1 : 2);
}
