/** Several devices or channels in one log: the column that tells whose a row is. */
import { parseNumber } from '../cells/numbers.ts';
import type { Sheet } from '../sheet/open.ts';

/** Rows looked at, and how many distinct texts a column of names has at most. */
const ROWS = 200;
const MOST_NAMES = 20;
/** What columns are called that tell devices apart. */
const DEVICE = '(?:gpu|cpu|core|sensor|channel|chan|ch|card|device|dev|port|slot|unit|node|host|disk|drive|probe)';
const COUNT = '(?:index|idx|id|no|num|number|nr|addr|address)';
const INDEX = new RegExp(`^(?:#|${COUNT}|${DEVICE}|${DEVICE}[ _.-]?${COUNT})\\.?$`, 'i');

/**
 * The field that tells rows apart: it changes from row to row while the time stays (several rows an instant), or it goes through the
 * same few values again and again (each device at its own instants). Texts need no name for that, whole numbers must be called an index.
 */
export function interleavedColumn(sheet: Sheet): number | null {
  const rows = firstOf(sheet);
  if (rows.length < 3) return null;
  const fields = sheet.keys.map((_, field) => field);
  return (
    fields.find((field) => mayTell(sheet, field, rows) && (partsInstants(sheet, field, rows) || takesTurns(sheet, field, rows))) ??
    null
  );
}

function firstOf({ structure, records }: Sheet): number[] {
  const rows: number[] = [];
  for (let record = structure.firstRow; record < structure.end && rows.length < ROWS; record++) {
    if (records.width(record) === structure.width) rows.push(record);
  }
  return rows;
}

/** A few distinct texts, or a few whole numbers under a name that says index. */
function mayTell({ structure, records, keys, dialect }: Sheet, field: number, rows: readonly number[]): boolean {
  const kind = structure.kinds[field];
  const names = new Set(rows.map((record) => records.cell(record, field).trim()));
  if (names.size < 2 || names.size > MOST_NAMES) return false;
  if (kind === 'text') return true;
  if (kind !== 'number' || !INDEX.test(keys[field]!)) return false;
  return [...names].every((name) => Number.isInteger(parseNumber(name, dialect.decimal)));
}

function pairsOf(rows: readonly number[]): (readonly [number, number])[] {
  return rows.slice(1).map((record, k) => [rows[k]!, record] as const);
}

/** Two pairs in five or more of neighbouring rows are of one instant, and in nearly all of these the column changes. */
function partsInstants({ structure, records, keys }: Sheet, field: number, rows: readonly number[]): boolean {
  const pairs = pairsOf(rows);
  const differs = (other: number, [a, b]: readonly [number, number]) => records.cell(a, other) !== records.cell(b, other);
  const times = keys
    .map((_, other) => other)
    .filter((other) => other !== field && (structure.kinds[other] === 'time' || isCount(keys[other]!)));
  const clocks = times.filter((other) => pairs.some((pair) => differs(other, pair)));
  if (clocks.length === 0) return false;
  const still = pairs.filter((pair) => clocks.every((other) => !differs(other, pair)));
  if (still.length <= 2 || still.length * 5 < pairs.length * 2) return false;
  return still.filter((pair) => differs(field, pair)).length * 10 >= still.length * 9;
}

function isCount(name: string): boolean {
  return /^(?:t|time|timestamp|epoch|seconds?|elapsed|t_s|t_ms|time_s|time_ms)(?:\s*[([].*)?$/i.test(name);
}

/** Rounds that must be seen before a cycle counts. */
const ROUNDS = 3;

/** Each row names the same as the row one round before it. A text that merely alternates by chance does not keep its turn. */
function takesTurns({ records, structure, keys }: Sheet, field: number, rows: readonly number[]): boolean {
  if (structure.kinds[field] === 'text' && !INDEX.test(keys[field]!) && !/name|label|source|tag|kind|type/i.test(keys[field]!))
    return false;
  const names = rows.map((record) => records.cell(record, field).trim());
  const round = new Set(names).size;
  if (names.length < ROUNDS * round || new Set(names.slice(0, round)).size !== round) return false;
  const kept = names.slice(round).filter((name, k) => name === names[k] && name !== names[k + round - 1]).length;
  return kept * 10 >= (names.length - round) * 9;
}
