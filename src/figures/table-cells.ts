/** Cells of a small table by the names of its columns, with located problems: what surface readings and attempts share. */
import { headName, headUnit } from '../intake/cells/heads.ts';
import type { Table, TableRow } from '../intake/table.ts';
import { error, type Place, type Problem, warning } from '../problem.ts';
import { nearest } from '../quantities/nearest.ts';
import { isParseFailure, type ParseOptions, parseQuantity } from '../quantities/parse.ts';
import type { Quantity } from '../quantities/quantity.ts';
import { standardUncertainty } from '../quantities/uncertainty.ts';

export interface Column {
  readonly index: number;
  /** As the header has it. */
  readonly head: string;
  /** Unit that stands in the header. */
  readonly unit?: string;
}

export interface Cells<Name extends string> {
  readonly table: Table;
  /** For rules' names: `surface`, `attempts`. */
  readonly kind: string;
  readonly columns: ReadonlyMap<Name, Column>;
  readonly problems: Problem[];
}

/** Finds the columns of a table. A missing one that is needed is an error, an unknown one a warning: nothing reads it. */
export function cellsOf<Name extends string>(
  table: Table,
  kind: string,
  needed: readonly Name[],
  optional: readonly Name[],
): Cells<Name> {
  const known = [...needed, ...optional];
  const columns = new Map<Name, Column>();
  const problems: Problem[] = [];
  table.head.forEach((head, index) => {
    const name = known.find((each) => each === headName(head));
    const unit = headUnit(head);
    if (name === undefined) problems.push(unknownColumn(table, kind, head, known));
    else if (columns.has(name)) problems.push(secondColumn(table, kind, head, columns.get(name)!.head));
    else columns.set(name, { index, head: table.heads?.[index] || head, ...(unit === undefined ? {} : { unit }) });
  });
  for (const name of needed) if (!columns.has(name) && table.head.length > 0) problems.push(noColumn(table, kind, name, needed));
  return { table, kind, columns, problems };
}

function unknownColumn(table: Table, kind: string, head: string, known: readonly string[]): Problem {
  const near = nearest(headName(head), known);
  return warning(`${kind}-column`, table.headPlace, `nothing reads the column \`${head}\``, {
    expected: `columns ${known.join(', ')}`,
    ...(near === undefined ? {} : { remedy: `did you mean \`${near}\`?` }),
  });
}

function secondColumn(table: Table, kind: string, head: string, first: string): Problem {
  return warning(`${kind}-column`, table.headPlace, `nothing reads the column \`${head}\`: \`${first}\` has the same name`, {
    remedy: 'give one of them another name, or say under `columns` which is meant',
  });
}

function noColumn(table: Table, kind: string, name: string, needed: readonly string[]): Problem {
  const remedy = `name the columns ${needed.join(', ')} in the first line`;
  return error(`${kind}-column`, table.headPlace, `no column \`${name}\``, { remedy });
}

/** The text of a cell; '' where it is empty or the table has no such column. */
export function textOf<Name extends string>({ columns }: Cells<Name>, row: TableRow, name: Name): string {
  const column = columns.get(name);
  return column === undefined ? '' : row.cells[column.index]!;
}

/** Where a cell of a row stands; the head of the table where it has no such column. */
export function placeOfCell<Name extends string>({ table, columns }: Cells<Name>, row: TableRow, name: Name): Place {
  const column = columns.get(name);
  return column === undefined ? table.headPlace : table.placeOf(row, column.index);
}

/** Reports what is wrong with a cell. */
export function tellCell<Name extends string>(
  cells: Cells<Name>,
  row: TableRow,
  name: Name,
  found: string,
  more: Pick<Problem, 'expected' | 'remedy'> = {},
): null {
  cells.problems.push(error(`${cells.kind}-${name.replaceAll('_', '-')}`, placeOfCell(cells, row, name), found, more));
  return null;
}

export interface Wanted extends ParseOptions {
  /** Canonical unit that the quantity must have. */
  readonly canonical: string;
  /** Unit of a bare number where the header states none; without it a bare number is a problem. */
  readonly bareUnit?: string;
  readonly example: string;
}

/** A number with its standard uncertainty, in a canonical unit; u null = none stated. */
export interface StatedNumber {
  readonly value: number;
  readonly u: number | null;
  /** Said where `u` was stated as limits. */
  readonly distribution?: 'rectangular';
  /** One unit of the last digit written; 0 where that does not count. */
  readonly step: number;
  /** As in `Quantity`. */
  readonly lastDigit?: number;
}

const CHECKING = { id: 'table', title: '', dof: null };

/**
 * Reads a quantity in a cell: a number in the unit of its header, or a number with its own unit, each with `±` if the author wrote
 * one. Null for an empty cell, and, with a problem, for what cannot be read.
 */
export function quantityIn<Name extends string>(
  cells: Cells<Name>,
  row: TableRow,
  name: Name,
  wanted: Wanted,
): StatedNumber | null {
  const text = textOf(cells, row, name);
  if (text === '') return null;
  const unit = cells.columns.get(name)?.unit ?? wanted.bareUnit;
  const plain = Number.isFinite(cells.table.number(text)) ? text.replace(',', '.') : text;
  const read = parseQuantity(hasUnit(plain) || unit === undefined ? plain : `${plain} ${unit}`, CHECKING, {
    unstated: 'unknown',
    ...wanted,
  });
  if (isParseFailure(read)) {
    const more = /^did you mean/.test(read.expected)
      ? { remedy: read.expected }
      : { expected: `a value such as ${wanted.example}` };
    return tellCell(cells, row, name, `\`${name}\` is \`${text}\`: ${read.failure}`, more);
  }
  if (read.unit !== wanted.canonical)
    return tellCell(cells, row, name, `\`${name}\` is \`${text}\``, { expected: `a value such as ${wanted.example}` });
  return numberOf(read);
}

function hasUnit(text: string): boolean {
  return /[^\d\s.,±+\-−eE()]/.test(text.replace(/\((?:k=|standard|\d+ ?%).*\)$/, ''));
}

function numberOf(read: Quantity): StatedNumber {
  const distribution = read.parts?.[0]?.source.distribution;
  const { value, step = 0, lastDigit } = read;
  const extra = { ...(distribution && { distribution }), ...(lastDigit !== undefined && { lastDigit }) };
  return { value, u: standardUncertainty(read), ...extra, step };
}
