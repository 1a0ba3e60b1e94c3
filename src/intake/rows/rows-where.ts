/** Rows of one device or channel where several stand in one log, as the author names them. */

import { error, type Problem } from '../../problem.ts';
import { cellKind } from '../cells/cells.ts';
import { nearestName } from '../cells/names.ts';
import { parseNumber } from '../cells/numbers.ts';
import type { Inference, LogDeclaration } from '../log.ts';
import type { Sheet } from '../sheet/open.ts';
import { listed, pickColumn } from '../sheet/pick.ts';

export interface ChosenRows {
  readonly records: Int32Array;
  readonly problems: readonly Problem[];
  readonly inferences: readonly Inference[];
}

/** The records whose cell in the named column is the named value, as text or as number. All of them where nothing is named. */
export function rowsWhere(sheet: Sheet, records: Int32Array, { rows, file }: Pick<LogDeclaration, 'rows' | 'file'>): ChosenRows {
  if (!rows) return { records, problems: [], inferences: [] };
  const field = pickColumn(sheet, rows.column, rows.place, '`rows`');
  if (typeof field !== 'number') return { records: records.slice(0, 0), problems: [field], inferences: [] };
  const wanted = rows.value.trim();
  const number = parseNumber(wanted, '.');
  const fits = (record: number) => {
    const cell = sheet.records.cell(record, field).trim();
    return cell === wanted || (!Number.isNaN(number) && parseNumber(cell, sheet.dialect.decimal) === number);
  };
  const chosen = records.filter(fits);
  if (chosen.length === 0 && records.length > 0) {
    const there = distinct(sheet, records, field);
    const nearest = nearestName(wanted, there);
    const problem = error('rows-none', rows.place, `no row of ${file} has \`${wanted}\` in the column \`${rows.column}\``, {
      expected: `one of ${listed(there)}`,
      ...(nearest === undefined ? {} : { remedy: `did you mean \`${nearest}\`?` }),
    });
    return { records: chosen, problems: [problem], inferences: [] };
  }
  const statement = `Of ${records.length} rows, the ${chosen.length} whose \`${rows.column}\` is \`${wanted}\` are read.`;
  return { records: chosen, problems: [], inferences: [{ method: 'rows-where', statement }] };
}

/** Values looked for where the named one is not there. */
const MOST_VALUES = 100;

function distinct(sheet: Sheet, records: Int32Array, field: number): string[] {
  const found = new Set<string>();
  for (const record of records) {
    const cell = sheet.records.cell(record, field).trim();
    if (cellKind(cell, sheet.dialect.decimal) !== 'missing') found.add(cell);
    if (found.size >= MOST_VALUES) break;
  }
  return [...found];
}
