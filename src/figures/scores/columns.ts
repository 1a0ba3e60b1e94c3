/** Which column of a table of scores is which. */

import { headName } from '../../intake/cells/heads.ts';
import { nearestName } from '../../intake/cells/names.ts';
import type { Table } from '../../intake/table.ts';
import type { ColumnFacts, TableForm } from '../../intake/table-mapping.ts';
import { error, type Problem, warning } from '../../problem.ts';

const NEEDED = ['test', 'value', 'unit', 'better'] as const;
const OPTIONAL = ['id', 'repeat', 'start', 'end', 'clock', 'power', 'error'] as const;

/** What each column tells. */
const COLUMNS: Readonly<Record<ScoreColumn, ColumnFacts>> = {
  test: { about: 'the name of the test', example: 'wide copy' },
  value: { about: 'the score', example: '1313' },
  unit: { about: "the score's unit, any word of yours", example: 'MB/s' },
  better: { about: 'which is better, `higher` or `lower`', example: 'higher' },
  id: { about: "the test's name in addresses; else made from its words", example: 'copy-1t' },
  repeat: { about: 'which repeat it is; else each row of a test is one', example: '2' },
  start: { about: 'when the repeat began: an instant, or since the first row of the log', example: '12.5 min' },
  end: { about: 'when the repeat ended', example: '13.1 min' },
  clock: { about: 'the mean clock that was delivered meanwhile; a log that covers the repeat is taken first', example: '2.41 GHz' },
  power: { about: 'the mean power meanwhile; a log that covers the repeat is taken first', example: '8.3 W' },
  error: { about: 'the error that the test states of itself; `error_is` says what it means', example: '12' },
};

/** What a table of scores may have. */
export const SCORES_FORM: TableForm = {
  kind: 'scores',
  needed: NEEDED,
  optional: OPTIONAL,
  columns: COLUMNS,
  wide: { head: 'test', cell: 'value' },
  unitOf: { cell: 'value', unit: 'unit' },
};

const SCORE_COLUMNS = [...NEEDED, ...OPTIONAL] as const;

export type ScoreColumn = (typeof SCORE_COLUMNS)[number];
export type ScoreColumns = ReadonlyMap<ScoreColumn, number>;

/** Columns by name. One that is needed and missing is an error; another one whose name is nearly right is warned of. */
export function columnsOf(table: Table): { readonly columns: ScoreColumns; readonly problems: readonly Problem[] } {
  const columns = new Map<ScoreColumn, number>();
  for (const name of SCORE_COLUMNS) {
    const at = table.head.findIndex((head) => headName(head) === name);
    if (at >= 0) columns.set(name, at);
  }
  const read = new Set(columns.values());
  const spare = table.heads ? [] : table.head.filter((_, at) => !read.has(at));
  const missing = NEEDED.filter((name) => !columns.has(name)).map((name) => missingColumn(table, name, spare));
  const near = missing.length > 0 ? [] : spare.flatMap((name) => nearlyOptional(table, name, columns));
  const second = table.head.flatMap((name, at) =>
    !read.has(at) && columns.has(headName(name) as ScoreColumn) ? [secondColumn(table, name)] : [],
  );
  return { columns, problems: [...missing, ...near, ...second, ...unpaired(table, columns)] };
}

function missingColumn(table: Table, name: ScoreColumn, spare: readonly string[]): Problem {
  const meant = nearestName(name, spare);
  return error('score-column', table.headPlace, `no column \`${name}\``, {
    expected: 'test, value, unit and better, and where known repeat, start, end, clock, power, id',
    remedy:
      meant !== undefined
        ? `rename \`${meant}\` to \`${name}\`, if that is what it holds`
        : name === 'better'
          ? 'write `higher` or `lower` in every row: which direction is good is never guessed'
          : 'add it',
  });
}

function secondColumn(table: Table, name: string): Problem {
  const remedy = 'give one of them another name, or say under `columns` which is meant';
  return warning('score-column', table.headPlace, `the column \`${name}\` is not read: an earlier one has the same name`, {
    remedy,
  });
}

function nearlyOptional(table: Table, name: string, columns: ScoreColumns): Problem[] {
  const meant = OPTIONAL.find((each) => !columns.has(each) && nearestName(each, [name]) === name);
  if (meant === undefined) return [];
  return [warning('score-column', table.headPlace, `the column \`${name}\` is not read`, { remedy: `did you mean \`${meant}\`?` })];
}

function unpaired(table: Table, columns: ScoreColumns): Problem[] {
  if (columns.has('start') === columns.has('end')) return [];
  const [there, other] = columns.has('start') ? ['start', 'end'] : ['end', 'start'];
  return [error('score-window', table.headPlace, `a column \`${there}\` without \`${other}\``, { expected: 'both, or neither' })];
}
