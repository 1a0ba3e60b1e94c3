/** content/runs/<id>.md as its author states it, before its setup is laid under. */
import { TABLE_FORMS } from '../../figures/table-layout.ts';
import type { Repair } from '../../intake/log.ts';
import type { DataFiles, Run } from '../register.ts';
import { readFormer } from '../sections/former-addresses.ts';
import { LOG, ONE_OF_LOGS, readLogs, type StatedLog } from '../sections/log.ts';
import { READING, readReadings, type StatedReading } from '../sections/readings.ts';
import { REPAIR, readRepairs } from '../sections/repairs.ts';
import { readShared, referenceOf, SHARED_KEYS } from '../sections/shared-keys.ts';
import { readTableKey, SCORES, type StatedTable, SURFACE } from '../sections/table.ts';
import { list, map, optional, readShape, required, shape, text, textOrList, textOrMap } from '../values/shape.ts';
import { itemOf, type SourceFile } from '../values/source-file.ts';
import type { Reference, Shared } from '../values/stated-value.ts';
import { dateOf } from '../values/values.ts';
import type { Report } from '../yaml/report.ts';

export const RUN = shape({
  title: required(text, 'what the run is, for readers', { form: 'words' }),
  setup: optional(text, 'the setup that says what this run shares with others', { form: 'id' }),
  date: required(text, 'the day of the test', { form: 'day' }),
  ...SHARED_KEYS,
  log: optional(textOrMap, 'its log; `none` where it has none; a run needs `log` or `logs`', {
    form: 'path',
    keys: { title: '`log` of a run', shape: LOG },
  }),
  logs: optional(map, 'several logs, each under a name; the first has the clock of the run', {
    means: 'names, each with a path or with the keys of a log',
    each: { title: 'a log below `logs` of a run', shape: ONE_OF_LOGS },
    example: 'device: larch-2/fast-soak.csv',
  }),
  repairs: optional(list, 'lines of the log that are dropped or shifted in time', {
    each: { title: 'an item of `repairs`', shape: REPAIR },
  }),
  readings: optional(list, 'what a person read off a display', { each: { title: 'an item of `readings`', shape: READING } }),
  scores: optional(textOrMap, 'its table of scores', {
    form: 'path',
    keys: { title: '`scores` of a run or setup', shape: SCORES },
  }),
  surface: optional(textOrMap, 'its table of surface readings', {
    form: 'path',
    keys: { title: '`surface` of a run or setup', shape: SURFACE },
  }),
  follows: optional(text, 'the run of which it is a retest', { form: 'id', example: 'larch-fast' }),
  was: optional(textOrList, 'where it stood before, so that old links still lead to it', { form: 'page', example: 'runs/old-id/' }),
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
