/** Which column, or pair of columns, is the time: declared, or told by what the cells look like and how the column is called. */
import { error, type Problem } from '../../problem.ts';
import { MISSING_MARKERS } from '../cells/cells.ts';
import { inDigits, isCivil, isMinutes } from '../cells/civil.ts';
import { columnUnit, headerUnit, unitSpelling } from '../cells/header-units.ts';
import { parseNumber } from '../cells/numbers.ts';
import type { Inference, LogDeclaration } from '../log.ts';
import type { Sheet } from '../sheet/open.ts';
import { listed, pickColumn } from '../sheet/pick.ts';

/** What the cells of a column say about time. */
export type TimeShape = 'date and clock' | 'date' | 'clock' | 'number' | 'none';

export interface TimeColumn {
  /** One column, or the column of dates and the column of clock times. */
  readonly fields: readonly number[];
  readonly name: string;
  readonly shape: TimeShape;
}

export interface TimeChoice {
  readonly column: TimeColumn | null;
  readonly problems: readonly Problem[];
  readonly inferences: readonly Inference[];
}

const TIME_NAME =
  /^(?:t|time|timestamp|time stamp|date ?time|date|zeit|epoch|unix(?: ?time)?|elapsed(?: time)?|uptime|seconds?|secs?|s|ms|millis(?:econds)?|minutes?|hours?)$/;
/** Times that things took: they count in seconds, and are no axis. */
const TAKEN =
  /latency|frame|(?<!\p{L})lap|response|jitter|delay|ping|round.?trip|(?<!\p{L})rtt|duration|interval|period|delta|diff|render|wait|(?<!\p{L})age|left|remaining|until/iu;

/** Chooses the time column of a log. */
export function chooseTime(sheet: Sheet, declaration: Pick<LogDeclaration, 'time' | 'place'>): TimeChoice {
  const declared = declaration.time?.column;
  if (declared !== undefined) return declaredColumn(sheet, declared, declaration);
  const candidates = timeCandidates(sheet);
  const [only] = candidates;
  if (only && candidates.length === 1) {
    const how =
      only.fields.length === 2
        ? 'the only column of dates and the only one of clock times'
        : 'the only column that looks like a time';
    return {
      column: only,
      problems: [],
      inferences: [{ method: 'time-column', statement: `Time is read from \`${only.name}\`, ${how}.` }],
    };
  }
  const civil = outranking(sheet, candidates);
  if (civil) {
    const others = candidates.filter((candidate) => candidate !== civil).map(({ name }) => name);
    const statement = `Time is read from \`${civil.name}\`, which holds dates and clock times; ${listed(others)} only ${others.length === 1 ? 'counts' : 'count'}.`;
    return { column: civil, problems: [], inferences: [{ method: 'time-beside', statement }] };
  }
  const problem = candidates.length === 0 ? unreadableClock(sheet, declaration) : null;
  return { column: null, problems: [problem ?? undecided(sheet, candidates, declaration)], inferences: [] };
}

/** The only civil time beside counters. Not where it is coarser than the rows: then the counter may be what tells them apart. */
function outranking(sheet: Sheet, candidates: readonly TimeColumn[]): TimeColumn | null {
  const [civil, ...others] = candidates.filter(({ shape }) => shape !== 'number');
  if (civil?.shape !== 'date and clock' || others.length > 0) return null;
  const counters = candidates.filter((candidate) => candidate !== civil);
  if (counters.some(({ fields }) => isEpoch(sheet, fields[0]!))) return null;
  const { first, end, width } = sheet.structure;
  let [rows, same] = [0, 0];
  let before = '';
  for (let record = first; record < end; record++) {
    if (sheet.records.width(record) !== width) continue;
    const text = civil.fields.map((field) => sheet.records.cell(record, field)).join(' ');
    if (text === before) same++;
    before = text;
    rows++;
  }
  return same * 2 < rows ? civil : null;
}

function isEpoch(sheet: Sheet, field: number): boolean {
  return sampleCells(sheet, field).every((text) => epochUnit(parseNumber(text, sheet.dialect.decimal)) !== null);
}

/** Dates without a clock that can be read: where a date repeats, or where a column beside it must be the clock, they are no axis. */
function unreadableClock(sheet: Sheet, { place }: Pick<LogDeclaration, 'place'>): Problem | null {
  const [date] = columnsOf(sheet, 'date');
  if (date === undefined) return null;
  const clock = clockBeside(sheet);
  const [cell = ''] = clock === undefined ? [] : sampleCells(sheet, clock);
  const found =
    clock === undefined
      ? `\`${sheet.keys[date]}\` holds a date only, which is the same in several rows of ${sheet.file}`
      : `\`${sheet.keys[date]}\` holds dates, and the clock time beside it in \`${sheet.keys[clock]}\` cannot be read (\`${cell.slice(0, 40)}\`)`;
  return error('time-clock-unreadable', place, found, {
    expected: 'a clock time such as 9:05:03.250 in each row',
    remedy: `have the logger write it; where you know the step from row to row, ${EVERY}`,
  });
}

