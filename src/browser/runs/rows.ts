/** Which runs answer a query, and in which order. */
import { plainWord } from '../../search/terms.ts';
import type { Query, Range } from './query.ts';

/** A run as the filters see it. */
export interface Row {
  readonly device: string;
  readonly specimen: string;
  readonly maker: string;
  readonly outcomes: readonly string[];
  /** Index of its clock setting, lowest 0; null where it states none. */
  readonly clock: number | null;
  readonly date: string;
  /** All that is said of it, in plain words. */
  readonly text: string;
  /** By name of the order: what it is ordered by; null comes last either way. */
  readonly keys: Readonly<Record<string, string | number | null>>;
}

/** For each row whether it answers; `clocks` are the ids of the settings, lowest first. */
export function answering(rows: readonly Row[], query: Query, clocks: readonly string[]): boolean[] {
  const words = query.words
    .split(/\s+/)
    .filter((word) => word !== '')
    .map(plainWord);
  const clock = indicesOf(query.clock, clocks);
  return rows.map(
    (row) =>
      (query.device === '' || row.device === query.device) &&
      (query.specimen === '' || row.specimen === query.specimen) &&
      (query.maker === '' || row.maker === query.maker) &&
      (query.outcome === '' || row.outcomes.includes(query.outcome)) &&
      (clock === undefined || (row.clock !== null && row.clock >= clock[0] && row.clock <= clock[1])) &&
      (query.date.from === '' || row.date >= query.date.from) &&
      (query.date.to === '' || row.date <= query.date.to) &&
      words.every((word) => row.text.includes(word)),
  );
}

function indicesOf({ from, to }: Range, clocks: readonly string[]): [lowest: number, highest: number] | undefined {
  if (from === '' && to === '') return undefined;
  return [from === '' ? 0 : clocks.indexOf(from), to === '' ? clocks.length - 1 : clocks.indexOf(to)];
}

/** Indices of the rows in an order such as `title` or `-date`. Equal rows stay as they stand in the page. */
export function ordered(rows: readonly Row[], order: string): number[] {
  const descending = order.startsWith('-');
  const name = descending ? order.slice(1) : order;
  const keys = rows.map((row) => row.keys[name] ?? null);
  return rows
    .map((_row, index) => index)
    .sort((a, b) => {
      const [left, right] = [keys[a]!, keys[b]!];
      if (left === right) return a - b;
      if (left === null || right === null) return left === null ? 1 : -1;
      return left < right === descending ? 1 : -1;
    });
}
