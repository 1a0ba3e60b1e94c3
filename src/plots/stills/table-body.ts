/** A table as pictures: as many as it takes for type that can be read; columns come one after the other, as runs do in a plot. */
import type { StillDrawing } from '../drawing/drawn.ts';
import { ofRun } from '../drawing/palette.ts';
import { textWidth, wrap } from '../drawing/text-width.ts';
import { INNER_WIDTH, TEXT_SIZE } from './format.ts';
import { across, drawing, text } from './lines-of-text.ts';

export interface TableText {
  readonly caption: string;
  readonly head: readonly string[];
  /** The first cell of each names the row. */
  readonly rows: readonly (readonly string[])[];
}

/** Height of a line, what is free in a row besides, and distance of columns, as shares of the type's size. */
const LINE = 1.24;
const PAD = 0.5;
const APART = 1.2;
/** Sizes of type, the largest first: the first in which a table stands in one picture is taken, else the last in several. */
const SIZES = [26, 24, 22, 20, 18, TEXT_SIZE] as const;
/** Names of rows take at most this share of the width. */
const WIDEST = 0.4;

/** The drawings of a table in a height: its columns in groups that fit, each with its rows in groups that fit. */
export function tableDrawings(table: TableText, height: number): StillDrawing[] {
  const laid = SIZES.map((size) => laidOut(table, height, size));
  const { sheets } = laid.find(({ sheets: [first, ...more] }) => first !== undefined && more.length === 0) ?? laid.at(-1)!;
  return sheets.map((sheet) => ({
    title: table.caption,
    alt: altOf(table, sheet),
    shown: sheet.group.map(({ k, title }) => ({ name: title, k })),
    svg: draw(sheet),
  }));
}

function laidOut({ head, rows }: TableText, height: number, size: number): { readonly sheets: Sheet[] } {
  const names = wrapped([head[0] ?? '', ...rows.map(([name = '']) => name)], WIDEST * INNER_WIDTH, size);
  const first = Math.max(0, ...names.flat().map((line) => textWidth(line, size)));
  const columns = head.slice(1).map((title, c): Column => {
    const cells = [title, ...rows.map((row) => row[c + 1] ?? '')];
    return { k: c, title, cells, width: Math.max(...cells.map((cell) => textWidth(cell, size, 'semibold'))) };
  });
  const groups = grouped(columns, ({ width }) => width + APART * size, INNER_WIDTH - first);
  const heights = names.map((lines) => (lines.length * LINE + PAD) * size);
  const bands = grouped(
    rows.map((_, r) => r + 1),
    (r) => heights[r]!,
    height - heights[0]! - 2,
  );
  return { sheets: bands.flatMap((band) => groups.map((group) => ({ size, names, heights, first, band, group }))) };
}

interface Column {
  /** Its place, which tells its cells apart from others' as the style of a run does. */
  readonly k: number;
  readonly title: string;
  readonly cells: readonly string[];
  readonly width: number;
}

interface Sheet {
  /** Of its type, px. */
  readonly size: number;
  readonly names: readonly (readonly string[])[];
  readonly heights: readonly number[];
  readonly first: number;
  readonly band: readonly number[];
  readonly group: readonly Column[];
}

function draw({ size, names, heights, first, band, group }: Sheet): string {
  const ends = endsOf(group, first, APART * size);
  const width = ends.at(-1) ?? first;
  let top = 0;
  const parts = [0, ...band].flatMap((r) => {
    const y = top + (PAD / 2 + 0.75 * LINE) * size;
    const bottom = top + heights[r]!;
    top = bottom;
    const look = (k: number) => ({ size, weight: r === 0 ? 600 : 400, fill: ofRun('var(--plot-ink)', k), end: true }) as const;
    return [
      ...names[r]!.map((line, i) => text(line, 0, y + i * LINE * size, { size, weight: 400, fill: 'var(--plot-soft)' })),
      ...group.map(({ k, cells }, i) => text(cells[r]!, ends[i]!, y, look(k))),
      across(0, width, bottom, r === 0 ? 'var(--plot-soft)' : 'var(--plot-grid)', r === 0 ? 1.5 : 1),
    ];
  });
  return drawing(INNER_WIDTH, top + 2, parts);
}

/** Right edges of columns, which share what is free, so that a table of few is not lost at the left. */
function endsOf(group: readonly Column[], first: number, apart: number): number[] {
  const taken = first + group.reduce((sum, { width }) => sum + width + apart, 0);
  const more = Math.min(2 * apart, Math.max(0, (INNER_WIDTH - taken) / group.length));
  let end = first;
  return group.map(({ width }) => {
    end += width + apart + more;
    return end;
  });
}

function wrapped(names: readonly string[], width: number, size: number): string[][] {
  return names.map((name) => (name === '' ? [''] : wrap(name, size, width)));
}

/** Neighbours that fit together, at least one in each group. */
function grouped<T>(all: readonly T[], size: (each: T) => number, room: number): T[][] {
  const groups: T[][] = [];
  let left = 0;
  for (const each of all) {
    left -= size(each);
    if (groups.length === 0 || left < 0) {
      groups.push([each]);
      left = room - size(each);
    } else groups.at(-1)!.push(each);
  }
  return groups;
}

function altOf({ head, rows }: TableText, { band, group }: Sheet): string {
  const told = (r: number) => group.map(({ k, cells }) => `${head[k + 1]} ${cells[r]}`).join(', ');
  return band.map((r) => `${rows[r - 1]![0]}: ${told(r)}.`).join(' ');
}
