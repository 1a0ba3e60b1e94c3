/** How a run names its log: a path, or a mapping of the path, what is declared of its time, and how it goes out. */
import { type LogDeclaration, TIME_FORMATS } from '../../intake/log.ts';
import type { Place } from '../../problem.ts';
import type { DataFiles, Sharing } from '../register.ts';
import { dataPathOf } from '../values/data-path.ts';
import { textIn } from '../values/mapping.ts';
import { STEP_OF_ROWS } from '../values/quantity-kinds.ts';
import { quantityOf, statedQuantity } from '../values/quantity-value.ts';
import { map, optional, readShape, type ShapeOf, shape, tellEmpty, text } from '../values/shape.ts';
import { readSharing, shareOf } from '../values/sharing.ts';
import type { StatedTime } from '../values/stated-value.ts';
import { cut, instantOf, lineOf, wordOf } from '../values/values.ts';
import type { MapNode, TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';

const LOG = shape({
  file: text,
  time: optional(map),
  last_line: optional(text),
  rows: optional(map),
  share: optional(text),
  redacted: optional(text),
  elsewhere: optional(text),
});
const SHARED_LOG = shape({ time: optional(map), share: optional(text) });
const TIME_KEYS = {
  column: optional(text),
  format: optional(text),
  unit: optional(text),
  zone: optional(text),
  date_order: optional(text),
  every: optional(text),
};
const SHARED_TIME = shape(TIME_KEYS);
const TIME = shape({ ...TIME_KEYS, start: optional(text) });
const DATE_ORDERS = { 'day first': 'dmy', 'month first': 'mdy' } as const;
const TIME_UNITS = ['ms', 's', 'min', 'h'] as const;

export interface StatedLog {
  readonly file?: string;
  readonly place: Place;
  readonly time: StatedTime;
  /** The author has seen that a last line without a line end is whole. */
  readonly lastLine?: 'whole';
  /** Whose rows are read, where rows of several devices stand in the log. */
  readonly rows?: NonNullable<LogDeclaration['rows']>;
  readonly sharing: Sharing;
}

/** What a setup states of its runs' logs. */
export interface SharedLog {
  readonly time: StatedTime;
  readonly sharing: Sharing;
}

/** The log of a run. */
export function readLog(node: TextNode | MapNode | undefined, place: Place, data: DataFiles, report: Report): StatedLog {
  if (!node) return { place, time: {}, sharing: {} };
  if (node.kind === 'text') {
    const file = dataPathOf(node, 'log', data, report);
    return { ...(file === undefined ? {} : { file }), place: node.place, time: {}, sharing: {} };
  }
  const fields = readShape(LOG, node, '`log`', place, report);
  const file = dataPathOf(fields.file, 'file', data, report);
  const lastLine = wordOf(fields.last_line, 'last_line', ['whole'] as const, report);
  return {
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
  const order = wordOf(fields.date_order, 'date_order', ['day first', 'month first'] as const, report);
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
