/** A log that is read at once: its bytes -> a Log. */
import { compareProblems, error, type Problem, warning } from '../problem.ts';
import { readChannel } from './columns/channels.ts';
import type { Log, LogDeclaration, Repair, SetAside } from './log.ts';
import { type Acknowledged, acknowledged } from './report/known.ts';
import { unreachedPhases } from './report/phase-starts.ts';
import { declaredDrops, idleRepairs } from './report/repairs.ts';
import { reporterFor } from './report/report.ts';
import { refuseForm } from './rows/form.ts';
import { findRows } from './rows/rows.ts';
import { rowsWhere } from './rows/rows-where.ts';
import { type Unread, unreadOf } from './rows/unread.ts';
import { placeOfLine } from './sheet/lines.ts';
import { hiddenNames, openSheet, type Sheet } from './sheet/open.ts';
import { NO_TIME, readTime } from './time/read-time.ts';

export interface ReadLog {
  /** null where an error makes the log unusable. */
  readonly log: Log | null;
  /** What the file holds besides; null without a log. */
  readonly unread: Unread | null;
  readonly problems: readonly Problem[];
}

/**
 * bytes -> text (decode) -> records and structure (open) -> rows -> one time axis -> channels in canonical units.
 *
 * @param file - project path (`data/…`), for problems about cells and rows; problems of the declaration stand at its own places.
 * Never throws; problems come in the order of files and lines. A declared channel that cannot be read is an error and leaves no log: figures without it would be of another run.
 */
export function readWhole(bytes: Uint8Array, declaration: LogDeclaration, file: string): ReadLog {
  const sheet = openSheet(bytes, file);
  const refusal = refuseForm(sheet, declaration.rows);
  if (refusal) return { log: null, unread: null, problems: [...sheet.problems, refusal] };
  const known = acknowledged(declaration);
  const reporter = reporterFor(sheet, known);
  const drops = declaredDrops(sheet, declaration.repairs);
  const rows = findRows(sheet, reporter, drops, declaration.lastLine === 'whole');
  const chosen = rowsWhere(sheet, rows.records, declaration);
  const refused = [...rows.problems, ...chosen.problems].some(({ severity }) => severity === 'error');
  const time = refused ? NO_TIME : readTime(sheet, chosen.records, declaration, reporter);
  const channels = time.axis
    ? declaration.channels.map((channel) => readChannel(sheet, channel, time.kept, reporter))
    : checkColumns(sheet, declaration);
  reporter.close();
  const counts = new Map<Repair, number>([...drops.counts, ...time.shifted]);
  const problems = [
    ...sheet.problems,
    ...hiddenNames(sheet),
    ...rows.problems,
    ...chosen.problems,
    ...time.problems,
    ...channels.flatMap((channel) => channel.problems),
    ...reporter.problems,
    ...(time.axis ? idleRepairs(counts, declaration) : []),
    ...(time.axis ? unreachedPhases(declaration, time.axis) : []),
    ...(time.axis ? fewRows(sheet, declaration, time.kept.length) : []),
  ]
    .filter((problem) => !isKnown(problem, file, known))
    .concat(time.axis ? known.idle() : [])
    .sort(compareProblems);
  const read = channels.flatMap(({ channel }) => (channel ? [channel] : []));
  if (!time.axis || read.length < declaration.channels.length) return { log: null, unread: null, problems };
  const log: Log = {
    file: declaration.file,
    rows: time.kept.length,
    lines: time.kept.map((record) => sheet.records.lines[record]!),
    time: time.axis,
    channels: read,
    setAside: [...reporter.setAside].sort(byLine),
    repairs: [...counts].map(([repair, count]) => ({ repair, rows: count })),
    ...(declaration.known ? { known: known.entries() } : {}),
    inferences: [
      ...sheet.inferences,
      ...rows.inferences,
      ...chosen.inferences,
      ...time.inferences,
      ...channels.flatMap((channel) => channel.inferences),
    ],
    encoding: sheet.decoded.encoding,
    delimiter: sheet.dialect.delimiter,
    ...(sheet.packing.with === 'gzip' ? { packed: 'gzip' as const } : {}),
  };
  const unread = unreadOf(sheet, declaration, { timeFields: time.fields, kept: time.kept, setAside: log.setAside });
  return { log, unread, problems };
}

/** A warning about lines of which the author has said why they are so. */
function isKnown({ severity, place, found }: Problem, file: string, known: Acknowledged): boolean {
  return severity === 'warning' && place.file === file && known.takes(place.line, found);
}

/** Without a time axis the declared columns are still looked up, so that all of an author's slips come together. */
function checkColumns(sheet: Sheet, declaration: LogDeclaration): ReturnType<typeof readChannel>[] {
  const silent = reporterFor(sheet);
  return declaration.channels.map((channel) => readChannel(sheet, channel, new Int32Array(0), silent));
}

function byLine(a: SetAside, b: SetAside): number {
  return a.line - b.line || (a.column ?? 0) - (b.column ?? 0);
}

function fewRows(sheet: Sheet, declaration: LogDeclaration, rows: number): Problem[] {
  const { first, end } = sheet.structure;
  if (rows > 1) return [];
  if (rows === 0 && first < end) {
    const remedy = 'see the rows that were set aside, and the repairs that drop lines';
    return [error('no-rows', declaration.place, `no row of ${declaration.file} is left`, { expected: 'rows of readings', remedy })];
  }
  const found = rows === 0 ? 'the log has a header and no rows' : 'the log has one row';
  return [
    warning(
      'few-rows',
      placeOfLine(sheet.file, sheet.lines, Math.max(sheet.lines.count, 1)),
      `${found}: no step, mean or steady state can be computed`,
    ),
  ];
}
