/** A CSV of settings tried → typed rows with located problems. */
import { mapTable } from '../../intake/mapped-table.ts';
import { readTable, type TableRow } from '../../intake/table.ts';
import type { ColumnFacts, TableForm, TableMapping } from '../../intake/table-mapping.ts';
import type { Problem } from '../../problem.ts';
import { nearest } from '../../quantities/nearest.ts';
import { unreadProblems } from '../called-columns.ts';
import { type Cells, cellsOf, quantityIn, type StatedNumber, tellCell, textOf, type Wanted } from '../table-cells.ts';
import { type Attempt, type Ladder, OUTCOMES, type Outcome, type PassCriterion } from './ladder.ts';

const NEEDED = ['clock', 'voltage_offset', 'outcome'] as const;
const OPTIONAL = ['note', 'test', 'duration', 'ambient'] as const;
type Name = (typeof NEEDED)[number] | (typeof OPTIONAL)[number];

/** What each column tells. */
const COLUMNS: Readonly<Record<Name, ColumnFacts>> = {
  clock: { about: 'the clock that was set', example: '2.6 GHz' },
  voltage_offset: { about: 'the voltage that was added', example: '40 mV' },
  outcome: { about: `what came of it: ${OUTCOMES.map((each) => `\`${each}\``).join(', ')}`, example: 'passed' },
  note: { about: 'a remark, for readers', example: 'after two tries' },
  test: { about: 'the test that was passed, where it differs from that of the file', example: 'all cores, integer mix 3.1' },
  duration: { about: 'how long it ran', example: '60 min' },
  ambient: { about: 'the ambient at which it ran', example: '22.5 ± 1.0 °C' },
};

/** What a table of attempts may have. */
export const ATTEMPTS_FORM: TableForm = { kind: 'attempts', needed: NEEDED, optional: OPTIONAL, columns: COLUMNS };

const CLOCK: Wanted = { canonical: 'Hz', unstated: 'exact', example: '2.6 GHz' };
const OFFSET: Wanted = { canonical: 'V', example: '40 mV' };
const DURATION: Wanted = { canonical: 's', example: '60 min' };
const AMBIENT: Wanted = { canonical: '°C', kind: 'temperature', example: '22.5 ± 1.0 °C' };

/**
 * Reads attempts. `passing` is what the attempts file says of all of them; columns `test`, `duration` and `ambient` say it of one row.
 * A row with an error is left out, the others stand. Never throws.
 */
export function readAttempts(
  bytes: Uint8Array,
  file: string,
  specimen: string,
  passing?: Partial<PassCriterion>,
  mapping?: TableMapping,
): { ladder: Ladder; problems: readonly Problem[] } {
  const read = readTable(bytes, file);
  const mapped = mapTable(read, mapping, ATTEMPTS_FORM);
  const { table, problems } = mapped;
  const cells = cellsOf<Name>(table, 'attempts', NEEDED, OPTIONAL);
  cells.problems.unshift(...table.problems, ...problems, ...unreadProblems(read, mapped, mapping, 'attempts'));
  const whole = NEEDED.every((name) => cells.columns.has(name));
  const attempts = (whole ? table.rows : []).flatMap((row) => attemptOf(cells, row, passing ?? {}) ?? []);
  const columns = (['clock', 'voltage_offset', 'outcome'] as const).flatMap((name) => cells.columns.get(name)?.head ?? []);
  return { ladder: { specimen, file, attempts, columns }, problems: cells.problems };
}

function attemptOf(cells: Cells<Name>, row: TableRow, shared: Partial<PassCriterion>): Attempt | null {
  const before = cells.problems.length;
  const stated = statedIn(cells, row, 'clock', CLOCK);
  const clock = stated?.value ?? null;
  const offset = statedIn(cells, row, 'voltage_offset', OFFSET)?.value ?? null;
  if (clock !== null && !(clock > 0))
    tellCell(cells, row, 'clock', `\`clock\` is \`${textOf(cells, row, 'clock')}\``, { expected: 'a clock above 0' });
  const outcome = outcomeOf(cells, row);
  const passing = passingOf(cells, row, shared);
  if (cells.problems.length > before || clock === null || offset === null || outcome === null) return null;
  const digit = stated?.lastDigit === undefined ? {} : { clockDigit: stated.lastDigit };
  return { line: row.line, clock, ...digit, offset, outcome, note: textOf(cells, row, 'note'), passing };
}

/** A value that may not be empty: an offset that is not stated is not zero. */
function statedIn(cells: Cells<Name>, row: TableRow, name: 'clock' | 'voltage_offset', wanted: Wanted): StatedNumber | null {
  if (textOf(cells, row, name) === '')
    return tellCell(cells, row, name, `no \`${name}\``, { expected: `a value such as ${wanted.example}` });
  return quantityIn(cells, row, name, wanted);
}

function outcomeOf(cells: Cells<Name>, row: TableRow): Outcome | null {
  const text = textOf(cells, row, 'outcome');
  const known = OUTCOMES.find((outcome) => outcome === text.toLowerCase());
  if (known) return known;
  const near = nearest(text, OUTCOMES);
  return tellCell(cells, row, 'outcome', text === '' ? 'no `outcome`' : `\`outcome\` is \`${text}\``, {
    expected: `one of ${OUTCOMES.join(', ')}`,
    ...(near === undefined ? {} : { remedy: `did you mean \`${near}\`?` }),
  });
}

function passingOf(cells: Cells<Name>, row: TableRow, shared: Partial<PassCriterion>): PassCriterion | null {
  const test = textOf(cells, row, 'test') || shared.test;
  const duration = quantityIn(cells, row, 'duration', DURATION)?.value ?? shared.duration;
  quantityIn(cells, row, 'ambient', AMBIENT);
  const ambient = textOf(cells, row, 'ambient') || shared.ambient;
  if (duration !== undefined && !(duration > 0))
    return tellCell(cells, row, 'duration', `\`duration\` is \`${textOf(cells, row, 'duration')}\``, {
      expected: 'a time above 0',
    });
  return test === undefined || duration === undefined || ambient === undefined ? null : { test, duration, ambient };
}
