/** content/setups/<id>.md: what runs share. It is no run: it may state as much or as little as its runs have in common. */
import { TABLE_FORMS } from '../../figures/table-layout.ts';
import type { DataFiles } from '../register.ts';
import { readSharedLog, readSharedLogs, type SharedLog } from '../sections/log.ts';
import { readShared, SHARED_KEYS } from '../sections/shared-keys.ts';
import { readTableKey, type StatedTable } from '../sections/table.ts';
import { map, optional, readShape, shape, text } from '../values/shape.ts';
import { itemOf, type SourceFile } from '../values/source-file.ts';
import type { Shared } from '../values/stated-value.ts';
import type { Report } from '../yaml/report.ts';

const SETUP = shape({
  title: text,
  ...SHARED_KEYS,
  log: optional(map),
  logs: optional(map),
  scores: optional(map),
  surface: optional(map),
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
