/**
 * A table as it came -> the same in our words: columns renamed, words translated, a wide table made long, the rows of one setting taken.
 * Every cell keeps its place in the file.
 */
import { error, type Place, type Problem } from '../problem.ts';
import { MISSING_MARKERS } from './cells/cells.ts';
import { headName, headUnit, scoreUnit, withoutBrackets } from './cells/heads.ts';
import { nearestName } from './cells/names.ts';
import { parseNumber } from './cells/numbers.ts';
import { listed } from './sheet/pick.ts';
import type { Table, TableRow } from './table.ts';
import type { MappedColumn, TableForm, TableMapping } from './table-mapping.ts';

export interface MappedTable {
  readonly table: Table;
  readonly problems: readonly Problem[];
  /** For each column of the file: the column of ours that it is read as, or null where nothing reads it. */
  readonly readAs: readonly (string | null)[];
  /** Whether rows of the file belong to other settings or runs. */
  readonly partly: boolean;
}

/** One column of the result: where its cells come from. */
interface Source {
  readonly name: string;
  /** Field of the file; -1 where no column has it. */
  readonly field: number;
}

/** Applies a mapping. Without one the table is its own. Never throws. */
export function mapTable(table: Table, mapping: TableMapping | undefined, form: TableForm): MappedTable {
  const readAsIs = (head: string) => [...form.needed, ...form.optional].find((name) => name === headName(head)) ?? null;
  // A second column of a name is not read, so that nothing in it goes out unseen.
  const firsts = table.head.map(readAsIs).map((name, field, all) => (all.indexOf(name) === field ? name : null));
  if (!mapping || table.head.length === 0) return { table, problems: [], readAs: firsts, partly: false };
  const problems: Problem[] = [];
  const chosen = rowsOf(table, mapping, problems);
  const fields = new Map<string, readonly number[]>();
  for (const column of mapping.columns ?? []) fields.set(column.name, fieldsOf(table, column, problems));
  const mapped = new Set([...fields.values()].flat());
  const setting = mapping.rows ? [fieldOf(table, mapping.rows.column) ?? -1] : [];
  table.head.forEach((head, field) => {
    const name = readAsIs(head);
    if (name !== null && !fields.has(name) && !mapped.has(field) && !setting.includes(field)) fields.set(name, [field]);
  });
  const wide = mapping.layout === 'wide' ? form.wide : undefined;
  const taken = new Set([...[...fields.values()].flat(), ...setting]);
  const numeric = wide ? table.head.flatMap((_, field) => (!taken.has(field) && isNumeric(table, field) ? [field] : [])) : [];
  const withUnits = form.unitOf ? [] : numeric.filter((field) => headUnit(table.head[field]!) !== undefined);
  // Beside heads with units, a bare one is the number of a row or a device.
  const items = withUnits.length > 0 ? withUnits : numeric;
  if (problems.length > 0)
    return { table: { ...table, rows: [], problems: [] }, problems, readAs: table.head.map(() => null), partly: false };
  const readAs = table.head.map((_, field) => {
    const ours = [...fields].find(([, all]) => all.includes(field))?.[0];
    return ours ?? (items.includes(field) ? wide!.cell : setting.includes(field) ? 'rows' : null);
  });
  const long = wide ? unfold(table, chosen, fields, items, wide) : repeated(chosen, fields, form, table);
  return { table: inOurWords(table, long, mapping, form), problems, readAs, partly: chosen.length < table.rows.length };
}

function fieldOf(table: Table, head: string): number | undefined {
  const exact = table.head.indexOf(head.trim());
  if (exact >= 0) return exact;
  const same = table.head.flatMap((each, field) => (headName(each) === headName(head) ? [field] : []));
  return same.length === 1 ? same[0] : undefined;
}

function fieldsOf(table: Table, { name, heads, place }: MappedColumn, problems: Problem[]): number[] {
  return heads.flatMap((head) => {
    const field = fieldOf(table, head);
    if (field !== undefined) return [field];
    problems.push(noHead(table, head, place, `\`columns\` says that \`${name}\` is`));
    return [];
  });
}

