/** Delimiter and decimal mark, chosen together over many lines of the file with quotes honoured. */
import { cellKind } from '../cells/cells.ts';
import { type DecimalMark, isGrouped } from '../cells/numbers.ts';
import type { Lines } from './lines.ts';
import { BLANKS, splitLine } from './split.ts';

export interface Dialect {
  readonly delimiter: string;
  readonly decimal: DecimalMark;
}

/** In order of preference where the evidence is equal. */
const DIALECTS: readonly Dialect[] = [
  { delimiter: ',', decimal: '.' },
  { delimiter: ';', decimal: '.' },
  { delimiter: '\t', decimal: '.' },
  { delimiter: ';', decimal: ',' },
  { delimiter: '\t', decimal: ',' },
  { delimiter: ',', decimal: ',' },
  { delimiter: '|', decimal: '.' },
  { delimiter: '|', decimal: ',' },
  { delimiter: BLANKS, decimal: '.' },
  { delimiter: BLANKS, decimal: ',' },
];
const SAMPLE = 160;

/** The dialect under which most lines have the same number of fields and most fields are numbers or times. */
export function chooseDialect(lines: Lines): Dialect {
  const sample = sampleLines(lines);
  let best = DIALECTS[0]!;
  let [bestScore, bestWhole] = [0, 0];
  for (const dialect of DIALECTS) {
    const [whole = 0, ...ends] = endsOf(sample).map((end) => scoreOf(dialect, end));
    const score = Math.max(whole, ...ends);
    // Where the last rows hold no decimals, those before them tell the mark.
    const other = dialect.delimiter === best.delimiter && score > bestScore - 1e-9 && whole > bestWhole + 1e-9;
    if (score > bestScore + 1e-9 || other) [best, bestScore, bestWhole] = [dialect, score, whole];
  }
  return best;
}

/** The dialect of a table whose first filled line is its header: the one under which most rows have as many fields as names. */
export function chooseTableDialect(lines: Lines): Dialect {
  const [head = '', ...rows] = sampleLines(lines);
  let best = DIALECTS[0]!;
  let bestScore = 0;
  for (const dialect of DIALECTS) {
    const width = splitLine(head, dialect.delimiter).cells.length;
    const fitting = rows.filter((row) => splitLine(row, dialect.delimiter).cells.length === width).length;
    const score = width < 2 || dialect.delimiter === BLANKS ? 0 : 1 + fitting + scoreOf(dialect, rows) / 10;
    if (score > bestScore + 1e-9) [best, bestScore] = [dialect, score];
  }
  return best;
}

function sampleLines(lines: Lines): string[] {
  const wanted = Math.min(lines.count, SAMPLE);
  const picked: string[] = [];
  for (let k = 0; k < wanted; k++) {
    const text = lines.at(1 + Math.floor((k * lines.count) / wanted));
    if (text.trim() !== '') picked.push(text);
  }
  return picked;
}

/** Fewer lines show no delimiter. */
const FEWEST_LINES = 8;

/** The sample, and its last half, quarter and so on: lines of settings above the header may be more than the rows. */
function endsOf(sample: readonly string[]): (readonly string[])[] {
  const ends = [sample];
  for (let count = sample.length >> 1; count >= FEWEST_LINES; count >>= 1) ends.push(sample.slice(-count));
  return ends;
}

function scoreOf(dialect: Dialect, sample: readonly string[]): number {
  const split = sample.map((line) => splitLine(line, dialect.delimiter).cells);
  const width = usualWidth(split);
  if (width < 2) return 0;
  const same = split.filter((cells) => cells.length === width);
  let typed = 0;
  let filled = 0;
  for (let field = 0; field < width; field++) {
    const cells = same.map((row) => row[field]!.text).filter((text) => text !== '');
    const number = isConstant(cells, dialect.decimal) ? CONSTANT_COUNTS : 1;
    filled += cells.length;
    for (const cell of cells) typed += weightOf(cell, dialect.decimal, number);
  }
  const share = same.length / split.length;
  // Blanks stand within dates and names: they part fields only where nothing else does.
  const trust = dialect.delimiter === BLANKS ? 0.5 : 1;
  return trust * share * share * (0.1 + typed / Math.max(filled, 1)) + (width > 2 ? 1e-6 : 0);
}

/** A cell such as `1,810` is a number under either mark: the other cells decide. */
const GROUPED_COUNTS = 0.4;
/** A marked number that is the same in every row, such as `1,5`, may be a version: it counts less than numbers that differ. */
const CONSTANT_COUNTS = 0.5;

/** @param number - what a number with a mark counts. */
function weightOf(cell: string, mark: DecimalMark, number: number): number {
  const kind = cellKind(cell, mark);
  if (kind === 'number') return cell.includes(mark) ? number : 1;
  return kind === 'time' ? 1 : isGrouped(cell, mark) ? GROUPED_COUNTS : 0;
}

/** The same marked number in every row, but for the header above it. */
function isConstant(cells: readonly string[], mark: DecimalMark): boolean {
  const marked = cells.filter((cell) => cell.includes(mark) && cellKind(cell, mark) === 'number');
  return marked.length > 2 && marked.length + 1 >= cells.length && marked.every((cell) => cell === marked[0]);
}

/** The most frequent number of fields; of equally frequent ones the larger. */
function usualWidth(rows: readonly { readonly length: number }[]): number {
  const counts = new Map<number, number>();
  for (const row of rows) counts.set(row.length, (counts.get(row.length) ?? 0) + 1);
  let best = 0;
  let most = 0;
  for (const [width, count] of counts) if (count > most || (count === most && width > best)) [best, most] = [width, count];
  return best;
}
