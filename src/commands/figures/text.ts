/** Figures as tables for the terminal. */

import { shownFigure } from '../../compute/contents/figure-text.ts';
import { SUBJECTS } from '../../figures/catalogue/subject.ts';
import { CATALOGUE } from '../../figures/catalogue.ts';
import { type Figure, type FigureMap, isPresent } from '../../figures/figure.ts';
import { printQuantity } from '../../quantities/print.ts';
import { spelled } from '../../words/expression/address.ts';

/** Even on the narrowest terminal a column has this room. */
const NARROWEST = 40;

/** Every figure of one run, comparison or ladder: address, value, uncertainty and detail; then what is absent, by its reason. */
export function figuresText(figures: FigureMap, width: number): string {
  const present = inOrder(new Map([...figures].filter(([, figure]) => isPresent(figure))));
  const rows = present.map(({ heading, entries }) => ({
    heading,
    cells: entries.map(([address, figure]) => {
      const { shown, uncertainty, detail } = shownFigure(address, figure);
      return [spelled(address), shown, [uncertainty, detail].filter((text) => text !== '').join('; ')];
    }),
  }));
  const widths = widthsOf(rows.flatMap(({ cells }) => cells)).slice(0, 2);
  const hanging = 2 + widths.reduce((sum, each) => sum + each + 2, 0);
  const groups = rows.map(({ heading, cells }) =>
    [heading, ...cells.flatMap((row) => wrapped(`  ${line(row, widths)}`, width, hanging))].join('\n'),
  );
  return [...groups, ...absentText(figures, width)].join('\n\n');
}

/** Reasons, each once, with the addresses that it keeps from having a value. */
function absentText(figures: FigureMap, width: number): string[] {
  const absent = inOrder(new Map([...figures].filter(([, figure]) => !isPresent(figure)))).flatMap(({ entries }) => entries);
  const reasons = Map.groupBy(absent, ([address, figure]) => shownFigure(address, figure).absent ?? '');
  const blocks = [...reasons].flatMap(([reason, entries]) => [
    ...wrapped(`  ${entries.map(([address]) => spelled(address)).join(', ')}`, width, 2),
    ...wrapped(`      ${reason}`, width, 6),
  ]);
  return blocks.length === 0 ? [] : [['Absent', ...blocks].join('\n')];
}

/** A line broken at blanks, so that none is longer than `width`; what follows the first is moved in. */
function wrapped(text: string, width: number, hanging: number): string[] {
  const lines: string[] = [];
  let rest = text;
  const room = Math.max(width, hanging + NARROWEST);
  while (rest.length > room) {
    const at = rest.lastIndexOf(' ', room);
    if (at <= hanging) break;
    lines.push(rest.slice(0, at).trimEnd());
    rest = `${' '.repeat(hanging)}${rest.slice(at + 1)}`;
  }
  return [...lines, rest];
}

/** Figures of several runs side by side, as many as fit into `width`; what no run has is left out. */
export function sideBySide(runs: ReadonlyMap<string, FigureMap>, width: number): string {
  const present = new Map<string, Figure>();
  for (const figures of runs.values())
    for (const [address, figure] of figures) if (!present.has(address) && isPresent(figure)) present.set(address, figure);
  const groups = inOrder(present);
  const names = ['', ...groups.flatMap(({ entries }) => entries.map(([address]) => address))];
  const first = Math.max(...names.map((name) => spelled(name).length));
  const columns = [...runs].map(([alias, figures]) => columnOf(alias, figures, names));
  return blocks(columns, width - first - 2)
    .map((some) => {
      const widths = [first, ...widthsOf(rowsOf(some))];
      const cellsOf = (name: string) => [spelled(name), ...some.map((column) => column.cells.get(name)!)];
      return [
        `  ${line(['', ...some.map(({ alias }) => alias)], widths)}`,
        ...groups.flatMap(({ heading, entries }) => [heading, ...entries.map(([name]) => `  ${line(cellsOf(name), widths)}`)]),
      ].join('\n');
    })
    .join('\n\n');
}

interface Column {
  readonly alias: string;
  readonly cells: ReadonlyMap<string, string>;
}

function columnOf(alias: string, figures: FigureMap, names: readonly string[]): Column {
  const cell = (name: string) => {
    const figure = (figures as ReadonlyMap<string, Figure>).get(name);
    return figure && isPresent(figure) ? printQuantity(figure.quantity).text : '–';
  };
  return { alias, cells: new Map(names.map((name) => [name, name === '' ? alias : cell(name)])) };
}

function rowsOf(columns: readonly Column[]): string[][] {
  const [first] = columns;
  return first ? [...first.cells.keys()].map((name) => columns.map(({ cells }) => cells.get(name)!)) : [];
}

/** Columns that stand beside each other: at least one. */
function blocks(columns: readonly Column[], width: number): Column[][] {
  const made: Column[][] = [];
  let room = 0;
  for (const column of columns) {
    const own = 2 + Math.max(...[...column.cells.values()].map((text) => text.length));
    if (made.length === 0 || own > room) {
      made.push([]);
      room = width;
    }
    made.at(-1)!.push(column);
    room -= own;
  }
  return made;
}

/** By subject, in the order of the catalogue. */
function inOrder(figures: ReadonlyMap<string, Figure>): { heading: string; entries: [string, Figure][] }[] {
  const all = [...figures];
  return SUBJECTS.map((subject) => ({
    heading: subject.charAt(0).toUpperCase() + subject.slice(1),
    entries: CATALOGUE.filter((definition) => definition.subject === subject).flatMap(({ name }) =>
      all.filter(([, figure]) => figure.name === name),
    ),
  })).filter(({ entries }) => entries.length > 0);
}

function widthsOf(rows: readonly (readonly string[])[]): number[] {
  const [first = []] = rows;
  return first.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)));
}

function line(cells: readonly string[], widths: readonly number[]): string {
  return cells
    .map((cell, column) => cell.padEnd(widths[column] ?? 0))
    .join('  ')
    .trimEnd();
}
