/** How a small table is written and what its columns are: what a description of it needs, and whether anything in it is unread. */
import { headUnit } from '../intake/cells/heads.ts';
import { mapTable } from '../intake/mapped-table.ts';
import { readTable } from '../intake/table.ts';
import type { TableForm, TableMapping } from '../intake/table-mapping.ts';
import { SCORES_FORM } from './scores/columns.ts';
import { ATTEMPTS_FORM } from './stability/read-attempts.ts';
import { SURFACE_FORM } from './surface/read-surface.ts';

export type TableKind = 'scores' | 'surface' | 'attempts';

export interface TableLayout {
  /** In their order, trailing empty ones left out. */
  readonly columns: readonly TableColumn[];
  readonly rows: number;
  /** Said where rows of other settings or runs stand in it. */
  readonly partly?: true;
  /** Said where its author lets all of it go out. */
  readonly shared?: true;
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

/** What the reader of each kind of table asks for. */
export const TABLE_FORMS: Readonly<Record<TableKind, TableForm>> = {
  scores: SCORES_FORM,
  surface: SURFACE_FORM,
  attempts: ATTEMPTS_FORM,
};

/** The form of a table's bytes. Never throws. */
export function tableLayout(bytes: Uint8Array, file: string, kind: TableKind, mapping?: TableMapping): TableLayout {
  const table = readTable(bytes, file);
  const { readAs, partly } = mapTable(table, mapping, TABLE_FORMS[kind]);
  const columns = table.head.map((head, field) => ({
    head,
    name: readAs[field] ?? null,
    unit: kind === 'scores' ? '' : (headUnit(head) ?? ''),
  }));
  return {
    columns,
    rows: table.rows.length,
    ...(partly ? { partly } : {}),
    ...(mapping?.share ? { shared: true } : {}),
    ...table.form,
  };
}
