/** Which column of a new log is which channel: the setup's channels first, names of our own for the rest. */
import type { InspectedColumn } from '../../intake/inspect.ts';
import type { QuantityKind } from '../../intake/log.ts';
import { snakeFromWords } from '../../register/values/names.ts';
import type { SetupChannel } from './project.ts';

export interface Matched {
  readonly name: string;
  readonly column: InspectedColumn;
  readonly quantity: QuantityKind;
  /** The setup's channel, whose keys need not be repeated. */
  readonly inherited?: SetupChannel;
  /** Name of its log, where another log of the run has a column of the same name. */
  readonly log?: string;
}

export interface Matches {
  readonly channels: readonly Matched[];
  /** Channels of the setup for which the log has no column. */
  readonly absent: readonly string[];
  /** Channels of the setup that may be one of several columns, or none: channels of these names, for the author to say. */
  readonly open: readonly { readonly name: string; readonly choices: readonly string[] }[];
}

/** Quantity of each name that was given to a column, so that one name is one quantity in all logs of a call. */
export type GivenNames = Map<string, QuantityKind>;

/**
 * Matches columns to channels: by the setup's own column, by likeness of names within a quantity, and where a quantity occurs once in
 * setup and log. What remains is not guessed: the setup's channel is left open, with the columns that it might be.
 *
 * @param given - names that other logs of the call were given; this log's are added.
 * @param taken - names of channels of the run's other logs.
 */
export function matchColumns(
  columns: readonly InspectedColumn[],
  setup: readonly SetupChannel[],
  given: GivenNames = new Map(),
  taken: ReadonlySet<string> = new Set(),
): Matches {
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
    const rivals = setup.filter((other) => other.quantity === channel.quantity);
    const fitting = columns.filter((column) => fits(column, channel));
    if (channel.quantity !== undefined && rivals.length === 1 && fitting.length === 1 && free.has(fitting[0]!))
      take(channel, fitting[0]);
  }
  const inherited = setup.flatMap((channel): Matched[] => {
    const column = found.get(channel.name);
    return column ? [{ name: channel.name, column, quantity: channel.quantity ?? column.quantity, inherited: channel }] : [];
  });
  const occupied = new Map([
    ...setup.map(({ name, quantity }) => [name, quantity] as const),
    ...[...taken].map((name) => [name, undefined] as const),
  ]);
  const own = named([...free], occupied, given);
  for (const { name, quantity } of [...inherited, ...own]) given.set(name, quantity);
  const unmatched = setup
    .filter((channel) => !found.has(channel.name))
    .map((channel) => {
      const choices = channel.column === undefined ? own.filter(({ column }) => fits(column, channel)).map(({ name }) => name) : [];
      return { name: channel.name, choices };
    });
  return {
    channels: [...inherited, ...own],
    absent: unmatched.filter(({ choices }) => choices.length === 0).map(({ name }) => name),
    open: unmatched.filter(({ choices }) => choices.length > 0),
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

/** Channels for columns that no setup knows: the header's words as name, its unit left out; with its quantity where the name is taken. */
function named(columns: readonly InspectedColumn[], taken: Map<string, QuantityKind | undefined>, given: GivenNames): Matched[] {
  return columns.map((column) => {
    const words = withoutUnit(column);
    const said = snakeFromWords(withoutLoneCapitals(words)) || snakeFromWords(column.column) || column.quantity;
    // A name begins with a letter.
    const base = /^\d/.test(said) ? `${column.quantity}_${said}` : said;
    const { quantity } = column;
    const isFree = (name: string) => !taken.has(name) && (given.get(name) ?? quantity) === quantity;
    const before = taken.get(base) ?? given.get(base);
    const names = before === undefined || before === quantity ? [base] : [base, `${base}_${quantity}`];
    let name = names.find(isFree) ?? base;
    for (let number = 2; !isFree(name); number++) name = `${base}_${number}`;
    taken.set(name, quantity);
    return { name, column, quantity };
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
