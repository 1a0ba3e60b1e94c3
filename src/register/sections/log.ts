/** How a run names its log: a path, or a mapping of the path, what is declared of its time, and how it goes out. */
import type { Offset } from '../../figures/alignment/align.ts';
import { type LogDeclaration, TIME_FORMATS } from '../../intake/log.ts';
import type { Place } from '../../problem.ts';
import { type DataFiles, SHARES, type Sharing } from '../register.ts';
import { dataPathOf } from '../values/data-path.ts';
import { mapIn, type NameRule, namedEntries, textIn } from '../values/mapping.ts';
import { isSnakeName, SNAKE_RULE, snakeFromWords } from '../values/names.ts';
import { TIME as A_TIME, STEP_OF_ROWS } from '../values/quantity-kinds.ts';
import { quantityOf, statedQuantity } from '../values/quantity-value.ts';
import { map, optional, readShape, required, type ShapeOf, shape, tellEmpty, text } from '../values/shape.ts';
import { readSharing, shareOf } from '../values/sharing.ts';
import type { StatedTime } from '../values/stated-value.ts';
import { cut, instantOf, lineOf, wordOf } from '../values/values.ts';
import type { MapNode, TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';

const DATE_ORDERS = { 'day first': 'dmy', 'month first': 'mdy' } as const;
const DATE_ORDER_WORDS = ['day first', 'month first'] as const;
const TIME_UNITS = ['ms', 's', 'min', 'h'] as const;
const TIME_KEYS = {
  column: optional(text, 'the column of the time, where two could be it', { form: 'column' }),
  format: optional(text, 'how the time is written, where it can be read in two ways', { words: TIME_FORMATS }),
  unit: optional(text, 'the unit of a counter that states none', { words: TIME_UNITS, example: 's' }),
  zone: optional(text, 'the zone of times that state none', { form: 'time zone', example: 'Europe/Vienna' }),
  date_order: optional(text, 'the order of day and month, where no date of the log tells', { words: DATE_ORDER_WORDS }),
  every: optional(text, 'the fixed step from row to row of a log without a time', { quantity: STEP_OF_ROWS }),
};
const SHARED_TIME = shape(TIME_KEYS);
const TIME = shape({
  ...TIME_KEYS,
  start: optional(text, 'the instant at which the elapsed time of the log was zero', {
    form: 'instant',
    example: '2026-03-14T09:00:00Z',
  }),
});

const SHARE = optional(text, 'how much of the log goes out', {
  words: SHARES,
  otherwise: 'as it came, if the run reads all of it; else cleaned only',
});
const OFFSET = optional(text, 'what is added to its clock, where both logs tell date and zone', {
  means: 'a time, with `±` where it is not sure; or `by load edge`, which finds it from what both logs show',
  example: 'by load edge',
});
const STARTS = optional(text, 'when its first row stands after that of the first log, whatever its clock says', {
  means: 'a time, with `±` where it is not sure',
  example: '37 ± 1 s',
});
const LOG_KEYS = {
  file: required(text, 'where the log is', { form: 'path' }),
  time: optional(map, 'how its time is read, where the log does not tell', { keys: { title: '`time` below `log`', shape: TIME } }),
  last_line: optional(text, 'you have seen that the last line, which has no line end, is whole', { words: ['whole'] }),
  rows: optional(map, 'whose rows are read, where several devices stand in one log', {
    means: 'one column and one of its values',
    example: 'gpu_index: 0',
  }),
  share: SHARE,
  redacted: optional(text, 'a second file that goes out in its place', { form: 'path' }),
  elsewhere: optional(text, 'where a log stands that is too large to publish', { form: 'address' }),
};
export const LOG = shape(LOG_KEYS);
export const ONE_OF_LOGS = shape({ ...LOG_KEYS, offset: OFFSET, starts: STARTS });
const SHARED_TIME_KEY = optional(map, 'how the time of its logs is read', {
  keys: { title: '`time` below `log` of a setup', shape: SHARED_TIME },
});
export const SHARED_LOG = shape({ time: SHARED_TIME_KEY, share: SHARE });
export const SHARED_ONE_OF_LOGS = shape({ time: SHARED_TIME_KEY, share: SHARE, offset: OFFSET, starts: STARTS });
const LOG_NAMES: NameRule = {
  rule: 'bad-name',
  what: 'a log',
  fits: isSnakeName,
  expected: SNAKE_RULE,
  better: snakeFromWords,
};
/** In the place of a path: the run has no log. */
const NONE = 'none';
/** As an offset: found from what both logs show. */
const BY_EDGE = 'by load edge';

export interface StatedLog {
  /** '' where it is the only one. */
  readonly name: string;
  readonly file?: string;
  readonly place: Place;
  readonly time: StatedTime;
  /** The author has seen that a last line without a line end is whole. */
  readonly lastLine?: 'whole';
  /** Whose rows are read, where rows of several devices stand in the log. */
  readonly rows?: NonNullable<LogDeclaration['rows']>;
  readonly sharing: Sharing;
  readonly offset?: Offset;
}

/** What a setup states of its runs' logs. */
export interface SharedLog {
  readonly time: StatedTime;
  readonly sharing: Sharing;
  readonly offset?: Offset;
}

/** The log of a run under `log`, those under `logs`, or none. */
export function readLogs(
  { log, logs }: { readonly log?: TextNode | MapNode | undefined; readonly logs?: MapNode | undefined },
  start: Place,
  data: DataFiles,
  report: Report,
): StatedLog[] {
  if (log && logs) {
    report.error('bad-logs', log.place, 'the run has `log` and `logs`', {
      expected: '`log` where there is one, `logs` with a name for each where there are several',
      remedy: 'move it below `logs`, under a name of its own',
    });
    return [];
  }
  if (logs) return severalLogs(logs, data, report);
  if (log?.kind === 'text' && log.text === NONE) return [];
  if (log) return [readLog('', log, log.place, data, report)];
  report.error('missing-key', start, 'a run needs the key `log`', {
    remedy:
      'write for instance `log: larch-2/fast-soak.csv`; `logs:` with a name for each where there are several; `log: none` where there is none',
  });
  return [];
}

function severalLogs(node: MapNode, data: DataFiles, report: Report): StatedLog[] {
  const logs = namedEntries(node, LOG_NAMES, report).flatMap((entry): StatedLog[] => {
    const { value, key, keyPlace } = entry;
    if (value.kind === 'text') return [readLog(key, value, value.place, data, report)];
    const own = mapIn(entry, report);
    return own ? [readLog(key, own, keyPlace, data, report)] : [];
  });
  if (node.entries.size === 0) tellEmpty('logs', node.place, report);
  const [first] = logs;
  if (first?.offset)
    report.error('bad-logs', first.place, `the log \`${first.name}\` stands first and has \`${KEY_OF[first.offset.by]}\``, {
      expected: 'the first log to have the clock of the run, and `offset` or `starts` with the others',
      remedy: `move \`${KEY_OF[first.offset.by]}\` to the other log, with the opposite sign`,
    });
  return logs;
}

function readLog(name: string, node: TextNode | MapNode, place: Place, data: DataFiles, report: Report): StatedLog {
  if (node.kind === 'text') {
    const file = dataPathOf(node, name === '' ? 'log' : name, data, report);
    return { name, ...(file === undefined ? {} : { file }), place: node.place, time: {}, sharing: {} };
  }
  const fields = readShape(name === '' ? LOG : ONE_OF_LOGS, node, name === '' ? '`log`' : `the log \`${name}\``, place, report);
  const file = dataPathOf(fields.file, 'file', data, report);
  const lastLine = wordOf(fields.last_line, 'last_line', ['whole'] as const, report);
  const offset = name === '' ? undefined : clockOf(fields as ClockFields, report);
  return {
    name,
    ...(offset ? { offset } : {}),
    ...(file === undefined ? {} : { file }),
    place: fields.file?.place ?? place,
    time: ownTimeOf(fields.time, report),
    ...(lastLine === undefined ? {} : { lastLine }),
    ...rowsOf(fields.rows, report),
    sharing: readSharing(fields, data, report),
  };
}

/** One column and its value. */
export function rowsOf(node: MapNode | undefined, report: Report): Pick<StatedLog, 'rows'> {
  if (!node) return {};
  const [entry, ...others] = node.entries.values();
  if (!entry || others.length > 0) {
    report.error('bad-rows', node.place, entry ? '`rows` names several columns' : '`rows` names no column', {
      expected: 'one column and whose rows are read, such as `gpu_index: 0`',
    });
    return {};
  }
  const value = entry.value.kind === 'empty' ? undefined : textIn(entry, report);
  if (entry.value.kind === 'empty') tellEmpty(entry.key, entry.keyPlace, report);
  return value ? { rows: { column: entry.key, value: value.text, place: entry.keyPlace } } : {};
}

/** The log of a setup: only what its runs' logs share, never a file. */
export function readSharedLog(node: MapNode | undefined, report: Report): SharedLog {
  if (!node) return { time: {}, sharing: {} };
  const fields = readShape(SHARED_LOG, node, '`log` of a setup', node.place, report);
  const share = shareOf(fields.share, report);
  return { time: sharedTimeOf(fields.time, report), sharing: share === undefined ? {} : { share } };
}

/** Logs of a setup, by the names that its runs give them: what they share, never a file. */
export function readSharedLogs(node: MapNode | undefined, report: Report): Map<string, SharedLog> {
  const named = (node ? namedEntries(node, LOG_NAMES, report) : []).flatMap((entry): [string, SharedLog][] => {
    const own = mapIn(entry, report);
    if (!own) return [];
    const fields = readShape(SHARED_ONE_OF_LOGS, own, `the log \`${entry.key}\` of a setup`, entry.keyPlace, report);
    const offset = clockOf(fields, report);
    const share = shareOf(fields.share, report);
    const sharing = share === undefined ? {} : { share };
    return [[entry.key, { time: sharedTimeOf(fields.time, report), sharing, ...(offset ? { offset } : {}) }]];
  });
  return new Map(named);
}

/** The key by which the author states it. */
const KEY_OF: Readonly<Record<Offset['by'], string>> = { offset: 'offset', 'load edge': 'offset', start: 'starts' };

interface ClockFields {
  readonly offset?: TextNode | undefined;
  readonly starts?: TextNode | undefined;
}

/** `offset: 37 s`, `offset: by load edge` or `starts: 37 ± 1 s`; one of them. */
function clockOf({ offset, starts }: ClockFields, report: Report): Offset | undefined {
  if (offset && starts) {
    report.error('bad-logs', starts.place, '`offset` and `starts` are both stated', {
      expected: '`offset` for what is added to its clock, or `starts` for when its first row stands after that of the first log',
      remedy: 'leave one of them',
    });
    return undefined;
  }
  if (offset?.text === BY_EDGE) return { by: 'load edge' };
  return starts ? statedClock(starts, 'start', report) : offset && statedClock(offset, 'offset', report);
}

function statedClock(node: TextNode, by: 'offset' | 'start', report: Report): Offset | undefined {
  const stated = statedQuantity(node, KEY_OF[by], A_TIME, report);
  if (!stated) return undefined;
  const { value, parts } = quantityOf(stated, 'check', '');
  const [part] = parts ?? [];
  return {
    by,
    seconds: value,
    u: Math.abs(part?.share ?? 0),
    ...(part?.source.distribution ? { distribution: part.source.distribution } : {}),
    text: node.text,
  };
}

function ownTimeOf(node: MapNode | undefined, report: Report): StatedTime {
  if (!node) return {};
  const fields = readShape(TIME, node, '`time`', node.place, report);
  const start = instantOf(fields.start, 'start', report);
  return { ...timeOf(fields, report), ...(start === undefined ? {} : { start }) };
}

/** When a log began is its run's own. */
function sharedTimeOf(node: MapNode | undefined, report: Report): StatedTime {
  return node ? timeOf(readShape(SHARED_TIME, node, '`time` of a setup', node.place, report), report) : {};
}

function timeOf(fields: ShapeOf<typeof SHARED_TIME>, report: Report): StatedTime {
  const column = lineOf(fields.column, 'column', report);
  const format = wordOf(fields.format, 'format', TIME_FORMATS, report);
  const unit = wordOf(fields.unit, 'unit', TIME_UNITS, report);
  const zone = zoneOf(fields.zone, report);
  const order = wordOf(fields.date_order, 'date_order', DATE_ORDER_WORDS, report);
  const every = everyOf(fields, report);
  if (unit !== undefined && (format === 'iso8601' || format === 'clock')) {
    report.error('bad-quantity', fields.unit!.place, `\`unit\` does not go with the format \`${format}\``, {
      remedy: 'remove this line; hours, minutes and seconds are named by the format',
    });
  }
  return {
    ...(column === undefined ? {} : { column }),
    ...(format === undefined ? {} : { format }),
    ...(unit === undefined ? {} : { unit }),
    ...(zone === undefined ? {} : { zone }),
    ...(order === undefined ? {} : { order: DATE_ORDERS[order] }),
    ...(every === undefined ? {} : { every }),
  };
}

/** Seconds from row to row of a log that holds no time. */
function everyOf(fields: ShapeOf<typeof SHARED_TIME>, report: Report): number | undefined {
  const stated = statedQuantity(fields.every, 'every', STEP_OF_ROWS, report);
  if (stated && (fields.column || fields.format || fields.unit)) {
    report.error('bad-quantity', fields.every!.place, '`every` is of a log without a time, and a time column is declared too', {
      remedy: 'remove `every`, or the `column`, `format` and `unit` of the time',
    });
    return undefined;
  }
  return stated && quantityOf(stated, 'check', '').value;
}

/** An offset, `UTC`, or a name with the form of the IANA time zone database. Whether the zone exists shows where it is used. */
const ZONE = /^(?:UTC|[+-](?:0\d|1[0-4]):[0-5]\d|[A-Z][A-Za-z_]+(?:\/[A-Za-z0-9_+-]+)+)$/;

function zoneOf(node: TextNode | undefined, report: Report): string | undefined {
  if (!node || ZONE.test(node.text)) return node?.text;
  report.error('bad-zone', node.place, `\`zone\` is \`${cut(node.text)}\``, {
    expected: 'a name of the IANA time zone database such as `Europe/Vienna`, an offset such as `+01:00`, or `UTC`',
    remedy: 'abbreviations such as CET or EST are ambiguous: write the name or the offset',
  });
  return undefined;
}