function noHead(table: Table, head: string, place: Place, says: string): Problem {
  const near = nearestName(head, table.head);
  return error('table-head', place, `${says} \`${head}\`, and ${table.file} has no such column`, {
    expected: `one of ${listed(table.head)}`,
    ...(near === undefined ? {} : { remedy: `did you mean \`${near}\`?` }),
  });
}

function rowsOf(table: Table, { rows }: TableMapping, problems: Problem[]): readonly TableRow[] {
  if (!rows) return table.rows;
  const field = fieldOf(table, rows.column);
  if (field === undefined) {
    problems.push(noHead(table, rows.column, rows.place, '`rows` names'));
    return [];
  }
  const wanted = rows.value.trim();
  const number = parseNumber(wanted, '.');
  const fits = ({ cells }: TableRow) =>
    cells[field] === wanted || (!Number.isNaN(number) && table.number(cells[field]!) === number);
  const chosen = table.rows.filter(fits);
  if (chosen.length === 0 && table.rows.length > 0) {
    const there = [...new Set(table.rows.map(({ cells }) => cells[field]!))].filter((cell) => cell !== '');
    const near = nearestName(wanted, there);
    problems.push(
      error('table-rows', rows.place, `no row of ${table.file} has \`${wanted}\` in the column \`${rows.column}\``, {
        expected: `one of ${listed(there)}`,
        ...(near === undefined ? {} : { remedy: `did you mean \`${near}\`?` }),
      }),
    );
  }
  return chosen;
}

/** A column that can be that of a test or spot: at least one number, and nothing else but empty cells. */
function isNumeric(table: Table, field: number): boolean {
  const filled = table.rows.map(({ cells }) => cells[field]!).filter((cell) => !MISSING_MARKERS.has(cell));
  return filled.length > 0 && filled.every((cell) => !Number.isNaN(table.number(cell)));
}

interface Long {
  readonly sources: readonly Source[];
  readonly rows: readonly TableRow[];
  /** By row: field of the file of each cell. */
  readonly fields: ReadonlyMap<TableRow, readonly number[]>;
}

type Fields = ReadonlyMap<string, readonly number[]>;

/** A row a cell of the wide part. */
function unfold(
  table: Table,
  chosen: readonly TableRow[],
  fields: Fields,
  items: readonly number[],
  wide: NonNullable<TableForm['wide']>,
): Long {
  const others = [...fields].filter(([name]) => name !== wide.head && name !== wide.cell);
  const sources: Source[] = [
    ...others.map(([name, [field = -1]]) => ({ name, field })),
    { name: wide.head, field: -1 },
    { name: wide.cell, field: items[0] ?? -1 },
  ];
  const made = new Map<TableRow, readonly number[]>();
  for (const field of items) {
    for (const row of chosen) {
      if (MISSING_MARKERS.has(row.cells[field]!)) continue;
      const own = others.map(([, [each = -1]]) => each);
      const cells = [...own.map((each) => row.cells[each] ?? ''), withoutBrackets(table.head[field]!), row.cells[field]!];
      made.set({ line: row.line, cells }, [...own, field, field]);
    }
  }
  return { sources, rows: [...made.keys()], fields: made };
}

