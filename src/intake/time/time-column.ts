/** Which column, or pair of columns, is the time: declared, or told by what the cells look like and how the column is called. */
import { error, type Problem } from '../../problem.ts';
import { readUnit } from '../../quantities/units.ts';
import { MISSING_MARKERS } from '../cells/cells.ts';
import { isCivil } from '../cells/civil.ts';
import { headerUnit, unitSpelling } from '../cells/header-units.ts';
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
  /^(?:t|time|timestamp|time stamp|date ?time|date|epoch|unix(?: ?time)?|elapsed(?: time)?|uptime|seconds?|secs?|s|ms|millis(?:econds)?|minutes?|hours?)$/;

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
  return { column: null, problems: [undecided(sheet, candidates, declaration)], inferences: [] };
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
  const clocks = shape === 'date' && fields.length === 1 ? columnsOf(sheet, 'clock') : [];
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
  return { column: { fields, name, shape: fields.length === 2 ? 'date and clock' : shape }, problems: [], inferences: [] };
}

/** All columns that could be the time, dates and clock times joined where there is one of each. */
export function timeCandidates(sheet: Sheet): TimeColumn[] {
  const fields = sheet.keys.map((_, field) => field);
  const shapes = fields.map((field) => shapeOf(sheet, field));
  const dates = fields.filter((field) => shapes[field] === 'date');
  const clocks = fields.filter((field) => shapes[field] === 'clock');
  const single = (field: number): TimeColumn => ({ fields: [field], name: sheet.keys[field]!, shape: shapes[field]! });
  const whole = fields.filter(
    (field) => shapes[field] === 'date and clock' || (shapes[field] === 'number' && isTimeNumber(sheet, field)),
  );
  if (dates.length === 1 && clocks.length === 1) return [...whole.map(single), join(sheet, dates[0]!, clocks[0]!)];
  const found = [...whole, ...clocks].map(single);
  return found.length > 0 ? found : dates.map(single);
}

function join(sheet: Sheet, date: number, clock: number): TimeColumn {
  return { fields: [date, clock], name: `${sheet.keys[date]} + ${sheet.keys[clock]}`, shape: 'date and clock' };
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
  return count((text) => /\d[-/.]\d{1,2}[-/.]\d/.test(text)) ? 'date and clock' : 'clock';
}

/** A number that is called a time, is counted in a unit of time, or lies where epoch times lie and rises. */
function isTimeNumber(sheet: Sheet, field: number): boolean {
  const name = sheet.names?.[field] ?? '';
  if (isTimeName(name)) return true;
  const unit = headerUnit(name, undefined, () => true);
  if (unit) return unit.sure && readUnit(unitSpelling(unit.spelling) ?? '')?.canonical === 's';
  const values = sampleCells(sheet, field).map((text) => parseNumber(text, sheet.dialect.decimal));
  return (
    values.length > 2 &&
    values.every((value, k) => epochUnit(value) !== null && (k === 0 || value >= values[k - 1]!)) &&
    values.at(-1)! > values[0]!
  );
}

function isTimeName(name: string): boolean {
  const plain = name
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
  return error(
    'time-column-missing',
    declaration.place,
    `no column of ${sheet.file} looks like a time; it has ${listed(sheet.keys)}`,
    {
      expected: 'a column of elapsed, epoch, civil or clock time',
      remedy: 'below `log`, write `file` and `time`, and below `time` the `column` that counts time with its `format` and `unit`',
    },
  );
}
