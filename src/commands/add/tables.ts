/** Is a file a table of scores, surface readings or attempts, and how would it be read? */
import { isTableOf, type ProposedMapping, proposeMapping } from '../../figures/propose-mapping.ts';
import type { TableKind } from '../../figures/table-layout.ts';
import type { Inspection } from '../../intake/inspect.ts';
import { readTable, type Table } from '../../intake/table.ts';
import type { TableMapping } from '../../intake/table-mapping.ts';

export interface FoundTable {
  readonly kind: TableKind;
  readonly table: Table;
  readonly proposed: ProposedMapping;
}

/** What tables of results call their columns. */
const RESULTS = /^(?:test|benchmark|value|better|spot|reading|outcome|score|result)s?$/i;
const SURFACE_NAME = /surface|spots?\b|camera|thermal|infrared/i;
const SCORES_NAME = /scores?\b|bench|results?\b/i;
const SURFACE_HEAD = /temp|celsius|°|^reading$|^t$|hottest/i;
/** A table of more rows is a log. */
const MOST_ROWS = 2000;
/** A wide table of scores has a row a setting or repeat; one that goes on longer is a log without a time. */
const MOST_SETTINGS = 12;

/** Tells a table from a log: it has no time that goes on from row to row, or names its columns as results. Null for a log, and for what is neither. */
export function tableOf(
  bytes: Uint8Array,
  file: string,
  inspection: Inspection,
  shared: Readonly<Record<'scores' | 'surface', TableMapping | undefined>>,
): FoundTable | null {
  const names = [...inspection.columns, ...inspection.leftOut].map(({ column }) => column);
  const results = names.filter((name) => RESULTS.test(name)).length > 1;
  if (inspection.time && !results) return null;
  if (inspection.problems.some(({ rule }) => rule === 'time-clock-unreadable')) return null;
  const table = readTable(bytes, file);
  if (!table.head.every((head) => /\p{L}/u.test(head))) return null;
  if (table.rows.length === 0 || table.rows.length > MOST_ROWS || table.head.length < 2) return null;
  if (table.problems.some(({ severity }) => severity === 'error')) return null;
  const proposals = {
    attempts: proposeMapping(table, 'attempts'),
    surface: proposeMapping(table, 'surface', shared.surface),
    scores: proposeMapping(table, 'scores', shared.scores),
  };
  const kind = kindOf(file, table, proposals);
  return kind === null ? null : { kind, table, proposed: proposals[kind] };
}

function kindOf(file: string, table: Table, { attempts, surface, scores }: Record<TableKind, ProposedMapping>): TableKind | null {
  const headOf = ({ mapping }: ProposedMapping, name: string) =>
    mapping.columns?.find((column) => column.name === name)?.heads[0] ?? name;
  const outcome = table.head.indexOf(headOf(attempts, 'outcome'));
  const words = outcome >= 0 && table.rows.some(({ cells }) => Number.isNaN(table.number(cells[outcome]!)));
  if (isTableOf(attempts) && words) return 'attempts';
  const seen = surface.mapping.layout !== 'wide' && SURFACE_HEAD.test(headOf(surface, 'reading'));
  if (isTableOf(surface) && (SURFACE_NAME.test(file) || seen)) return 'surface';
  // A wide table is told from a log without a time by its settings, its repeats, or its name.
  const few = table.rows.length <= MOST_SETTINGS && (scores.mapping.rows || scores.mapping.columns);
  const told = scores.mapping.layout !== 'wide' || few || SCORES_NAME.test(file);
  return isTableOf(scores) && told ? 'scores' : null;
}
