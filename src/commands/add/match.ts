/** Which column of a new log is which channel: the setup's channels first, names of our own for the rest. */
import type { InspectedColumn } from '../../intake/inspect.ts';
import type { QuantityKind } from '../../intake/log.ts';
import { snakeFromWords } from '../../register/names.ts';
import type { SetupChannel } from './project.ts';

export interface Matched {
  readonly name: string;
  readonly column: InspectedColumn;
  readonly quantity: QuantityKind;
  /** The setup's channel, whose keys need not be repeated. */
  readonly inherited?: SetupChannel;
}

export interface Matches {
  readonly channels: readonly Matched[];
  /** Channels of the setup for which the log has no column. */
  readonly absent: readonly string[];
}

/** Matches columns to channels: by the setup's own column, then by likeness of names within a quantity, then by order. */
export function matchColumns(columns: readonly InspectedColumn[], setup: readonly SetupChannel[]): Matches {
  const free = new Set(columns);
  const found = new Map<string, InspectedColumn>();
  const take = (channel: SetupChannel, column: InspectedColumn | undefined) => {
    if (!column || found.has(channel.name)) return;
    found.set(channel.name, column);
    free.delete(column);
  };
  for (const channel of setup)
    take(
      channel,
      [...free].find((column) => column.column === channel.column),
    );
  const open = () => setup.filter((channel) => !found.has(channel.name) && channel.column === undefined);
  for (const channel of open())
    take(
      channel,
      likest(
        channel,
        [...free].filter((column) => fits(column, channel)),
      ),
    );
  for (const channel of open()) {
    const rivals = open().filter((other) => other.quantity === channel.quantity);
    const columnsLeft = [...free].filter((column) => fits(column, channel));
    if (rivals.length === columnsLeft.length) take(channel, columnsLeft[0]);
  }
  const inherited = setup.flatMap((channel): Matched[] => {
    const column = found.get(channel.name);
    return column ? [{ name: channel.name, column, quantity: channel.quantity ?? column.quantity, inherited: channel }] : [];
  });
  return {
    channels: [...inherited, ...named([...free], new Set(setup.map(({ name }) => name)))],
    absent: setup.filter((channel) => !found.has(channel.name)).map(({ name }) => name),
  };
}

function fits(column: InspectedColumn, channel: SetupChannel): boolean {
  return channel.quantity === undefined || column.quantity === channel.quantity;
}

/** The one column whose name holds a word of the channel's name. */
function likest(channel: SetupChannel, columns: readonly InspectedColumn[]): InspectedColumn | undefined {
  const words = channel.name.split('_').filter((word) => word.length > 1);
  const like = columns.filter((column) =>
    words.some((word) => snakeFromWords(withoutLoneCapitals(column.column)).split('_').includes(word)),
  );
  return like.length === 1 ? like[0] : undefined;
}

/** Channels for columns that no setup knows: the header's words as name, its unit left out. */
function named(columns: readonly InspectedColumn[], taken: Set<string>): Matched[] {
  return columns.map((column) => {
    const words = withoutUnit(column);
    const base = snakeFromWords(withoutLoneCapitals(words)) || snakeFromWords(column.column) || column.quantity;
    let name = base;
    for (let number = 2; taken.has(name); number++) name = `${base}_${number}`;
    taken.add(name);
    return { name, column, quantity: column.quantity };
  });
}

/** `SoC` is one word, `BoardTemp` is two. */
function withoutLoneCapitals(words: string): string {
  return words.replace(/(\p{Ll})(\p{Lu})(?!\p{L})/gu, (_, small: string, capital: string) => small + capital.toLowerCase());
}

/** The header's words less the unit, wherever it was found. */
function withoutUnit({ column, unit, unitWhy }: InspectedColumn): string {
  const words = column.replace(/\s*[([][^()[\]]*[)\]]\s*$/, '');
  if (unit === undefined || !/suffix|last word|slash|comma/.test(unitWhy)) return words;
  return words.replace(/\s*[-_./,\s]\s*[^-_./,\s]+$/, '');
}
