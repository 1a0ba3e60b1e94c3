/** A log of any length, read in parts: each with the header and the last row before it, like a log of its own; then put together. */
import { compareProblems, error, type Problem } from '../problem.ts';
import type { DecimalMark } from './cells/numbers.ts';
import { lackOfReadings } from './columns/channels.ts';
import { type Condenser, condenser, type RowLimits } from './condense.ts';
import type { Channel, Inference, Log, LogDeclaration, Repair, SetAside } from './log.ts';
import { anchorIn, declarationOfPart, lineInFile, type PartLines, problemInFile } from './part-lines.ts';
import { mergedInferences, mergedProblems } from './part-reports.ts';
import { acknowledged } from './report/known.ts';
import { unreachedPhases } from './report/phase-starts.ts';
import { idleRepairs } from './report/repairs.ts';
import type { Unread } from './rows/unread.ts';
import { decode } from './sheet/decode.ts';
import { isPacked, type LogBytes, PART, piecesOf } from './sheet/log-bytes.ts';
import { openSheet } from './sheet/open.ts';
import { faultProblem } from './sheet/packed.ts';
import { joined, LineTooLong, lineCount, lineOffset, partsOf } from './sheet/parts.ts';
import { pickColumn } from './sheet/pick.ts';
import { isBlankRecord } from './sheet/structure.ts';
import { UnpackFault } from './sheet/unpack.ts';
import { roundNano } from './time/read-time.ts';
import { findGaps, medianStep } from './time/time-order.ts';
import { type ReadLog, readWhole } from './whole-log.ts';

export interface LongOptions {
  /** Bytes of a part. */
  readonly part?: number;
  readonly rows?: RowLimits;
}

/** Lines set aside that are kept each with its text; more are counted. */
const MOST_ASIDE = 10_000;

/**
 * Reads a log part by part. What a log leaves open (encoding, delimiter, header, order of dates) each part decides for itself, by the same code
 * as a short log; where two decide otherwise that is an error, so that nothing is read in two ways. Where all rows fit, the Log is the one that
 * reading at once gives; of more, neighbours are one row, which the log says.
 */
export function readLong(bytes: LogBytes, declaration: LogDeclaration, file: string, options: LongOptions = {}): ReadLog {
  const size = options.part ?? PART;
  const reading = new Reading(declaration, file, options.rows);
  try {
    let held: Uint8Array | null = null;
    for (const part of partsOf(piecesOf(bytes), size)) {
      if (held !== null && !reading.take(held, false)) break;
      held = part;
    }
    if (!reading.failed) reading.take(held ?? new Uint8Array(0), true);
  } catch (thrown) {
    if (thrown instanceof UnpackFault) return refused(faultProblem(file, thrown.kind));
    if (thrown instanceof LineTooLong) return refused(noLines(file, size));
    throw thrown;
  }
  return reading.result(isPacked(bytes));
}

function refused(problem: Problem): ReadLog {
  return { log: null, unread: null, problems: [problem] };
}

function noLines(file: string, size: number): Problem {
  return error('not-a-log', { file, line: 1, column: 1 }, `a line of the file has more than ${Math.round(size / 2 ** 20)} MiB`, {
    expected: 'lines of text, one row a sample',
    remedy:
      'see whether it is the log; a long log with CR alone at the ends of lines can be read once an editor has saved it as UTF-8 with LF',
  });
}

/** Bytes that show an encoding of two bytes a letter. */
const BEGINNING = 4096;

/** Parts without two rows in a row that are held together before the log is given up. */
const MOST_WITHOUT_ROWS = 4;

class Reading {
  /** Problems that end the reading; null where there are none. */
  failed: readonly Problem[] | null = null;
  readonly #declaration: LogDeclaration;
  readonly #file: string;
  readonly #rows: Condenser;
  readonly #known: ReturnType<typeof acknowledged>;
  readonly #problems = mergedProblems();
  readonly #inferences = mergedInferences();
  readonly #setAside: SetAside[] = [];
  readonly #repaired = new Map<Repair, number>();
  readonly #missing: number[];
  readonly #steps: (number | null)[];
  #asideLeft = 0;
  #unread: Unread = { columns: 0, lines: 0, cells: 0 };
  #first: Log | null = null;
  #encoding = '';
  #head = { bytes: new Uint8Array(0) as Uint8Array, lines: 0, unread: 0 };
  #lines: PartLines = { head: 0, anchor: 0, body: 1 };
  /** The bytes of the last row before the part. */
  #anchor: Uint8Array = new Uint8Array(0);
  /** Seconds from the first row of the log to that row. */
  #since = 0;
  /** What the next part begins with: what stood behind the last row of the one before that was taken. */
  #carried: Uint8Array = new Uint8Array(0);
  #withoutRows = 0;
  /** The decimal mark that a part before has shown; '' for none. */
  #mark: DecimalMark | '' = '';