/** What to write where the log holds no time. */
export const EVERY = 'write `file` and `time` below `log`, and below `time` for instance `every: 1 s`';

/** A column that is called a clock, or holds colons between digits, and cannot be read as one. */
function clockBeside(sheet: Sheet): number | undefined {
  return sheet.keys
    .map((_, field) => field)
    .find((field) => {
      if (shapeOf(sheet, field) !== 'none') return false;
      const name = sheet.names?.[field] ?? '';
      return (
        /(?<!\p{L})(?:time|clock|zeit|uhrzeit|heure|hora)(?!\p{L})/iu.test(name) ||
        sampleCells(sheet, field).some((text) => /\d:\d/.test(text))
      );
    });
}

/** Whether a column of dates can be the time by itself: a row a day, and nothing beside it that must be the clock. */
function isDaily(sheet: Sheet, field: number): boolean {
  if (clockBeside(sheet) !== undefined) return false;
  const { first, end, width } = sheet.structure;
  let before = '';
  for (let record = first; record < end; record++) {
    if (sheet.records.width(record) !== width) continue;
    const text = sheet.records.cell(record, field).trim();
    if (text !== '' && text === before) return false;
    before = text;
  }
  return true;
}

function declaredColumn(sheet: Sheet, name: string, declaration: Pick<LogDeclaration, 'place'>): TimeChoice {
  const parts = name.split(' + ');
  const picked = (parts.length === 2 && !sheet.keys.includes(name) ? parts : [name]).map((part) =>
    pickColumn(sheet, part, declaration.place, 'the time'),
  );
  const problems = picked.filter((result) => typeof result !== 'number');
  if (problems.length > 0) return { column: null, problems, inferences: [] };
  const fields = picked as number[];
  const [first = 0] = fields;
  const shape = shapeOf(sheet, first);
  // Midnight would be all that a column of dates says where the clock stands beside it.
  const clocks = shape === 'date' && fields.length === 1 ? columnsOf(sheet, 'clock').filter((field) => !isSpan(sheet, field)) : [];
  if (clocks.length === 1) {
    const joined = join(sheet, first, clocks[0]!);
    return {
      column: joined,
      problems: [],
      inferences: [
        { method: 'time-column', statement: `The clock time beside the dates is read from \`${sheet.keys[clocks[0]!]}\`.` },
      ],
    };
  }
  if (shape === 'date' && fields.length === 1 && !isDaily(sheet, first)) {
    const problem = unreadableClock(sheet, declaration);
    if (problem) return { column: null, problems: [problem], inferences: [] };
  }
  return { column: { fields, name, shape: fields.length === 2 ? 'date and clock' : shape }, problems: [], inferences: [] };
}

/** All columns that could be the time, dates and clock times joined where there is one of each. Minutes and seconds are it only where nothing else is. */
export function timeCandidates(sheet: Sheet): TimeColumn[] {
  const fields = sheet.keys.map((_, field) => field);
  const shapes = fields.map((field) => shapeOf(sheet, field));
  const dates = fields.filter((field) => shapes[field] === 'date');
  const clocks = fields.filter((field) => shapes[field] === 'clock' && !isSpan(sheet, field));
  const spans = fields.filter((field) => shapes[field] === 'clock' && isSpan(sheet, field));
  const single = (field: number): TimeColumn => ({ fields: [field], name: sheet.keys[field]!, shape: shapes[field]! });
  const whole = fields.filter(
    (field) => shapes[field] === 'date and clock' || (shapes[field] === 'number' && isTimeNumber(sheet, field)),
  );
  const civil = whole.filter((field) => shapes[field] !== 'number').map(single);
  const counters = whole.filter((field) => shapes[field] === 'number').map(single);
  if (dates.length === 1 && clocks.length === 1) return [...civil, join(sheet, dates[0]!, clocks[0]!), ...counters];
  const found = [...civil, ...clocks.map(single), ...counters];
  if (found.length > 0) return found;
  return (spans.length > 0 ? spans : dates.filter((field) => isDaily(sheet, field))).map(single);
}

function join(sheet: Sheet, date: number, clock: number): TimeColumn {
  return { fields: [date, clock], name: `${sheet.keys[date]} + ${sheet.keys[clock]}`, shape: 'date and clock' };
}

/** Minutes and seconds, which a fraction proves: no time of day. */
function isSpan(sheet: Sheet, field: number): boolean {
  const sample = sampleCells(sheet, field);
  return sample.filter(isMinutes).length * 2 > sample.length;
}

