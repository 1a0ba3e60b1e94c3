/** A second file that an author declares in place of a log: the same readings, without what is nobody's business. */
import { error, type Place, type Problem } from '../problem.ts';
import type { Log, LogDeclaration } from './log.ts';
import { read } from './read.ts';
import { placeOfField, placeOfLine } from './sheet/lines.ts';
import { type LogBytes, lookedAt } from './sheet/log-bytes.ts';
import { openSheet } from './sheet/open.ts';
import { pickColumn } from './sheet/pick.ts';

export interface Redaction {
  /** Project path (`data/…`). */
  readonly file: string;
  readonly bytes: LogBytes;
  /** Where the author names it. */
  readonly place: Place;
}

const EXPECTED = 'the readings of the log, so that its figures can be computed from either file';
const REMEDY = 'take columns, lines and words out that no channel reads, and leave the rest as it is';

/** Says that a redaction is the log, byte for byte: what was to be taken out would go out with it. */
export function nothingTaken({ file, place }: Redaction): Problem {
  return error('redacted-nothing', place, `${file} is the log itself, byte for byte: nothing is taken out of it`, {
    expected: 'the log without what is not to go out',
    remedy: 'take it out of that file; where all of the log may go out, write `share: as it came` in the place of `redacted`',
  });
}

/** Reads it as the log was read. Errors say where it yields other readings than the log does, the first place of each channel. */
export function checkRedacted(redaction: Redaction, declaration: LogDeclaration, log: Log): Problem[] {
  const { file, bytes, place } = redaction;
  const { log: reread, problems } = read(bytes, { ...declaration, place }, file);
  if (reread === null) return problems.filter(({ severity }) => severity === 'error');
  const rows = differentRow(log.time.seconds, reread.time.seconds);
  if (rows >= 0) return [differentTimes(redaction, log, reread, rows)];
  const cells = log.channels.flatMap((channel, index) => {
    const row = differentRow(channel.values, reread.channels[index]!.values);
    return row < 0 ? [] : [differentReading(redaction, declaration, log, reread, index, row)];
  });
  return cells.length > 0 ? cells : differentForm(redaction, log, reread);
}

/** First row in which two columns differ; −1 for none. */
function differentRow(a: Float64Array, b: Float64Array): number {
  const rows = Math.max(a.length, b.length);
  for (let row = 0; row < rows; row++) if (!Object.is(a[row], b[row])) return row;
  return -1;
}

function tell(place: Place, found: string): Problem {
  return error('redacted-differs', place, found, { expected: EXPECTED, remedy: REMEDY });
}

function differentTimes({ file, bytes, place }: Redaction, log: Log, reread: Log, row: number): Problem {
  const said = (seconds: number | undefined) => (seconds === undefined ? 'no row' : `${seconds} s`);
  const found = `row ${row + 1} of the redacted log: ${said(reread.time.seconds[row])} since the first row, where line ${log.lines[row] ?? log.lines.at(-1)} of data/${log.file} has ${said(log.time.seconds[row])}`;
  const line = reread.lines[row];
  return tell(line === undefined ? place : placeOfLine(file, openSheet(lookedAt(bytes), file).lines, line), found);
}

function differentReading(
  { file, bytes }: Redaction,
  declaration: LogDeclaration,
  log: Log,
  reread: Log,
  index: number,
  row: number,
): Problem {
  const { name, unit, values } = log.channels[index]!;
  const said = (value: number) => (Number.isNaN(value) ? 'no reading' : `${value} ${unit}`);
  const sheet = openSheet(lookedAt(bytes), file);
  const declared = declaration.channels[index]!;
  const field = pickColumn(sheet, declared.column, declared.place, name) as number;
  const place = placeOfField(file, sheet.lines, reread.lines[row]!, field, sheet.dialect.delimiter);
  const found = `the column \`${declared.column}\` (${name}) of the redacted log: ${said(reread.channels[index]!.values[row]!)}, where line ${log.lines[row]} of data/${log.file} has ${said(values[row]!)}`;
  return tell(place, found);
}

/** What figures take from a log besides its readings: how finely they are told, and when the log began. */
function differentForm({ place }: Redaction, log: Log, reread: Log): Problem[] {
  const steps = log.channels.flatMap(({ name, step, unit }, index) => {
    const other = reread.channels[index]!.step;
    return step === other
      ? []
      : [tell(place, `the readings of ${name} are told to ${other} ${unit} in the redacted log, to ${step} ${unit} in the log`)];
  });
  if (log.time.start === reread.time.start) return steps;
  return [...steps, tell(place, 'the redacted log begins at another instant than the log, or does not tell when it began')];
}
