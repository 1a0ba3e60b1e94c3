/** A table as lines of front matter. */
import { mappingLines } from '../../figures/mapping-lines.ts';
import type { Looked } from './look-at.ts';
import type { KnownSetup } from './project.ts';
import { quoted } from './run-file.ts';
import type { FoundTable } from './tables.ts';

/** What is said of the tables of one kind once: all but whose rows. Of several files each run names its own. */
export function sharedLines(tables: readonly Looked[]): string[] {
  const [first] = tables;
  const { kind, proposed } = first!.found!;
  const { rows: _, ...mapping } = proposed.mapping;
  const lines = mappingLines({ ...proposed, mapping });
  const file = tables.length === 1 ? [`  file: ${first!.path}`] : [];
  return file.length + lines.length === 0 ? [] : [`${KEYS[kind]}:`, ...file, ...lines.map((line) => `  ${line}`)];
}

const KEYS = { scores: 'scores', surface: 'surface', attempts: 'table' } as const;

/** A table as lines of front matter; what the setup says of it is left out. */
export function tableLines(
  path: string,
  { kind, proposed }: FoundTable,
  setting: string | undefined,
  setup?: KnownSetup,
): string[] {
  const key = KEYS[kind];
  const shared = kind === 'attempts' ? undefined : setup?.tables[kind];
  const { rows, ...mapping } = proposed.mapping;
  const row = rows && setting !== undefined ? { rows: { ...rows, value: setting } } : {};
  const lines = mappingLines(
    shared ? { ...proposed, mapping: row, openTests: [], openWords: [] } : { ...proposed, mapping: { ...mapping, ...row } },
  );
  const file = shared?.file === path ? [] : [`file: ${quoted(path)}`];
  if (lines.length === 0 && file.length > 0) return [`${key}: ${quoted(path)}`];
  return [`${key}:`, ...[...file, ...lines].map((line) => `  ${line}`)];
}

/** The clock that a table's column of settings states, with its unit. */
export function clockOf({ proposed }: FoundTable, setting: string | undefined): string | undefined {
  const { rows } = proposed.mapping;
  if (!rows || setting === undefined || !/clock|freq/i.test(rows.column)) return undefined;
  if (/^\d+(?:\.\d+)?\s*[MG]Hz$/i.test(setting)) return setting;
  const unit = /\b([MG]Hz)\b/i.exec(rows.column)?.[1];
  return unit !== undefined && /^\d+(?:\.\d+)?$/.test(setting) ? `${setting} ${unit}` : undefined;
}
