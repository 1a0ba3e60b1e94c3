/** The lines of a text, found when first asked for: most rows of a log are never quoted. */
import type { Place } from '../../problem.ts';
import type { ByteText } from './byte-text.ts';
import type { Decoded } from './decode.ts';
import { splitLine } from './split.ts';

export interface Lines {
  /** Number of lines; a line end after the last line does not start another. */
  readonly count: number;
  /** Text of a 1-based line, without its end; '' when there is no such line. */
  readonly at: (line: number) => string;
}

export function linesOf(decoded: Pick<Decoded, 'inBytes' | 'text'>): Lines {
  return decoded.inBytes ? linesOfBytes(decoded.inBytes) : linesOfText(decoded.text);
}

const LF = 10;
/** So many lines stand between two marks of the index: the index of a log of a million rows stays small. */
const APART = 32;

function linesOfBytes({ bytes, cut }: ByteText): Lines {
  const { count, marks } = marksOf(bytes);
  const at = (line: number): string => {
    if (line < 1 || line > count) return '';
    let from = marks[Math.floor((line - 1) / APART)]!;
    for (let left = (line - 1) % APART; left > 0; left--) from = bytes.indexOf(LF, from) + 1;
    const end = bytes.indexOf(LF, from);
    return cut(from, end < 0 ? bytes.length : end);
  };
  return { count, at };
}

/** Number of lines, and the offset of every so many of them. */
function marksOf(bytes: Uint8Array): { readonly count: number; readonly marks: readonly number[] } {
  const marks = [0];
  let lines = 0;
  for (let at = 0; at < bytes.length; at++) if (bytes[at] === LF && ++lines % APART === 0) marks.push(at + 1);
  return { count: bytes.length > 0 && bytes.at(-1) !== LF ? lines + 1 : lines, marks };
}

function linesOfText(text: string): Lines {
  let starts: Int32Array | null = null;
  const count = countLines(text);
  const at = (line: number): string => {
    if (line < 1 || line > count) return '';
    starts ??= lineStarts(text, count);
    const from = starts[line - 1]!;
    const end = text.indexOf('\n', from);
    return text.slice(from, end < 0 ? text.length : end);
  };
  return { count, at };
}

function countLines(text: string): number {
  if (text === '') return 0;
  let count = 1;
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) count++;
  return text.endsWith('\n') ? count - 1 : count;
}

function lineStarts(text: string, count: number): Int32Array {
  const starts = new Int32Array(count);
  let at = 0;
  for (let line = 0; line < count; line++) {
    starts[line] = at;
    at = text.indexOf('\n', at) + 1;
  }
  return starts;
}

/** Place of one field of a line; of the whole line when the field cannot be found on it. */
export function placeOfField(file: string, lines: Lines, line: number, field: number, delimiter: string): Place {
  const text = lines.at(line);
  const cell = splitLine(text, delimiter).cells[field];
  if (!cell) return placeOfLine(file, lines, line);
  return { file, line, column: cell.from + 1, endLine: line, endColumn: cell.to + 1 };
}

/** Place of a whole line. */
export function placeOfLine(file: string, lines: Lines, line: number): Place {
  return { file, line, column: 1, endLine: line, endColumn: lines.at(line).length + 1 };
}
