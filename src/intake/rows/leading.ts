/** Rows with more fields than the header has names: whether their first fields go on where the rows before stop. */
import { cellKind } from '../cells/cells.ts';
import { parseNumber } from '../cells/numbers.ts';
import type { Sheet } from '../sheet/open.ts';

/** Rows before the change that show where a column was, and how far it wandered. */
const ROWS_BEFORE = 50;
/** A column may go on this many of its ranges away. Common practice, no source. */
const RANGES = 2;
/** Of a column that did not move: a tenth of its value. Common practice, no source. */
const SHARE = 0.1;

/**
 * True where the new field can only be the last. The first fields of the rows go on as the columns before: same kinds, numbers near
 * those before. And with the new field at any earlier place, some column would not go on: so no value slides into a wrong column.
 */
export function fieldsLead(sheet: Sheet, kept: Int32Array, longer: readonly number[]): boolean {
  const { width } = sheet.structure;
  const [first] = longer;
  if (first === undefined || sheet.records.width(first) !== width + 1) return false;
  const before = kept.subarray(Math.max(0, kept.length - ROWS_BEFORE));
  const goesOn = (field: number, from: number) => continues(sheet, before, field, first, from);
  const columns = Array.from({ length: width }, (_, field) => field);
  if (!columns.every((field) => goesOn(field, field))) return false;
  return columns.every((place) => columns.slice(place).some((field) => !goesOn(field, field + 1)));
}

/** Whether a column goes on with the cell `from` of a later record. */
function continues(
  { records, structure, dialect }: Sheet,
  before: Int32Array,
  field: number,
  record: number,
  from: number,
): boolean {
  const cell = records.cell(record, from);
  const kind = cellKind(cell, dialect.decimal);
  if (kind !== structure.kinds[field] && kind !== 'missing') return false;
  if (kind !== 'number') return true;
  const value = parseNumber(cell, dialect.decimal);
  const all = new Float64Array(before.length);
  records.numbers(before, field, dialect.decimal, 0, all);
  const known = all.filter((number) => !Number.isNaN(number));
  if (Number.isNaN(value) || known.length === 0) return true;
  const [low, high] = [Math.min(...known), Math.max(...known)];
  const reach = high > low ? RANGES * (high - low) : SHARE * Math.abs(high);
  return value >= low - reach && value <= high + reach;
}
