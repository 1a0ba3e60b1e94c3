/** How a small table is written and what its columns are: what a description of it needs, and whether anything in it is unread. */
import { readTable } from '../intake/table.ts';
import { SCORE_COLUMNS } from './scores/columns.ts';
import { ATTEMPT_COLUMNS } from './stability/read-attempts.ts';
import { SURFACE_COLUMNS } from './surface/read-surface.ts';
import { columnName, columnUnit } from './table-cells.ts';

export type TableKind = 'scores' | 'surface' | 'attempts';

export interface TableLayout {
  /** In their order, trailing empty ones left out. */
  readonly columns: readonly TableColumn[];
  readonly rows: number;
  readonly delimiter: string;
  readonly decimal: '.' | ',';
  /** Name of the encoding and how it was told. */
  readonly encoding: string;
}

export interface TableColumn {
  /** As the header has it, made distinct. */
  readonly head: string;
  /** What it is to its reader; null where nothing reads it. */
  readonly name: string | null;
  /** Stated in the header; '' for none. */
  readonly unit: string;
}

const COLUMNS: Readonly<Record<TableKind, readonly string[]>> = {
  scores: SCORE_COLUMNS,
  surface: SURFACE_COLUMNS,
  attempts: ATTEMPT_COLUMNS,
};

/** The form of a table's bytes. Never throws. */
export function tableLayout(bytes: Uint8Array, file: string, kind: TableKind): TableLayout {
  const { head, rows, form } = readTable(bytes, file);
  const known = COLUMNS[kind];
  // Scores have their columns under their very names; the others with a unit behind.
  const nameOf = (text: string) => (kind === 'scores' ? text : columnName(text));
  const columns = head.map((text) => ({
    head: text,
    name: known.find((each) => each === nameOf(text)) ?? null,
    unit: kind === 'scores' ? '' : (columnUnit(text) ?? ''),
  }));
  return { columns, rows: rows.length, ...form };
}
