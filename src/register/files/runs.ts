/** content/runs/<id>.md as its author states it, before its setup is laid under. */
import { TABLE_FORMS } from '../../figures/table-layout.ts';
import type { Repair } from '../../intake/log.ts';
import type { DataFiles, Run } from '../register.ts';
import { readFormer } from '../sections/former-addresses.ts';
import { readLogs, type StatedLog } from '../sections/log.ts';
import { readReadings, type StatedReading } from '../sections/readings.ts';
import { readRepairs } from '../sections/repairs.ts';
import { readShared, referenceOf, SHARED_KEYS } from '../sections/shared-keys.ts';
import { readTableKey, type StatedTable } from '../sections/table.ts';
import { list, map, optional, readShape, shape, text, textOrList, textOrMap } from '../values/shape.ts';
import { itemOf, type SourceFile } from '../values/source-file.ts';
import type { Reference, Shared } from '../values/stated-value.ts';
import { dateOf } from '../values/values.ts';
import type { Report } from '../yaml/report.ts';

const RUN = shape({
  title: text,
  setup: optional(text),
  date: text,
  ...SHARED_KEYS,
  log: optional(textOrMap),
  logs: optional(map),
  repairs: optional(list),
  readings: optional(list),
  scores: optional(textOrMap),
  surface: optional(textOrMap),
  follows: optional(text),
  was: optional(textOrList),
});

export interface StatedRun {
  readonly source: SourceFile;
  readonly item: ReturnType<typeof itemOf> & Pick<Run, 'was' | 'follows'>;
  readonly setup?: Reference;
  /** The run of which it is a retest. */
  readonly follows?: Reference;
  readonly date: string;
  readonly shared: Shared;
  /** In the author's order; the first has the run's clock. Empty where the run has none. */
  readonly logs: readonly StatedLog[];
  readonly repairs: readonly Repair[];
  readonly readings: readonly StatedReading[];
  readonly scores?: StatedTable;
  readonly surface?: StatedTable;
}

export function readRun(source: SourceFile, data: DataFiles, report: Report): StatedRun {
  const fields = readShape(RUN, source.root, 'a run', source.start, report);
  const setup = referenceOf(fields.setup, 'setup', report);
  const follows = referenceOf(fields.follows, 'follows', report);
  const logs = readLogs(fields, source.start, data, report);
  const scores = readTableKey(fields.scores, 'scores', TABLE_FORMS.scores, data, report);
  const surface = readTableKey(fields.surface, 'surface', TABLE_FORMS.surface, data, report);
  return {
    source,
    item: {
      ...itemOf(source, fields.title, report),
      ...readFormer(fields.was, 'runs', source, report),
      ...(follows ? { follows: follows.value } : {}),
    },
    ...(setup ? { setup } : {}),
    ...(follows ? { follows } : {}),
    date: dateOf(fields.date, 'date', report) ?? '',
    shared: readShared(fields, 'run', source.root.entries.has('setup'), source.placeOf, report),
    logs,
    repairs: readRepairs(fields.repairs, source.placeOf('repairs'), report),
    readings: readReadings(fields.readings, source.placeOf('readings'), report),
    ...(scores ? { scores } : {}),
    ...(surface ? { surface } : {}),
  };
}
