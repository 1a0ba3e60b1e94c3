/**
 * The parts of a comparison as it is stored and printed: runs with their figures and what is drawn of them. Their types come from the same
 * description. Strict: what is not named here is refused.
 */
import * as v from 'valibot';
import { QUANTITY_KINDS } from '../../intake/log.ts';
import { isId, isSnakeName } from '../values/names.ts';
import { isDate } from '../values/values.ts';

const text = v.string();
const number = v.pipe(v.number(), v.finite('a number that is not finite'));
const count = v.pipe(v.number(), v.safeInteger('a number that is no whole one'), v.minValue(0, 'a number below 0'));
const sha256 = v.pipe(text, v.regex(/^[0-9a-f]{64}$/, 'a text that is no SHA-256 in hexadecimal'));
/** Ids become addresses. */
export const id = v.pipe(text, v.check(isId, 'a text that is not an id'));
export const date = v.pipe(text, v.check(isDate, 'a text that is not a day'));

const OF = v.record(text, v.union([text, number, v.boolean()]));
const FROM = v.strictObject({
  columns: v.array(text),
  rows: v.nullable(v.tuple([count, count])),
  figures: v.exactOptional(v.array(text)),
  file: v.exactOptional(text),
  others: v.exactOptional(
    v.array(v.strictObject({ columns: v.array(text), rows: v.nullable(v.tuple([count, count])), file: text })),
  ),
});
const PRESENT = v.strictObject({
  value: number,
  unit: text,
  step: v.exactOptional(number),
  own_interval: v.exactOptional(v.literal(true)),
  u: v.nullable(number),
  dof: v.nullable(number),
  interval: v.nullable(v.tuple([number, number])),
  parts: v.nullable(v.record(text, number)),
  definition: text,
  source: text,
  from: FROM,
  inferred: v.exactOptional(v.array(text)),
  of: v.exactOptional(OF),
});
const ABSENT = v.strictObject({
  absent: text,
  why: text,
  bound: v.exactOptional(v.strictObject({ relation: v.picklist(['>', '<']), value: number, unit: text })),
  of: v.exactOptional(OF),
});

export const FIGURES = v.record(text, v.union([PRESENT, ABSENT]));
export const SOURCES = v.record(
  text,
  v.strictObject({ title: text, dof: v.nullable(number), distribution: v.exactOptional(v.literal('rectangular')) }),
);

const POINTS = {
  /** s since the log's first row, ascending. */
  t: v.array(number),
  y: v.array(number),
  /** Positions at which the line begins anew after a gap; without 0. */
  breaks: v.array(count),
};
const NO_LINE = 'a line whose times do not ascend, or whose readings are more or fewer';
const MEANS = v.pipe(
  v.strictObject({
    ...POINTS,
    /** Each is a mean over this time, s, counted from the start of the load. */
    span: number,
    /** Median range of the readings within a span, in the unit of the line. */
    scatter: number,
  }),
  v.check((line) => isLine(line), NO_LINE),
);
const LINE = {
  ...POINTS,
  /** Where the readings scatter: means of all of them, not of the thinned ones. */
  means: v.exactOptional(MEANS),
};

const CHANNEL = v.pipe(
  v.strictObject({
    ...LINE,
    name: text,
    /** Its name for readers, where the author gives one. */
    label: v.exactOptional(text),
    quantity: v.picklist(QUANTITY_KINDS),
    /** Canonical. */
    unit: text,
    at: v.exactOptional(text),
    /** Decimals of the readings in that unit. */
    decimals: count,
    /** How finely the readings are told apart, in that unit, where that is known. */
    step: v.exactOptional(number),
    /** Readings that the log has, before they were thinned. */
    readings: v.exactOptional(count),
    /** Throttle limit in that unit. */
    limit: v.exactOptional(number),
    /** Of a temperature whose ambient is known: rise over it in K, thinned for itself. */
    rise: v.exactOptional(
      v.pipe(
        v.strictObject(LINE),
        v.check((line) => isLine(line), NO_LINE),
      ),
    ),
  }),
  v.check((line) => isLine(line), NO_LINE),
);
/** What is drawn of one run: thinned readings on its own time axis. */
const SERIES = v.strictObject({
  format: v.literal(1),
  run: id,
  /** Start of the load, s since the log's first row; null where there is no load phase. */
  load: v.nullable(number),
  /** s from the log's first row to its last. */
  span: number,
  phases: v.array(v.strictObject({ name: text, from: number, to: number, inferred: v.boolean() })),
  channels: v.array(CHANNEL),
});

const ROWS = v.array(v.strictObject({ label: text, text }));

const LOG = { file: text, sha256, rows: count, span_s: number };

/** Its figures are those of `runs/<id>/figures.json`. */
export const RUN = v.strictObject({
  alias: v.pipe(text, v.check(isRunAlias, 'a text that is no alias')),
  run: id,
  title: text,
  date,
  device: v.strictObject({ id, title: text, maker: text, invented: v.boolean() }),
  specimen: text,
  setting: ROWS,
  conditions: ROWS,
  /** Mean over the load as a figure `ambient` of its own, measured where it was logged (its `of` says so), else as stated; empty where neither is. */
  ambient: v.strictObject({ sources: SOURCES, figures: FIGURES }),
  /** What was logged, and by what; '' where no instrument or place is stated. */
  channels: v.array(v.strictObject({ name: text, quantity: text, at: text, instrument: text })),
  instruments: v.array(v.strictObject({ id, title: text, accuracy: text })),
  /** The first of its logs; absent where it has none. */
  log: v.exactOptional(v.strictObject(LOG)),
  other_logs: v.exactOptional(v.array(v.strictObject({ ...LOG, name: text, begins_s: number, u_s: number }))),
  tables: v.array(v.strictObject({ file: text, sha256 })),
  sources: SOURCES,
  figures: FIGURES,
  series: SERIES,
  cautions: v.array(v.strictObject({ done: v.array(text), risk: text })),
});

/** A run of which nothing but its figures counts: it only says how runs lie apart. */
export const REPEAT = v.strictObject({ run: id, title: text, device: id, specimen: text, sources: SOURCES, figures: FIGURES });

/** Figures that somebody else published, with their source. */
export const QUOTED = v.strictObject({
  id,
  title: text,
  author: text,
  address: text,
  accessed: date,
  conditions: ROWS,
  sources: SOURCES,
  figures: FIGURES,
});

/** Read-only throughout. */
export type Fixed<T> = { readonly [K in keyof T]: Fixed<T[K]> };

export type RecordedRun = Fixed<v.InferOutput<typeof RUN>>;
export type RecordedRepeat = Fixed<v.InferOutput<typeof REPEAT>>;
export type RecordedSeries = Fixed<v.InferOutput<typeof SERIES>>;

/** An alias, from the second run of a setting on with its number. */
function isRunAlias(alias: string): boolean {
  return isSnakeName(alias.replace(/ [1-9][0-9]*$/, ''));
}

interface Line {
  readonly t: readonly number[];
  readonly y: readonly number[];
  readonly breaks: readonly number[];
}

/** Whether a line can be drawn: as many readings as times, times and gaps in ascending order, gaps within. */
function isLine({ t, y, breaks }: Line): boolean {
  return t.length === y.length && ascends(t) && ascends(breaks) && breaks.every((at) => at > 0 && at < t.length);
}

function ascends(values: readonly number[]): boolean {
  return values.every((value, index) => index === 0 || value > values[index - 1]!);
}
