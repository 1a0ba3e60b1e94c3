/** What a file states of its own beginning and end, above the header and below the rows, and whether its counter agrees. */
import { type Problem, warning } from '../../problem.ts';
import { readCivil } from '../cells/civil.ts';
import { parseNumber } from '../cells/numbers.ts';
import type { TimeAxis } from '../log.ts';
import { placeOfLine } from '../sheet/lines.ts';
import type { Sheet } from '../sheet/open.ts';
import { type TimeColumn, timeCandidates } from './time-column.ts';
import { columnTimeUnit } from './time-format.ts';

const DATE = /\d{4}[-/.]\d{1,2}[-/.]\d{1,2}|\d{1,2}\.\d{1,2}\.\d{4}/;
const CLOCK = /\d{1,2}:\d{2}:\d{2}(?:[.,]\d+)?/;
const START = /start|begin|began|(?<!\p{L})from(?!\p{L})|anfang|beginn/iu;
const END = /(?<!\p{L})end|stop|finish|(?<!\p{L})until|ende/iu;
/** A counter that is this many steps or this share off has not counted the seconds of the clock. Common practice, no source. */
const STEPS = 3;
const SHARE = 0.02;

/** Lines that are neither header nor rows, with their numbers. */
function outerLines({ structure, records, lines }: Sheet): { readonly text: string; readonly line: number }[] {
  const above = structure.headerAt >= 0 ? Math.min(structure.headerAt, structure.firstRow) : structure.first;
  const found: { text: string; line: number }[] = [];
  for (let record = 0; record < records.count; record++) {
    if (record === above) record = structure.end;
    if (record >= records.count) break;
    const line = records.lines[record]!;
    found.push({ text: lines.at(line), line });
  }
  return found;
}

/** The first date that a line above the rows states, as year-month-day; null where day and month could be exchanged. */
export function statedDate(sheet: Sheet): { readonly date: string; readonly line: number } | null {
  for (const { text, line } of outerLines(sheet)) {
    if (line >= (sheet.records.lines[sheet.structure.firstRow] ?? 0)) break;
    const written = DATE.exec(text)?.[0];
    const civil = written === undefined ? null : readCivil(written, 'ymd');
    if (civil) return { date: new Date(civil.day * 86_400_000).toISOString().slice(0, 10), line };
  }
  return null;
}

/** Problems where the axis counts another span than the file states, or than a clock beside it shows. */
export function spanProblems(sheet: Sheet, axis: TimeAxis, column: TimeColumn, kept: Int32Array): Problem[] {
  const span = axis.seconds.at(-1) ?? 0;
  if (axis.step === null || kept.length < 3) return [];
  const differs = (other: number) => Math.abs(other - span) > Math.max(STEPS * axis.step!, SHARE * span);
  const place = placeOfLine(sheet.file, sheet.lines, sheet.records.lines[kept.at(-1)!]!);
  if (axis.format === 'elapsed') {
    const stated = statedSpan(sheet);
    if (stated === null || !differs(stated)) return [];
    const found = `\`${column.name}\` counts ${said(span)} from the first row to the last, but start and end that the file states are ${said(stated)} apart`;
    return [warning('time-span-differs', place, found, { remedy: REMEDY })];
  }
  return timeCandidates(sheet).flatMap((other) => {
    const counted = other.shape === 'number' && other.name !== column.name ? countedSpan(sheet, other, kept) : null;
    if (counted === null || !differs(counted)) return [];
    const found = `\`${other.name}\` counts ${said(counted)} from the first row to the last, \`${column.name}\` ${said(span)}`;
    return [warning('time-span-differs', place, found, { remedy: REMEDY })];
  });
}

const REMEDY =
  'a counter of loops is no clock: where the log holds a clock, name its column under `time`; otherwise energies and times are off by this share';

function statedSpan(sheet: Sheet): number | null {
  const lines = outerLines(sheet);
  const instant = (pattern: RegExp) => {
    for (const { text } of lines) {
      const clock = CLOCK.exec(text)?.[0];
      if (clock === undefined || !pattern.test(text)) continue;
      const date = DATE.exec(text)?.[0];
      const civil = readCivil(
        date === undefined ? clock : `${date} ${clock}`,
        date !== undefined && /^\d{1,2}\./.test(date) ? 'dmy' : 'ymd',
      );
      if (civil) return { day: civil.day, seconds: civil.seconds };
    }
    return null;
  };
  const [from, to] = [instant(START), instant(END)];
  if (!from || !to) return null;
  const days = Number.isNaN(from.day) || Number.isNaN(to.day) ? 0 : to.day - from.day;
  const span = days * 86_400 + to.seconds - from.seconds;
  return span > 0 ? span : null;
}

/** Of a counter that never falls; null where its unit is not known. */
function countedSpan(sheet: Sheet, column: TimeColumn, kept: Int32Array): number | null {
  const unit = columnTimeUnit(sheet, column.fields[0]!);
  if (!unit) return null;
  let [first, last] = [Number.NaN, Number.NaN];
  for (const record of kept) {
    const value = parseNumber(sheet.records.cell(record, column.fields[0]!), sheet.dialect.decimal) * unit.factor;
    if (value < last) return null;
    if (Number.isNaN(first)) first = value;
    if (!Number.isNaN(value)) last = value;
  }
  return last - first;
}

function said(seconds: number): string {
  return `${Number(seconds.toPrecision(6))} s`;
}
