/** Problems as compilers print them: place and sentence first, then the line, a mark under the words, what was expected, what to do. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { codeFrameColumns } from '@babel/code-frame';
import type { Place, Problem } from '../problem.ts';

const LONGEST_LINE = 300;

/** The report of all problems, with a closing count; '' where there are none. */
export function report(root: string, problems: readonly Problem[]): string {
  if (problems.length === 0) return '';
  const lines = new Map<string, string>();
  const blocks = problems.map((problem) => block(problem, sourceOf(root, problem.place.file, lines)));
  return `${blocks.join('\n\n')}\n\n${count(problems)}\n`;
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

/** The line with a mark under the words. Very long lines (minified, or not text at all) are left out. */
function frame(source: string, place: Place): string {
  const line = source.split(/\r?\n/, place.line)[place.line - 1];
  if (line === undefined || line.trim() === '' || line.length > LONGEST_LINE) return '';
  const oneLine = place.endLine === undefined || place.endLine === place.line;
  const endColumn = oneLine ? place.endColumn : undefined;
  // The library counts columns from 0, the end exclusive.
  const start = { line: place.line, column: place.column - 1 };
  const end = endColumn !== undefined && endColumn > place.column ? { end: { line: place.line, column: endColumn - 1 } } : {};
  return codeFrameColumns(source, { start, ...end }, { linesAbove: 0, linesBelow: 0, highlightCode: false });
}
