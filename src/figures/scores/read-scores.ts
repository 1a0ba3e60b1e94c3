/** A CSV of benchmark results → typed rows with located problems. */
import { MISSING_MARKERS } from '../../intake/cells/cells.ts';
import { decimalsOf } from '../../intake/cells/numbers.ts';
import { mapTable } from '../../intake/mapped-table.ts';
import { readTable, type Table, type TableRow } from '../../intake/table.ts';
import type { ErrorMeaning, TableMapping } from '../../intake/table-mapping.ts';
import { error, type Problem } from '../../problem.ts';
import { isParseFailure, parseQuantity } from '../../quantities/parse.ts';
import { readUnit, toCanonical, type Unit } from '../../quantities/units.ts';
import { unreadProblems } from '../called-columns.ts';
import { columnsOf, SCORES_FORM, type ScoreColumn, type ScoreColumns } from './columns.ts';
import { between, MOMENT_EXPECTED, readMoment } from './moments.ts';
import type { Moment, Repeat, ScoredTest, Scores, StatedReading } from './score-table.ts';
import { tellIds, testId } from './test-ids.ts';

const STATED = { id: 'stated', title: 'stated', dof: null };
const EXPECTED_STATED = {
  clock: 'a clock with its unit such as 2.41 GHz, or an empty cell',
  power: 'a power with its unit such as 8.3 W, or an empty cell',
};

interface Reading {
  readonly table: Table;
  readonly columns: ScoreColumns;
  readonly zone: string | undefined;
  /** How errors that the table states are meant. */
  readonly errorIs: ErrorMeaning | undefined;
  readonly problems: Problem[];
}

/** A test while its rows are read; the first row settles id, unit and direction. */
interface Growing extends Omit<ScoredTest, 'repeats'> {
  readonly spelling: string;
  readonly scale: Unit;
  readonly repeats: Repeat[];
}

/**
 * Reads scores: `test, value, unit, better`, and where known `id, repeat, start, end, clock, power`. `zone` is that of civil times without an offset.
 * A row with an error is left out; a cell that says "no result" (empty, NA, -) is kept as such. Never throws.
 */
export function readScores(
  bytes: Uint8Array,
  file: string,
  zone?: string,
  mapping?: TableMapping,
): { scores: Scores; problems: readonly Problem[] } {
  const asIs = readTable(bytes, file);
  const mapped = mapTable(asIs, mapping, SCORES_FORM);
  const { table } = mapped;
  const { columns, problems } = mapped.problems.length > 0 ? { columns: new Map(), problems: mapped.problems } : columnsOf(table);
  const reading: Reading = {
    table,
    columns,
    zone,
    errorIs: mapping?.errorIs,
    problems: [...table.problems, ...unreadProblems(asIs, mapped, mapping, 'scores'), ...problems],
  };
  if (problems.some(({ severity }) => severity === 'error')) return { scores: { file, tests: [] }, problems: reading.problems };
  const tests = new Map<string, Growing>();
  for (const row of table.rows) readRow(reading, tests, row);
  tellIds(
    [...tests.values()].map(({ id, title, repeats }) => ({ id, title, line: repeats[0]!.line })),
    (line) => table.placeOf(table.rows.find((row) => row.line === line)!, columns.get('test')!),
    reading.problems,
  );
  const read = [...tests.values()].map(({ spelling: _spelling, scale: _scale, ...test }) => test);
  return { scores: { file, tests: read, ...headsOf(table, columns) }, problems: reading.problems };
}

/** What the file calls the columns of tests and values, where that is not what we do. */
function headsOf(table: Table, columns: ScoreColumns): Pick<Scores, 'columns'> {
  if (!table.heads) return {};
  const heads = (['test', 'value'] as const).flatMap((name) => table.heads![columns.get(name)!] || []);
  return heads.length > 0 ? { columns: heads } : {};
}

