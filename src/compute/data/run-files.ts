/** The files of data that a run's page offers, or says why it does not. */

import type { Run, RunLog } from '../../register/register.ts';
import type { DataFile } from '../models/data-file.ts';
import { unreadText } from '../steps/runs/log-sharing.ts';
import type { LogData, Stored } from '../steps/runs/run-data.ts';
import type { LogSummary } from '../steps/runs/run-step.ts';
import type { ReadTable } from '../steps/runs/run-tables.ts';
import { distinctNames, offeredName, sizeText } from './names.ts';
import { tableFile } from './table-file.ts';

export interface RunFilesOf {
  readonly run: Pick<Run, 'id' | 'logs'>;
  readonly summary: { readonly logs: readonly Pick<LogSummary, 'file' | 'rows' | 'condensed'>[] };
  /** Of each log, in the run's order. */
  readonly data: readonly LogData[];
  readonly tables: readonly ReadTable[];
}

/** Logs, each with its redaction and its cleaned readings; tables; each with its digest, whether it is offered or not. */
export function runFiles({ run, summary, data, tables }: RunFilesOf): DataFile[] {
  const folder = `runs/${run.id}/data/`;
  const files: DataFile[] = [
    ...data.flatMap((each, index) => filesOfLog(run.id, folder, each, run.logs[index]!, summary.logs[index]!)),
    ...tables.map((table) => tableFile(table, folder)),
  ];
  const names = distinctNames(files);
  return files.map((file, index) => renamed(file, names[index]!, folder));
}

function filesOfLog(
  run: string,
  folder: string,
  data: LogData,
  { sharing }: Pick<RunLog, 'sharing'>,
  { file, rows, condensed }: Pick<LogSummary, 'file' | 'rows' | 'condensed'>,
): DataFile[] {
  const { name, sharedAs: way, log, redacted, cleaned } = data;
  const common = { rows, note: '', ...(name === '' ? {} : { log: name }) };
  const of = name === '' ? '' : ` ${name.replaceAll('_', ' ')}`;
  const part = name === '' ? '' : `-${name.replaceAll('_', '-')}`;
  return [
    {
      ...common,
      ...fileOf(log, offeredName(file), way === 'as it came' ? folder : null),
      role: 'log',
      what: `log${of} as it came`,
      source: `data/${file}`,
      note: noteOf(data, sharing.share !== undefined),
      ...(sharing.elsewhere === undefined ? {} : { elsewhere: sharing.elsewhere }),
    },
    ...(redacted
      ? [
          {
            ...common,
            ...fileOf(redacted, offeredName(redacted.file), folder),
            role: 'redacted' as const,
            what: `log${of} as its author redacted it`,
            source: `data/${redacted.file}`,
            note: 'holds the same readings',
          },
        ]
      : []),
    ...(cleaned
      ? [
          {
            ...common,
            ...fileOf(cleaned, `${run}${part}-clean.csv`, folder),
            role: 'cleaned' as const,
            what: `cleaned readings${name === '' ? '' : ` of the log${of}`}`,
            source: '',
            note: condensed
              ? `means of up to ${condensed.longest} rows of the log, in canonical units`
              : 'every row that counts, in canonical units',
          },
        ]
      : []),
  ];
}

function fileOf({ sha256, bytes }: Stored, name: string, folder: string | null) {
  return { name, path: folder === null ? null : folder + name, sha256, bytes, size: sizeText(bytes) };
}

function renamed(file: DataFile, name: string, folder: string): DataFile {
  return name === file.name ? file : { ...file, name, path: file.path === null ? null : folder + name };
}

function noteOf({ sharedAs: way, unread, tooLong, log }: LogData, stated: boolean): string {
  if (way === 'as it came') return '';
  if (way === 'redacted') return 'not offered: a redacted file stands in its place';
  if (way === 'elsewhere') return 'kept elsewhere';
  if (way === 'digest only') return 'not offered: its author publishes the digest alone';
  if (tooLong) return `not offered: ${sizeText(log.bytes)} are too much to go out with a site`;
  return stated ? 'not offered: its author publishes the cleaned readings' : `not offered: it holds ${unreadText(unread)}`;
}
