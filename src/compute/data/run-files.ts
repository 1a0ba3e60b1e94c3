/** The files of data that a run's page offers, or says why it does not. */

import type { DataFile } from '../models/data-file.ts';
import { unreadText } from '../steps/runs/log-sharing.ts';
import type { RunData, Stored } from '../steps/runs/run-data.ts';
import type { LogSummary } from '../steps/runs/run-step.ts';
import type { ReadTable } from '../steps/runs/run-tables.ts';
import { distinctNames, offeredName, sizeText } from './names.ts';
import { tableFile } from './table-file.ts';

export interface RunFilesOf {
  readonly run: string;
  readonly summary: Pick<LogSummary, 'file' | 'rows'>;
  readonly data: RunData;
  readonly tables: readonly ReadTable[];
  /** Where the log can be had instead. */
  readonly elsewhere?: string | undefined;
  /** Whether the author says how it goes out. */
  readonly stated: boolean;
}

/** Log, redaction, cleaned readings, tables; each with its digest, whether it is offered or not. */
export function runFiles({ run, summary, data, tables, elsewhere, stated }: RunFilesOf): DataFile[] {
  const folder = `runs/${run}/data/`;
  const { sharedAs: way, log, redacted, cleaned } = data;
  const rows = summary.rows;
  const common = { rows, note: '' };
  const files: DataFile[] = [
    {
      ...common,
      ...fileOf(log, offeredName(summary.file), way === 'as it came' ? folder : null),
      role: 'log',
      what: 'log as it came',
      source: `data/${summary.file}`,
      note: noteOf(data, stated),
      ...(elsewhere === undefined ? {} : { elsewhere }),
    },
    ...(redacted
      ? [
          {
            ...common,
            ...fileOf(redacted, offeredName(redacted.file), folder),
            role: 'redacted' as const,
            what: 'log as its author redacted it',
            source: `data/${redacted.file}`,
            note: 'holds the same readings',
          },
        ]
      : []),
    ...(cleaned
      ? [
          {
            ...common,
            ...fileOf(cleaned, `${run}-clean.csv`, folder),
            role: 'cleaned' as const,
            what: 'cleaned readings',
            source: '',
            note: 'every row that counts, in canonical units',
          },
        ]
      : []),
    ...tables.map((table) => tableFile(table, folder)),
  ];
  const names = distinctNames(files);
  return files.map((file, index) => renamed(file, names[index]!, folder));
}

function fileOf({ sha256, bytes }: Stored, name: string, folder: string | null) {
  return { name, path: folder === null ? null : folder + name, sha256, bytes, size: sizeText(bytes) };
}

function renamed(file: DataFile, name: string, folder: string): DataFile {
  return name === file.name ? file : { ...file, name, path: file.path === null ? null : folder + name };
}

function noteOf({ sharedAs: way, unread }: RunData, stated: boolean): string {
  if (way === 'as it came') return '';
  if (way === 'redacted') return 'not offered: a redacted file stands in its place';
  if (way === 'elsewhere') return 'kept elsewhere';
  if (way === 'digest only') return 'not offered: its author publishes the digest alone';
  return stated ? 'not offered: its author publishes the cleaned readings' : `not offered: it holds ${unreadText(unread)}`;
}
