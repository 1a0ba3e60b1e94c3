/** Problems as compilers print them: place and sentence first, then the line, a mark under the words, what was expected, what to do. */
import { accessSync, constants, readFileSync, realpathSync, statSync } from 'node:fs';
import { join, sep } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { codeFrameColumns } from '@babel/code-frame';
import { visible } from '../hidden-characters.ts';
import type { Place, Problem } from '../problem.ts';

const LONGEST_LINE = 300;
/** Lines of larger files are not worth the memory. */
const LARGEST_SHOWN = 64 * 2 ** 20;
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
  // The first line is one line, whatever a cell with a line break holds.
  const head = `${place.file}:${place.line}:${place.column}: ${severity}: ${found} [${rule}]`.replace(/\r?\n/g, ' ⏎ ');
  const more = [expected === undefined ? '' : `  expected: ${expected}`, remedy === undefined ? '' : `  to do: ${remedy}`];
  return [head, frame(source, place), ...more]
    .filter((line) => line !== '')
    .map(visible)
    .join('\n');
}

function sourceOf(root: string, file: string, known: Map<string, string>): string {
  const cached = known.get(file);
  if (cached !== undefined) return cached;
  const text = isShown(root, file) ? textOf(readFileSync(join(root, file))) : '';
  known.set(file, text);
  return text;
}

/** The text of a file, also where it is packed (gzip: RFC 1952, 2.3.1); nothing of one that cannot be unpacked. */
function textOf(bytes: Buffer): string {
  if (bytes[0] !== 0x1f || bytes[1] !== 0x8b) return bytes.toString('utf8');
  try {
    return gunzipSync(bytes, { maxOutputLength: LARGEST_SHOWN }).toString('utf8');
  } catch {
    return '';
  }
}

/**
 * Whether a line of a file may be shown: a plain file that lies, with all links followed, in the folder of the project that it is named in.
 * A link may lead to a pipe or a device, which would never end, or to a file that is none of the project's.
 */
function isShown(root: string, file: string): boolean {
  try {
    const real = realpathSync(join(root, file));
    const folder = realpathSync(join(root, file.includes('/') ? file.slice(0, file.indexOf('/')) : ''));
    const found = statSync(real);
    accessSync(real, constants.R_OK);
    return real.startsWith(folder + sep) && found.isFile() && found.size <= LARGEST_SHOWN;
  } catch {
    return false;
  }
}

/** The line with a mark under the words; of a very long one (a paragraph in one line, or not text at all) the part around the mark. */
function frame(source: string, place: Place): string {
  const raw = source.split(/\r?\n/, place.line)[place.line - 1];
  if (raw === undefined || raw.trim() === '') return '';
  const line = visible(raw);
  if (line !== raw) return frame('\n'.repeat(place.line - 1) + line, asShown(raw, place));
  const oneLine = place.endLine === undefined || place.endLine === place.line;
  const endColumn = oneLine ? place.endColumn : undefined;
  if (line.length > LONGEST_LINE) return windowOf(line, place.line, place.column, endColumn ?? place.column + 1);
  // The library counts columns from 0, the end exclusive.
  const start = { line: place.line, column: place.column - 1 };
  const end = endColumn !== undefined && endColumn > place.column ? { end: { line: place.line, column: endColumn - 1 } } : {};
  return codeFrameColumns(source, { start, ...end }, { linesAbove: 0, linesBelow: 0, highlightCode: false });
}

/** The place in its line once that is shown with the names of its hidden characters, which are longer. */
function asShown(raw: string, place: Place): Place {
  const shown = (column: number) => visible(raw.slice(0, column - 1)).length + 1;
  const { endColumn } = place;
  return { ...place, column: shown(place.column), ...(endColumn === undefined ? {} : { endColumn: shown(endColumn) }) };
}

function windowOf(line: string, number: number, column: number, endColumn: number): string {
  const from = Math.max(0, column - 1 - WINDOW[0]);
  const to = Math.min(line.length, column - 1 + WINDOW[1]);
  const [before, after] = [from > 0 ? '… ' : '', to < line.length ? ' …' : ''];
  const shown = `${before}${line.slice(from, to)}${after}`.replace(/\t/g, ' ');
  const start = before.length + column - 1 - from;
  const mark = Math.max(1, Math.min(endColumn - column, to - column + 1));
  const gutter = ' '.repeat(String(number).length);
  return `> ${number} | ${shown}\n  ${gutter} | ${' '.repeat(start)}${'^'.repeat(mark)}`;
}