function cell({ columns }: Reading, row: TableRow, column: ScoreColumn): string | undefined {
  const at = columns.get(column);
  return at === undefined ? undefined : row.cells[at];
}

function report(reading: Reading, row: TableRow, column: ScoreColumn, rule: string, found: string, expected: string): null {
  reading.problems.push(error(rule, reading.table.placeOf(row, reading.columns.get(column)!), found, { expected }));
  return null;
}

function readRow(reading: Reading, tests: Map<string, Growing>, row: TableRow): void {
  const test = testOf(reading, tests, row);
  if (!test) return;
  const before = reading.problems.length;
  const { value, step } = readValue(reading, row, test);
  const [clock, power] = [statedIn(reading, row, 'clock'), statedIn(reading, row, 'power')];
  const repeat: Repeat = {
    name: nameOf(reading, row, test),
    value,
    step,
    window: windowOf(reading, row),
    ...(clock && { clock }),
    ...(power && { power }),
    ...errorOf(reading, row, test),
    line: row.line,
  };
  if (reading.problems.length > before) return;
  test.repeats.push(repeat);
  tests.set(test.title, test);
}

function testOf(reading: Reading, tests: ReadonlyMap<string, Growing>, row: TableRow): Growing | null {
  const title = cell(reading, row, 'test')!;
  if (title === '') return report(reading, row, 'test', 'score-test', 'a row without the name of its test', 'a name');
  const better = cell(reading, row, 'better')!;
  const known = tests.get(title);
  if (better !== 'higher' && better !== 'lower') {
    const found = better === '' ? 'no direction' : `the direction \`${better}\``;
    return report(reading, row, 'better', 'score-direction', `${found} of \`${title}\``, '`higher` or `lower`: which is better');
  }
  const spelling = cell(reading, row, 'unit')!;
  if (known) return sameTest(reading, row, known, better, spelling);
  const id = testId(title, cell(reading, row, 'id'));
  if (id === null)
    return report(reading, row, reading.columns.has('id') ? 'id' : 'test', 'score-id', `\`${title}\` gives no id`, 'a column `id`');
  if (spelling === '') return report(reading, row, 'unit', 'score-unit', `no unit of \`${title}\``, 'a unit, `points`, or `1`');
  const scale = readUnit(spelling, 'score');
  if (scale?.offset !== 0 || scale.canonical === '°C')
    return report(reading, row, 'unit', 'score-unit', `the unit \`${spelling}\``, 'a unit that counts from zero, or a word');
  return { id, title, unit: scale.canonical, better, repeats: [], spelling, scale };
}

/** Direction, unit and id must not change within a test. */
function sameTest(reading: Reading, row: TableRow, known: Growing, better: string, spelling: string): Growing | null {
  if (better !== known.better)
    return report(
      reading,
      row,
      'better',
      'score-direction',
      `\`${known.title}\` is ${better}-is-better here`,
      `\`${known.better}\` as above`,
    );
  if (spelling !== known.spelling)
    return report(
      reading,
      row,
      'unit',
      'score-unit',
      `\`${known.title}\` is in \`${spelling}\` here`,
      `\`${known.spelling}\` as above`,
    );
  const id = cell(reading, row, 'id');
  if (id !== undefined && id !== '' && id !== known.id)
    return report(reading, row, 'id', 'score-id', `\`${known.title}\` has the id \`${id}\` here`, `\`${known.id}\` as above`);
  return known;
}

function readValue(reading: Reading, row: TableRow, { scale }: Growing): { readonly value: number; readonly step: number } {
  const text = cell(reading, row, 'value')!;
  if (MISSING_MARKERS.has(text)) return { value: Number.NaN, step: 0 };
  const number = reading.table.number(text);
  if (Number.isNaN(number))
    report(reading, row, 'value', 'score-value', `the value \`${text}\``, 'a number, or an empty cell where there was no result');
  const decimals = decimalsOf(text, text.includes('.') ? '.' : ',');
  return { value: toCanonical(number, scale), step: toCanonical(10 ** -decimals, scale) };
}