/** The rows themselves; where the value stands in several columns, a row for each of them. */
function repeated(chosen: readonly TableRow[], fields: Fields, form: TableForm, table: Table): Long {
  const names = [...fields.keys()];
  const several = Math.max(1, ...[...fields.values()].map((all) => all.length));
  const numbered = several > 1 && form.optional.includes('repeat') && !fields.has('repeat');
  const sources = [
    ...names.map((name) => ({ name, field: fields.get(name)![0] ?? -1 })),
    ...(numbered ? [{ name: 'repeat', field: -1 }] : []),
  ];
  const made = new Map<TableRow, readonly number[]>();
  for (const row of chosen) {
    for (let k = 0; k < several; k++) {
      const own = names.map((name) => fields.get(name)![k] ?? fields.get(name)![0] ?? -1);
      const value = own.find((_, at) => fields.get(names[at]!)!.length > 1);
      const cells = own.map((field) => row.cells[field] ?? '');
      const named = numbered ? [withoutBrackets(table.head[value!]!)] : [];
      made.set({ line: row.line, cells: [...cells, ...named] }, [...own, ...(numbered ? [value!] : [])]);
    }
  }
  return { sources, rows: [...made.keys()], fields: made };
}

/** Words, constants and units of the mapping, cell by cell. */
function inOurWords(table: Table, { sources, rows, fields }: Long, mapping: TableMapping, form: TableForm): Table {
  const { words = {}, everyRow = {}, units = {} } = mapping;
  const unit = form.unitOf;
  const names = sources.map(({ name }) => name);
  const constant = Object.keys(everyRow).filter((name) => !names.includes(name));
  const tests = mapping.tests && form.wide ? ['better', ...(unit ? [unit.unit] : [])] : [];
  const more = [...new Set([...constant, ...tests, ...(unit ? [unit.unit] : [])])].filter((name) => !names.includes(name));
  const all = [...names, ...more];
  // Columns of unlike units in one column of ours: each cell carries its own.
  const unlike = new Set(
    names.filter((name, at) => {
      const spellings = new Set(rows.map((row) => unitAt(table, fields.get(row)![at] ?? -1)));
      return name !== unit?.cell && units[name] === undefined && spellings.size > 1;
    }),
  );
  const made = new Map<TableRow, readonly number[]>();
  for (const row of rows) {
    const from = fields.get(row)!;
    const cells = all.map((name, at) => translated(row.cells[at] ?? '', words) || everyRow[name] || '');
    names.forEach((name, at) => {
      const own = unlike.has(name) ? unitAt(table, from[at] ?? -1) : undefined;
      if (own !== undefined && !Number.isNaN(table.number(cells[at]!))) cells[at] = `${cells[at]} ${own}`;
    });
    const cell = (name: string) => cells[all.indexOf(name)] ?? '';
    const fill = (name: string, text: string | undefined) => {
      const at = all.indexOf(name);
      if (at >= 0 && cells[at] === '' && text !== undefined) cells[at] = text;
    };
    const declared = form.wide ? mapping.tests?.[cell(form.wide.head)] : undefined;
    fill('better', declared?.better);
    if (unit) {
      const field = from[all.indexOf(unit.cell)] ?? -1;
      fill(unit.unit, declared?.unit ?? units[unit.cell] ?? (field < 0 ? undefined : scoreUnit(table.head[field]!)));
    }
    made.set({ line: row.line, cells }, from);
  }
  return {
    ...table,
    heads: all.map((_, at) => table.head[sources[at]?.field ?? -1] ?? ''),
    head: all.map((name, at) =>
      unit?.cell === name || unlike.has(name) ? name : withUnit(name, units[name] ?? unitAt(table, sources[at]?.field ?? -1)),
    ),
    rows: [...made.keys()],
    placeOf: (row, column) => {
      const field = made.get(row)?.[column] ?? -1;
      const original = table.rows.find(({ line }) => line === row.line)!;
      return table.placeOf(original, Math.max(0, field));
    },
  };
}

function translated(cell: string, words: Readonly<Record<string, string>>): string {
  if (Object.hasOwn(words, cell)) return words[cell]!;
  const same = Object.keys(words).find((word) => word.toLowerCase() === cell.toLowerCase());
  return same === undefined ? cell : words[same]!;
}

function unitAt(table: Table, field: number): string | undefined {
  return field < 0 ? undefined : headUnit(table.head[field]!);
}

function withUnit(name: string, unit: string | undefined): string {
  return unit === undefined ? name : `${name} [${unit}]`;
}
