/** The lines of a text, found when first asked for: most rows of a log are never quoted. */
import type { Place } from '../../problem.ts';
import type { AsciiText } from './ascii.ts';
import type { Decoded } from './decode.ts';
import { splitLine } from './split.ts';

export interface Lines {
  /** Number of lines; a line end after the last line does not start another. */
  readonly count: number;
  /** Text of a 1-based line, without its end; '' when there is no such line. */
  readonly at: (line: number) => string;
}

export function linesOf(decoded: Pick<Decoded, 'ascii' | 'text'>): Lines {
  return decoded.ascii ? linesOfBytes(decoded.ascii) : linesOfText(decoded.text);
}

function linesOfBytes({ bytes, cut }: AsciiText): Lines {
  const starts = startsIn(bytes);
  const count = starts.length - 1;
  return { count, at: (line) => (line < 1 || line > count ? '' : cut(starts[line - 1]!, starts[line]! - 1)) };
}

const LF = 10;

/** Offset of every line, and one past the end that a further line would have. */
function startsIn(bytes: Uint8Array): Int32Array {
  let count = 0;
  for (let at = 0; at < bytes.length; at++) if (bytes[at] === LF) count++;
  const open = bytes.length > 0 && bytes.at(-1) !== LF;
  const starts = new Int32Array(count + (open ? 2 : 1));
  let line = 0;
  for (let at = 0; at < bytes.length; at++) if (bytes[at] === LF) starts[++line] = at + 1;
  if (open) starts[++line] = bytes.length + 1;
  return starts;
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