/** A clock or power with its unit: `2.41 GHz`. */
function statedIn(reading: Reading, row: TableRow, column: 'clock' | 'power'): StatedReading | null {
  const text = cell(reading, row, column) ?? '';
  if (MISSING_MARKERS.has(text)) return null;
  const quantity = parseQuantity(text, STATED);
  const unit = column === 'clock' ? 'Hz' : 'W';
  const number = /^[0-9]+(?:\.[0-9]+)?/.exec(text)?.[0];
  if (
    isParseFailure(quantity) ||
    quantity.unit !== unit ||
    !(quantity.value > 0) ||
    quantity.parts?.length !== 0 ||
    number === undefined
  )
    return report(reading, row, column, 'score-stated', `the ${column} \`${text}\``, EXPECTED_STATED[column]);
  return { value: quantity.value, step: (quantity.value / Number(number)) * 10 ** -decimalsOf(number, '.') };
}

/** Standard uncertainty of a value by the error that the table states beside it. */
function errorOf(reading: Reading, row: TableRow, { scale }: Growing): Pick<Repeat, 'error'> {
  const text = cell(reading, row, 'error') ?? '';
  if (MISSING_MARKERS.has(text)) return {};
  const number = reading.table.number(text.replace(/^\s*(?:±|\+\/-)\s*/, ''));
  if (!(number >= 0)) {
    report(reading, row, 'error', 'score-error', `the error \`${text}\``, 'a number in the unit of the value, or an empty cell');
    return {};
  }
  if (reading.errorIs === undefined) {
    const expected = '`error_is` below `scores`: `limits`, `standard` (a standard deviation of the mean) or `95 %`';
    report(reading, row, 'error', 'score-error', 'nothing says how the errors of this table are meant', expected);
    return {};
  }
  const half = toCanonical(number, { ...scale, offset: 0 });
  if (reading.errorIs === 'limits') return { error: { u: half / Math.sqrt(3), distribution: 'rectangular' } };
  return { error: { u: reading.errorIs === 'standard' ? half : half / NORMAL_95 } };
}

/** Half a 95 % interval in standard deviations (JCGM 100:2008, table G.1). */
const NORMAL_95 = 1.96;

function nameOf(reading: Reading, row: TableRow, test: Growing): string {
  const name = cell(reading, row, 'repeat') || String(test.repeats.length + 1);
  const first = test.repeats.find((repeat) => repeat.name === name);
  if (first && reading.columns.has('repeat'))
    report(
      reading,
      row,
      'repeat',
      'score-repeat',
      `repeat ${name} of \`${test.title}\` a second time`,
      `one row a repeat: line ${first.line} has it`,
    );
  return name;
}

function windowOf(reading: Reading, row: TableRow): Repeat['window'] {
  const [start, end] = [momentOf(reading, row, 'start'), momentOf(reading, row, 'end')];
  if (start === null && end === null) return null;
  if (start === null || end === null) {
    const empty = start === null ? 'start' : 'end';
    if (cell(reading, row, empty) === '')
      report(reading, row, empty, 'score-window', `no \`${empty}\``, 'both `start` and `end`, or neither');
    return null;
  }
  const seconds = between(start, end);
  if (seconds !== null && !(seconds > 0)) {
    report(reading, row, 'end', 'score-window', 'the repeat ends before it starts', 'an `end` after its `start`');
  }
  if (start.kind !== end.kind)
    report(reading, row, 'end', 'score-window', '`start` and `end` are on two scales', 'one way of telling time');
  return { start, end };
}

function momentOf(reading: Reading, row: TableRow, column: 'start' | 'end'): Moment | null {
  const text = cell(reading, row, column) ?? '';
  if (text === '') return null;
  return readMoment(text, reading.zone) ?? report(reading, row, column, 'score-window', `the time \`${text}\``, MOMENT_EXPECTED);
}
