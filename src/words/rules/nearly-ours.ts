/** Directives that an author meant and Markdown did not read: found in the source of the text that was left. */
import type { Nodes, Root } from 'mdast';
import { SKIP, visit } from 'unist-util-visit';
import { editDistance } from '../../register/names.ts';
import { COLONS, DIRECTIVES, type DirectiveName, namesInWords } from '../directive-names.ts';
import type { Span } from '../expression-tree.ts';
import { readAttributes, readDirective } from '../read-directive.ts';
import type { TextProblem } from '../text-problem.ts';
import { report, spanOf, type Writing } from '../writing.ts';

const CANDIDATE = /(:+)([A-Za-z][A-Za-z0-9_-]*)([ \t\u00A0\u202F]*)([[{])/g;

/** Reports all of them in a tree whose directives still stand in it. Code and escaped colons (`\:`) are left alone. */
export function reportNearlyOurs(writing: Writing, tree: Root): void {
  for (const span of textSpans(tree)) {
    for (const match of candidatesIn(writing.source, span)) {
      const problem = judge(writing.source, match, span.html);
      if (problem) report(writing, problem);
    }
  }
}

/** Stretches of source that print as text; words in the brackets of our own directives are read elsewhere. */
function textSpans(tree: Root): (Span & { readonly html: boolean })[] {
  const spans: (Span & { readonly html: boolean })[] = [];
  visit(tree, (node: Nodes) => {
    if (node.type === 'textDirective') return SKIP;
    const printsText = node.type === 'text' || (node.type === 'html' && !node.value.startsWith('<!--'));
    if (printsText) spans.push({ ...spanOf(node), html: node.type === 'html' });
    return undefined;
  });
  return spans;
}

function candidatesIn(source: string, { start, end }: Span): RegExpExecArray[] {
  const found: RegExpExecArray[] = [];
  CANDIDATE.lastIndex = start;
  for (let match = CANDIDATE.exec(source); match && match.index < end; match = CANDIDATE.exec(source)) {
    const escaped = /\\+$/.exec(source.slice(start, match.index));
    if (!escaped || escaped[0].length % 2 === 0) found.push(match);
  }
  return found;
}

function judge(source: string, match: RegExpExecArray, html: boolean): TextProblem | undefined {
  const [whole, colons = '', name = '', blanks = ''] = match;
  const span = { start: match.index, end: match.index + whole.length - 1 - blanks.length };
  const entry = DIRECTIVES.get(name);
  if (!entry) return blanks === '' ? unknownName(colons, name, span) : undefined;
  if (html)
    return { rule: 'misplaced-directive', ...span, found: `a \`${entry.name}\` within raw HTML`, expected: 'Markdown around it' };
  if (blanks !== '') return isProse(source, match) ? undefined : blankBefore(entry, whole.at(-1) as string, span);
  if (colons !== COLONS[entry.form] && !(entry.form === 'container' && colons.length > 3)) return wrongForm(entry, colons, span);
  return refusedByMarkdown(source, match, entry, span);
}

/** `key:value [1]`: a colon within a word, or a footnote, is no directive with a stray blank. */
function isProse(source: string, match: RegExpExecArray): boolean {
  const next = match.index + match[0].length;
  return /[\p{L}\p{N}]/u.test(source[match.index - 1] ?? ' ') || source[next] === '^';
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
function refusedByMarkdown(source: string, match: RegExpExecArray, entry: DirectiveName, span: Span): TextProblem {
  const read = readDirective(source, match.index);
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
  if (name === 'stated') {
    const found = '`:stated`, which this version does not read';
    return {
      rule: 'unknown-directive',
      ...span,
      found,
      expected: namesInWords(),
      remedy: 'print the figure with `:value`, or hold the words with `:claim`',
    };
  }
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
