/** Channels as a setup or run states them, and their merging. */
import { CLOCK_SHOWS, MEASURED_AT, QUANTITY_KINDS } from '../../intake/log.ts';
import type { Place } from '../../problem.ts';
import { columnRange, isColumnRange } from '../values/column-range.ts';
import { keyPlace, mapIn, type NameRule, namedEntries, textIn } from '../values/mapping.ts';
import { isSnakeName, SNAKE_RULE, snakeFromWords } from '../values/names.ts';
import { map, optional, readShape, shape, tellEmpty, text, textOrList } from '../values/shape.ts';
import type { Reference, Stated, StatedChannel } from '../values/stated-value.ts';
import { cut, idOf, lineOf, textsOf, wordOf } from '../values/values.ts';
import type { Entry, MapNode, TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';

export const CHANNEL = shape({
  label: optional(text, 'its name for readers', { form: 'words', otherwise: 'its name, with blanks' }),
  quantity: optional(text, 'what it measures; needed in the run or in its setup', { words: QUANTITY_KINDS }),
  column: optional(text, "the column's header, as the log has it; needed in the run or in its setup", { form: 'column' }),
  unit: optional(text, 'the unit of the readings, where the header does not say it', { means: 'a unit', example: 'A' }),
  unit_reason: optional(text, 'why the unit differs from the one that the header says', {
    form: 'words',
    example: 'the header says mA, and the readings are amperes',
  }),
  at: optional(text, 'where a current, voltage or power is measured', { words: MEASURED_AT, example: 'board input' }),
  instrument: optional(text, 'what measures it; one of `instruments`', { form: 'id', example: 'inline-meter' }),
  missing: optional(textOrList, 'what stands in a cell that has no reading', { means: 'whole cells', example: 'n/a' }),
  bits: optional(map, 'of a throttle flag: what each bit says of now', {
    means: 'numbers of bits, 0 for the lowest, each with its words',
    example: '2: throttled',
  }),
  sticky: optional(map, 'of a throttle flag: bits that stay set until the next boot; they are never counted', {
    means: 'numbers of bits, 0 for the lowest, each with its words',
    example: '18: throttled since boot',
  }),
  shows: optional(text, 'of a clock: what was asked for, or what the clock really was', { words: CLOCK_SHOWS }),
  step: optional(text, 'how finely its readings are told apart, where they do not show it', {
    means: 'a number with the unit of the quantity',
  }),
  log: optional(text, 'the log that has its column, where several have a column of that name', { form: 'name', example: 'meter' }),
});

const CHANNEL_NAMES: NameRule = {
  rule: 'bad-name',
  what: 'a channel',
  fits: isSnakeName,
  expected: SNAKE_RULE,
  better: snakeFromWords,
};

export interface StatedChannels {
  readonly channels: ReadonlyMap<string, StatedChannel>;
  /** Those taken away, with the places of their names. */
  readonly without: readonly Reference[];
}

/**
 * The channels that one file states. Not every key need be there: a run states what differs from its setup.
 *
 * @param inherits - true where a setup stands behind, so that `none` can take a channel away.
 */
export function readChannels(node: MapNode | undefined, inherits: boolean, report: Report): StatedChannels {
  const channels = new Map<string, StatedChannel>();
  const without: Reference[] = [];
  for (const entry of node ? namedEntries(withoutRanges(node), CHANNEL_NAMES, report) : []) {
    if (inherits && entry.value.kind === 'text' && entry.value.text === 'none') {
      without.push({ value: entry.key, place: entry.keyPlace });
      continue;
    }
    const channel = channelOf(entry, report);
    if (channel) channels.set(entry.key, channel);
  }
  for (const entry of node ? rangesOf(node) : [])
    for (const channel of channelsOfRange(entry, report)) channels.set(channel.name, channel);
  return { channels, without };
}

function rangesOf(node: MapNode): Entry[] {
  return [...node.entries.values()].filter(({ key }) => isColumnRange(key));
}

function withoutRanges(node: MapNode): MapNode {
  return { ...node, entries: new Map([...node.entries].filter(([key]) => !isColumnRange(key))) };
}

/** `Sensor 1 .. Sensor 8: temperature, °C`: a channel for each column, named after it. */
function channelsOfRange(entry: Entry, report: Report): StatedChannel[] {
  const columns = columnRange(entry.key);
  if (!columns) {
    report.error('bad-name', entry.keyPlace, `\`${cut(entry.key)}\` is not a range of columns`, {
      expected: 'two names that differ in one number alone, the lower one first, such as `Sensor 1 .. Sensor 8`',
    });
    return [];
  }
  if (entry.value.kind === 'empty') tellEmpty(entry.key, entry.keyPlace, report);
  const value = entry.value.kind === 'empty' ? undefined : textIn(entry, report);
  if (!value) return [];
  const { place } = value;
  const [word = '', unit] = value.text.split(/\s*,\s*/, 2);
  const quantity = wordOf({ ...value, text: word }, 'quantity', QUANTITY_KINDS, report);
  if (!quantity) return [];
  return columns.map((column) => ({
    name: nameOfColumn(column),
    place: entry.keyPlace,
    quantity: { value: quantity, place },
    column: { value: column, place: entry.keyPlace },
    ...(unit === undefined || unit === '' ? {} : { unit: { value: unit, place } }),
  }));
}

/** A name must begin with a letter. */
function nameOfColumn(column: string): string {
  const name = snakeFromWords(column);
  return isSnakeName(name) ? name : `channel_${name}`;
}

function channelOf(entry: Entry, report: Report): StatedChannel | undefined {
  const node = mapIn(entry, report);
  if (!node) return undefined;
  const fields = readShape(CHANNEL, node, 'a channel', entry.keyPlace, report);
  return {
    name: entry.key,
    place: entry.keyPlace,
    ...placed('label', fields.label, (value) => lineOf(value, 'label', report)),
    ...placed('quantity', fields.quantity, (value) => wordOf(value, 'quantity', QUANTITY_KINDS, report)),
    ...placed('column', fields.column, (value) => lineOf(value, 'column', report)),
    ...placed('unit', fields.unit, (value) => lineOf(value, 'unit', report)),
    ...placed('unit_reason', fields.unit_reason, (value) => lineOf(value, 'unit_reason', report)),
    ...placed('at', fields.at, (value) => wordOf(value, 'at', MEASURED_AT, report)),
    ...placed('instrument', fields.instrument, (value) => idOf(value, 'instrument', report)),
    ...placed('missing', fields.missing, (value) =>
      textsOf(value, 'missing', keyPlace(node, 'missing'), report)?.map((item) => item.text),
    ),
    ...placed('bits', fields.bits, (value) => bitsOf('bits', value, keyPlace(node, 'bits'), report)),
    ...placed('sticky', fields.sticky, (value) => bitsOf('sticky', value, keyPlace(node, 'sticky'), report)),
    ...placed('shows', fields.shows, (value) => wordOf(value, 'shows', CLOCK_SHOWS, report)),
    ...(fields.step ? { step: fields.step } : {}),
    ...placed('log', fields.log, (value) => lineOf(value, 'log', report)),
  };
}

type Placed<K extends string, T> = { readonly [key in K]?: Stated<T> };

/** A field of a channel with its place, or no field. */
function placed<K extends string, N extends { readonly place: Place }, T>(
  key: K,
  node: N | undefined,
  read: (node: N) => T | undefined,
): Placed<K, T> {
  const value = node && read(node);
  return (node === undefined || value === undefined ? {} : { [key]: { value, place: node.place } }) as Placed<K, T>;
}

/** Bit number, 0 for the lowest, to the reason that it stands for while it is set. */
function bitsOf(key: 'bits' | 'sticky', node: MapNode, place: Place, report: Report): Readonly<Record<string, string>> {
  if (node.entries.size === 0) tellEmpty(key, place, report);
  const bits: Record<string, string> = {};
  for (const entry of node.entries.values()) {
    if (!/^(?:[0-9]|[1-5][0-9]|6[0-3])$/.test(entry.key)) {
      report.error('bad-bits', entry.keyPlace, `\`${key}\` has the key \`${cut(entry.key)}\``, {
        expected: 'the number of a bit, 0 for the lowest, at most 63',
      });
    }
    if (entry.value.kind === 'empty') tellEmpty(entry.key, entry.keyPlace, report);
    const reason: TextNode | undefined = entry.value.kind === 'empty' ? undefined : textIn(entry, report);
    const line = lineOf(reason, entry.key, report);
    if (line !== undefined) bits[entry.key] = line;
  }
  return bits;
}

/** Channels of the setup less those taken away, with what the run states laid over, key by key; the run's new ones come last. */
export function mergeChannels(setup: ReadonlyMap<string, StatedChannel>, run: StatedChannels): Map<string, StatedChannel> {
  const merged = new Map(setup);
  for (const { value } of run.without) merged.delete(value);
  for (const [name, channel] of run.channels) merged.set(name, { ...merged.get(name), ...channel });
  return merged;
}
