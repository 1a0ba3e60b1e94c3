/** Lines of `time=… temp=… clock=…`: every cell begins with its name, and the names are the same in every line. */
import { numbersOf, type Records } from './records.ts';

const NAMED = /^\s*([A-Za-z_][\w.-]*)=/;
/** Lines looked at before the rest. */
const SAMPLE = 20;

/** Names and records without them; null for any other form. At least two lines of two cells. */
export function namesInCells(records: Records): { readonly names: readonly string[]; readonly records: Records } | null {
  const names = namesOf(records, 0);
  if (names === null || names.length < 2) return null;
  let lines = 0;
  for (let record = 0; record < Math.min(records.count, SAMPLE); record++) if (hasNames(records, record, names)) lines++;
  if (lines < 2 || lines * 2 < Math.min(records.count, SAMPLE)) return null;
  const cell = (record: number, field: number) => withoutName(records.cell(record, field), names[field]);
  const row = (record: number) => Array.from({ length: records.width(record) }, (_, field) => cell(record, field));
  return { names, records: { ...records, cell, row, numbers: numbersOf(cell), stamp: () => false } };
}

function namesOf(records: Records, record: number): string[] | null {
  if (record >= records.count) return null;
  const names = records.row(record).map((cell) => NAMED.exec(cell)?.[1]);
  return names.every((name) => name !== undefined) ? names : null;
}

function hasNames(records: Records, record: number, names: readonly string[]): boolean {
  const own = namesOf(records, record);
  return own !== null && own.length === names.length && own.every((name, k) => name === names[k]);
}

/** A cell under another name than its column's keeps it, and so is no number: values never slide into another column. */
function withoutName(cell: string, name: string | undefined): string {
  const trimmed = cell.trimStart();
  return name !== undefined && trimmed.startsWith(`${name}=`) ? trimmed.slice(name.length + 1) : cell;
}