function columnsOf(sheet: Sheet, shape: TimeShape): number[] {
  return sheet.keys.map((_, field) => field).filter((field) => shapeOf(sheet, field) === shape);
}

/** Up to 60 filled cells of a column, evenly spread over the rows. */
export function sampleCells(sheet: Sheet, field: number): string[] {
  const { first, end, width } = sheet.structure;
  const step = Math.max(1, Math.floor((end - first) / 60));
  const sample: string[] = [];
  for (let record = first; record < end; record += step) {
    const text = sheet.records.width(record) === width ? sheet.records.cell(record, field).trim() : '';
    if (!MISSING_MARKERS.has(text)) sample.push(text);
  }
  return sample;
}

function shapeOf(sheet: Sheet, field: number): TimeShape {
  const sample = sampleCells(sheet, field);
  if (sample.length === 0) return isTimeName(sheet.names?.[field] ?? '') ? 'number' : 'none';
  const count = (test: (text: string) => boolean) => sample.filter(test).length * 2 > sample.length;
  if (count((text) => !Number.isNaN(parseNumber(text, sheet.dialect.decimal)))) return 'number';
  if (!count(isCivil)) return 'none';
  if (!count((text) => text.includes(':'))) return 'date';
  return count((text) => /\d[-/.]\d{1,2}[-/.]\d/.test(inDigits(text))) ? 'date and clock' : 'clock';
}

/** A number that is called a time, or that rises and is counted in a unit of time or lies where epoch times lie. */
function isTimeNumber(sheet: Sheet, field: number): boolean {
  const name = sheet.names?.[field] ?? '';
  if (isTimeName(name)) return true;
  if (TAKEN.test(name)) return false;
  const values = sampleCells(sheet, field).map((text) => parseNumber(text, sheet.dialect.decimal));
  if (isInSeconds(sheet, field, name)) return rises(values);
  return values.length > 2 && values.every((value) => epochUnit(value) !== null) && rises(values);
}

function isInSeconds({ units }: Sheet, field: number, name: string): boolean {
  const unit = headerUnit(name, undefined, () => true);
  const line = units?.[field]?.replace(/^[[(]\s*|\s*[\])]$/g, '') ?? '';
  const spelling = unit?.sure ? unit.spelling : line;
  return columnUnit(unitSpelling(spelling) ?? '')?.canonical === 's';
}

/** Rises on the whole; it may start anew now and then. */
function rises(values: readonly number[]): boolean {
  const steps = values.slice(1).map((value, k) => value - values[k]!);
  const falls = steps.filter((step) => !(step >= 0)).length;
  return steps.some((step) => step > 0) && falls * 10 <= steps.length;
}

function isTimeName(name: string): boolean {
  const plain = name
    .replace(/^#\s*/, '')
    .toLowerCase()
    .replace(/\s*[([].*[)\]]\s*$/, '')
    .replace(/[_./-]/g, ' ')
    .trim();
  const withoutUnit = plain.replace(/ (?:s|sec|secs|seconds|ms|msec|millis|us|ns|min|h|utc|local)$/, '');
  return TIME_NAME.test(plain) || TIME_NAME.test(withoutUnit);
}

/** The unit in which a number is an instant of the years 2001 to 2100; null for none. */
export function epochUnit(value: number): 's' | 'ms' | 'µs' | 'ns' | null {
  const units = ['s', 'ms', 'µs', 'ns'] as const;
  return units.find((_, k) => value >= 1e9 * 1000 ** k && value < 4.1025e9 * 1000 ** k) ?? null;
}

function undecided(sheet: Sheet, candidates: readonly TimeColumn[], declaration: Pick<LogDeclaration, 'place'>): Problem {
  const names = candidates.map((candidate) => candidate.name);
  if (names.length > 1) {
    return error(
      'time-column-undecided',
      declaration.place,
      `${sheet.file} has ${names.length} columns that could be the time: ${listed(names)}`,
      {
        expected: 'one of them, named',
        remedy: `below \`log\`, write \`file\` and \`time\`, and below \`time\` for instance \`column: "${names[0]}"\``,
      },
    );
  }
  const table = /(?:^|,)(?:test|value|better|spot|reading|outcome)(?:,|$)/i.test(sheet.keys.join(','));
  return error(
    'time-column-missing',
    declaration.place,
    `no column of ${sheet.file} looks like a time; it has ${listed(sheet.keys)}`,
    {
      expected: 'a column of elapsed, epoch, civil or clock time',
      remedy: table
        ? 'a table of results is no log: name it under `scores`, `surface` or `attempts`'
        : `name the \`column\` that counts time, with its \`format\` and \`unit\`; where there is none and you know the step from row to row, ${EVERY}`,
    },
  );
}
