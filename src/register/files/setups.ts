/** content/setups/<id>.md: what runs share. It is no run: it may state as much or as little as its runs have in common. */
import { TABLE_FORMS } from '../../figures/table-layout.ts';
import type { DataFiles } from '../register.ts';
import { readSharedLog, readSharedLogs, SHARED_LOG, SHARED_ONE_OF_LOGS, type SharedLog } from '../sections/log.ts';
import { readShared, SHARED_KEYS } from '../sections/shared-keys.ts';
import { readTableKey, SCORES, type StatedTable, SURFACE } from '../sections/table.ts';
import { map, optional, readShape, required, shape, text } from '../values/shape.ts';
import { itemOf, type SourceFile } from '../values/source-file.ts';
import type { Shared } from '../values/stated-value.ts';
import type { Report } from '../yaml/report.ts';

export const SETUP = shape({
  title: required(text, 'what the setup is, for its author', { form: 'words', example: 'Open bench, still air' }),
  ...SHARED_KEYS,
  log: optional(map, 'what the logs of its runs share', { keys: { title: '`log` of a setup', shape: SHARED_LOG } }),
  logs: optional(map, 'the same of logs by the names that runs give them', {
    each: { title: 'a log below `logs` of a setup', shape: SHARED_ONE_OF_LOGS },
  }),
  scores: optional(map, 'how the scores of its runs are read', { keys: { title: '`scores` of a run or setup', shape: SCORES } }),
  surface: optional(map, 'how the surface readings of its runs are read', {
    keys: { title: '`surface` of a run or setup', shape: SURFACE },
  }),
});

export interface Setup {
  readonly source: SourceFile;
  readonly shared: Shared;
  /** Of every log of its runs. */
  readonly log: SharedLog;
  /** Of logs by their names. */
  readonly logs: ReadonlyMap<string, SharedLog>;
  /** What is declared once of the tables of its runs. */
  readonly tables: { readonly scores?: StatedTable; readonly surface?: StatedTable };
}

export function readSetup(source: SourceFile, data: DataFiles, report: Report): Setup {
  const fields = readShape(SETUP, source.root, 'a setup', source.start, report);
  itemOf(source, fields.title, report);
  const scores = readTableKey(fields.scores, 'scores', TABLE_FORMS.scores, data, report);
  const surface = readTableKey(fields.surface, 'surface', TABLE_FORMS.surface, data, report);
  return {
    source,
    shared: readShared(fields, 'setup', false, source.placeOf, report),
    log: readSharedLog(fields.log, report),
    logs: readSharedLogs(fields.logs, report),
    tables: { ...(scores ? { scores } : {}), ...(surface ? { surface } : {}) },
  };
}
