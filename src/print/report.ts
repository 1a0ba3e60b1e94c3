/** Problems as compilers print them: place and sentence first, then the line, a mark under the words, what was expected, what to do. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { codeFrameColumns } from '@babel/code-frame';
import type { Place, Problem } from '../problem.ts';

const LONGEST_LINE = 300;
/** Characters of a longer line that are shown before and after the beginning of the mark. */
const WINDOW = [60, 80] as const;

/** The report of all problems, with a closing count; '' where there are none. */
export function report(root: string, problems: readonly Problem[]): string {
  if (problems.length === 0) return '';
  const lines = new Map<string, string>();
  const apart = problems.filter(({ weight }) => weight === undefined);
  const blocks = apart.map((problem) => block(problem, sourceOf(root, problem.place.file, lines)));
  return `${[...blocks, ...together(problems)].join('\n\n')}\n\n${count(problems)}\n`;
}

/** What stands over the list of a rule whose problems are told together. */
const HEADINGS: Readonly<Record<string, string>> = {
  'stated-narrow': 'True of the data, but within its uncertainty of being false, the least certain first:',
};

/** One block for each rule whose problems are told together: a line each, the weightiest first. */
function together(problems: readonly Problem[]): string[] {
  const weighed = problems.filter(({ weight }) => weight !== undefined);
  const rules = [...new Set(weighed.map(({ rule }) => rule))];
  return rules.map((rule) => {
    const lines = weighed
      .filter((problem) => problem.rule === rule)
      .sort((a, b) => (b.weight ?? 0) - (a.weight ?? 0))
      .map(({ severity, place, found, remedy }) => {
        const advice = remedy === undefined ? '' : `\n    ${remedy}`;
        return `${place.file}:${place.line}:${place.column}: ${severity}: ${found} [${rule}]${advice}`;
      });
    return [HEADINGS[rule] ?? `${rule}:`, ...lines].join('\n');
  });
}

/** "2 errors, 1 warning". */
export function count(problems: readonly Problem[]): string {
  const of = (severity: Problem['severity']) => {
    const number = problems.filter((problem) => problem.severity === severity).length;
    return `${number} ${severity}${number === 1 ? '' : 's'}`;
  };
  return `${of('error')}, ${of('warning')}`;
}

/** Whether anything stands against publishing. */
export function hasErrors(problems: readonly Problem[]): boolean {
  return problems.some(({ severity }) => severity === 'error');
}

function block({ severity, rule, place, found, expected, remedy }: Problem, source: string): string {
  const head = `${place.file}:${place.line}:${place.column}: ${severity}: ${found} [${rule}]`;
  const more = [expected === undefined ? '' : `  expected: ${expected}`, remedy === undefined ? '' : `  to do: ${remedy}`];
  return [head, frame(source, place), ...more].filter((line) => line !== '').join('\n');
}

function sourceOf(root: string, file: string, known: Map<string, string>): string {
  const cached = known.get(file);
  if (cached !== undefined) return cached;
  let text = '';
  try {
    text = readFileSync(join(root, file), 'utf8');
  } catch {
    // The report of a file that cannot be read does without its line.
  }
  known.set(file, text);
  return text;
}

/** The line with a mark under the words; of a very long one (a paragraph in one line, or not text at all) the part around the mark. */
function frame(source: string, place: Place): string {
  const line = source.split(/\r?\n/, place.line)[place.line - 1];
  if (line === undefined || line.trim() === '') return '';
  const oneLine = place.endLine === undefined || place.endLine === place.line;
  const endColumn = oneLine ? place.endColumn : undefined;
  if (line.length > LONGEST_LINE) return windowOf(line, place.line, place.column, endColumn ?? place.column + 1);
  // The library counts columns from 0, the end exclusive.
  const start = { line: place.line, column: place.column - 1 };
  const end = endColumn !== undefined && endColumn > place.column ? { end: { line: place.line, column: endColumn - 1 } } : {};
  return codeFrameColumns(source, { start, ...end }, { linesAbove: 0, linesBelow: 0, highlightCode: false });
}

function windowOf(line: string, number: number, column: number, endColumn: number): string {
  const from = Math.max(0, column - 1 - WINDOW[0]);
  const to = Math.min(line.length, column - 1 + WINDOW[1]);
  const [before, after] = [from > 0 ? '… ' : '', to < line.length ? ' …' : ''];
  const shown = `${before}${line.slice(from, to)}${after}`.replace(/[\t\p{Cc}]/gu, ' ');
  const start = before.length + column - 1 - from;
  const mark = Math.max(1, Math.min(endColumn - column, to - column + 1));
  const gutter = ' '.repeat(String(number).length);
  return `> ${number} | ${shown}\n  ${gutter} | ${' '.repeat(start)}${'^'.repeat(mark)}`;
}