  constructor(declaration: LogDeclaration, file: string, rows?: RowLimits) {
    this.#declaration = declaration;
    this.#file = file;
    this.#rows = condenser(declaration.channels, rows);
    this.#known = acknowledged(declaration);
    this.#missing = declaration.channels.map(() => 0);
    this.#steps = declaration.channels.map(() => null);
  }

  /** Reads a part. Its last row is left to the next one, which knows whether the clock was right there. False where nothing more is to be read. */
  take(part: Uint8Array, last: boolean): boolean {
    const body = this.#carried.length > 0 ? joined([this.#carried, part]) : part;
    if (this.#first === null && decode(body.subarray(0, BEGINNING)).encoding.startsWith('UTF-16'))
      return this.#fail([twoBytes(this.#file)]);
    const lines = this.#lines;
    const bytes = lines.anchor === 0 ? body : joined([this.#head.bytes, this.#anchor, body]);
    const own = declarationOfPart(lines, this.#declaration, lineCount(bytes));
    const { log, problems, unread } = readWhole(bytes, own.declaration, this.#file);
    const told = problems.map((problem) => problemInFile(lines, problem, this.#file));
    if (log === null || unread === null) return this.#fail(told.filter(({ severity }) => severity === 'error'));
    const mark = this.#markOf(log, bytes);
    const differs = this.#mark !== '' && mark !== '' && mark !== this.#mark ? 'the decimal mark' : this.#differs(log);
    if (differs) return this.#fail([partsDiffer(this.#file, lines.body, differs)]);
    const from = lines.anchor === 0 ? 0 : 1;
    const to = last ? log.rows : log.rows - 1;
    if (to <= from && !last) return this.#carry(body);
    const end = last ? Number.POSITIVE_INFINITY : log.lines[to - 1]!;
    if (this.#first === null) this.#begin(log, bytes);
    this.#mark ||= mark;
    this.#takeRows(log, from, to);
    this.#takeReports(log, told, unread, own, end);
    if (!last) this.#moveOn(log, bytes, to - 1);
    return true;
  }

  #fail(problems: readonly Problem[]): false {
    this.failed = problems;
    return false;
  }

  #carry(body: Uint8Array): boolean {
    this.#carried = body;
    this.#withoutRows++;
    if (this.#withoutRows < MOST_WITHOUT_ROWS) return true;
    const place = { file: this.#file, line: this.#lines.body, column: 1 };
    const found = `from here on, ${Math.round(body.length / 2 ** 20)} MiB hold no two rows of readings`;
    return this.#fail([
      error('not-a-log', place, found, {
        expected: 'one row of readings a sample',
        remedy:
          'see what stands there; where the log ends there, keep a copy of what is before it beside the original and name that',
      }),
    ]);
  }

  /** The decimal mark of a part; '' where its readings and its time hold none, and it is read the same either way. */
  #markOf(log: Log, bytes: Uint8Array): DecimalMark | '' {
    const mark = log.inferences.some(({ method }) => method === 'decimal-mark') ? ',' : '.';
    if (mark === this.#mark) return mark;
    if (mark === '.' && !['.', ','].some((each) => each !== log.delimiter && bytes.includes(each.charCodeAt(0)))) return '';
    const sheet = openSheet(bytes, this.#file);
    const { records, structure } = sheet;
    const counts = log.time.format === 'elapsed' || log.time.format === 'epoch' ? [log.time.column] : [];
    const fields = [...log.channels.map(({ column }) => column), ...counts]
      .map((name) => pickColumn(sheet, name, this.#declaration.place, ''))
      .filter((field) => typeof field === 'number');
    for (let record = structure.first; record < structure.end; record++)
      if (fields.some((field) => /[.,]/.test(records.cell(record, field)))) return mark;
    return '';
  }

  /** In what a part is read otherwise than the first; '' for nothing. */
  #differs(log: Log): string {
    const first = this.#first;
    if (first === null) return '';
    if (log.lines[0] !== anchorIn(this.#lines)) return 'the row before these lines';
    if (log.delimiter !== first.delimiter) return 'what parts the fields';
    if (log.time.column !== first.time.column || log.time.format !== first.time.format)
      return 'the column or the format of the time';
    const order = (each: Log) =>
      each.inferences.map(({ statement }) => /day first|month first/.exec(statement)?.[0] ?? '').join('');
    if (order(log) !== order(first)) return 'the order of day and month';
    const clock = ({ inferences }: Log) =>
      inferences.map(({ statement }) => /read as (?:hours, )?minutes and seconds/.exec(statement)?.[0] ?? '').join('');
    if (clock(log) !== clock(first)) return 'what the first number of a time counts';
    const base = (each: Log) => each.inferences.filter(({ method }) => method === 'flag-words').map(({ statement }) => statement);
    const other = base(log).some((statement, k) => /hexadecimal/.test(statement) !== /hexadecimal/.test(base(first)[k] ?? ''));
    if (other) return 'the words of a throttle flag';
    const unit = log.channels.find(({ name, unit, originalUnit }) => {
      const channel = first.channels.find((each) => each.name === name);
      return channel && (channel.unit !== unit || channel.originalUnit !== originalUnit);
    });
    return unit ? `the unit of the channel ${unit.name}` : '';
  }

  #begin(log: Log, bytes: Uint8Array): void {
    const { structure, records } = openSheet(bytes, this.#file);
    const { firstRow, headerAt, unitsAt } = structure;
    const lines = (records.lines[firstRow] ?? 1) - 1;
    const filled = Array.from({ length: firstRow }, (_, record) => record).filter((record) => !isBlankRecord(records.row(record)));
    const unread = filled.filter((record) => record !== headerAt && record !== unitsAt).length;
    this.#head = { bytes: bytes.slice(0, lineOffset(bytes, lines + 1)), lines, unread };
    this.#first = log;
    this.#encoding = log.encoding;
    this.#unread = { ...this.#unread, lines: unread };
  }

  #takeRows(log: Log, from: number, to: number): void {
    const { seconds, gaps } = log.time;
    const columns = this.#declaration.channels.map(({ name }) => log.channels.find((channel) => channel.name === name)?.values);
    const afterGap = new Set(gaps.map(({ row }) => row));
    for (let row = from; row < to; row++) {
      const second = roundNano(this.#since + seconds[row]!);
      this.#rows.add(
        lineInFile(this.#lines, log.lines[row]!),
        second,
        (channel) => columns[channel]?.[row] ?? Number.NaN,
        afterGap.has(row),
      );
    }
    for (const [k, column] of columns.entries()) {
      for (let row = from; row < to; row++) if (column === undefined || Number.isNaN(column[row])) this.#missing[k]!++;
    }
    if (to > from) this.#since = roundNano(this.#since + seconds[to - 1]!);
  }

  #takeReports(log: Log, told: readonly Problem[], unread: Unread, own: ReturnType<typeof declarationOfPart>, end: number): void {
    const lines = this.#lines;
    for (const each of log.setAside) {
      if (each.line > end) continue;
      if (this.#setAside.length < MOST_ASIDE) this.#setAside.push({ ...each, line: lineInFile(lines, each.line) });
      else this.#asideLeft++;
    }
    const until = Number.isFinite(end) ? lineInFile(lines, end) : end;
    this.#problems.add(
      told.filter(({ rule, place }) => !OF_THE_WHOLE.has(rule) && (place.file !== this.#file || place.line <= until)),
    );
    this.#inferences.add(log.inferences);
    for (const [moved, ofAuthor] of own.repairs) {
      const rows = log.repairs.find(({ repair }) => repair === moved)?.rows ?? 0;
      this.#repaired.set(ofAuthor, (this.#repaired.get(ofAuthor) ?? 0) + rows - this.#repairedAgain(moved, log, end, lines));
    }
    for (const [k, { found }] of (log.known ?? []).entries()) {
      const entry = own.known[k]!;
      if ('fromLine' in entry) for (const what of found) this.#known.takes(entry.fromLine, what);
    }
    this.#unread = {
      columns: Math.max(this.#unread.columns, unread.columns),
      lines: this.#unread.lines + Math.max(0, unread.lines - this.#head.unread),
      cells: this.#unread.cells + unread.cells,
    };
    if (this.#encoding === 'ASCII') this.#encoding = log.encoding;
    for (const [k, { name }] of this.#declaration.channels.entries()) {
      const step = log.channels.find((channel) => channel.name === name)?.step ?? null;
      if (step !== null) this.#steps[k] = Math.min(this.#steps[k] ?? step, step);
    }
  }

  /** Of the rows and lines that a repair touches in a part, those that the part before has counted, or the next one will. */
  #repairedAgain({ kind, fromLine, toLine }: Repair, log: Log, end: number, lines: PartLines): number {
    const covers = (line: number) => line >= fromLine && line <= toLine;
    if (kind === 'drop') return Number.isFinite(end) ? Math.max(0, toLine - Math.max(fromLine, end + 1) + 1) : 0;
    const before = lines.anchor > 0 && covers(anchorIn(lines)) ? 1 : 0;
    return before + log.lines.filter((line) => line > end && covers(line)).length;
  }

  /** Makes the last row that was taken the one that the next part begins with. */
  #moveOn(log: Log, bytes: Uint8Array, row: number): void {
    const line = log.lines[row]!;
    const [start, next] = [lineOffset(bytes, line), lineOffset(bytes, line + 1)];
    const inFile = lineInFile(this.#lines, line);
    this.#anchor = bytes.slice(start, next);
    this.#carried = bytes.slice(next);
    this.#withoutRows = 0;
    this.#lines = { head: this.#head.lines, anchor: inFile, body: inFile + 1 };
  }

  result(packed: boolean): ReadLog {
    const first = this.#first;
    if (this.failed !== null || first === null) {
      const problems = [...this.#problems.list(), ...(this.failed ?? [])].sort(compareProblems);
      return { log: null, unread: null, problems };
    }
    const declaration = this.#declaration;
    const { lines, seconds, values, condensed, even } = this.#rows.finish();
    if (condensed && !even) return refused(tooManyRows(this.#file, condensed.rows));
    const step = medianStep(seconds);
    const time = { ...first.time, seconds, step, gaps: findGaps(seconds, step) };
    const rows = this.#rows.rows();
    const lacking = declaration.channels.flatMap((channel, k) => lackOfReadings(channel, this.#missing[k]!, rows, this.#known));
    const problems = [
      ...this.#problems.list(),
      ...lacking,
      ...idleRepairs(new Map(declaration.repairs.map((repair) => [repair, this.#repaired.get(repair) ?? 0])), declaration),
      ...unreachedPhases(declaration, time),
    ].concat(this.#known.idle());
    problems.sort(compareProblems);
    const channels = declaration.channels.map(({ name }, k): Channel => {
      const channel = first.channels.find((each) => each.name === name)!;
      return { ...channel, values: values[k]!, missing: this.#missing[k]!, step: declaration.channels[k]!.step ?? this.#steps[k]! };
    });
    const log: Log = {
      file: first.file,
      rows: lines.length,
      lines,
      time,
      channels,
      setAside: this.#setAside.sort((a, b) => a.line - b.line || (a.column ?? 0) - (b.column ?? 0)),
      repairs: declaration.repairs.map((repair) => ({ repair, rows: this.#repaired.get(repair) ?? 0 })),
      ...(declaration.known ? { known: this.#known.entries() } : {}),
      inferences: [...this.#inferences.list(), ...this.#ofLength(condensed)],
      encoding: this.#encoding,
      delimiter: first.delimiter,
      ...(packed ? { packed: 'gzip' as const } : {}),
      ...(condensed ? { condensed } : {}),
    };
    return { log, unread: this.#unread, problems };
  }

  #ofLength(condensed: Log['condensed']): Inference[] {
    const said: Inference[] = [];
    if (condensed) {
      const statement = `The log has ${condensed.rows} rows, more than are computed with: up to ${condensed.longest} neighbours are taken as one, at the mean of their times and readings, and a throttle flag with every bit that one of them sets.`;
      said.push({ method: 'condensed', statement });
    }
    if (this.#asideLeft > 0)
      said.push({
        method: 'set-aside',
        statement: `${this.#asideLeft} further lines or cells are set aside for reasons like these.`,
      });
    return said;
  }
}

/** Rules that are judged when all parts are read. */
const OF_THE_WHOLE: ReadonlySet<string> = new Set(['no-readings', 'many-missing', 'repair-idle', 'known-idle', 'few-rows']);

/** A byte that ends a line in UTF-8 may be half of a letter in UTF-16. */
function twoBytes(file: string): Problem {
  return error('not-a-log', { file, line: 1, column: 1 }, 'a long log is written in UTF-16', {
    expected: 'UTF-8 for logs of more than 64 MiB',
    remedy: `write it as UTF-8 beside the original (\`iconv -f UTF-16 -t UTF-8 ${file}\`) and name that`,
  });
}

function tooManyRows(file: string, rows: number): Problem {
  return error('too-many-rows', { file, line: 1, column: 1 }, `the log has ${rows} rows at steps that differ`, {
    expected: 'at most 1,048,576 rows, or rows at one step: then neighbours can be taken as one',
    remedy: 'keep a copy of each phase of the log beside it and name that',
  });
}

function partsDiffer(file: string, line: number, what: string): Problem {
  return error(
    'parts-differ',
    { file, line, column: 1 },
    `from about here on the log is read otherwise than before: ${what} would be another`,
    {
      expected: 'a log of one form from beginning to end',
      remedy:
        'declare what differs (`time`, `unit` of the channel), or keep a copy of each part of the log beside it and name that',
    },
  );
}
