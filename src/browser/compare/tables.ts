/** The tables of a comparison, as the site's components lay them out. */
import type { ComparedCell, ComparedTable, ComparisonModel, ConditionRow, ShownFigure } from '../../compute/results.ts';
import { cellLines } from './cell-lines.ts';
import { type Content, el, headRow, scrolling } from './dom.ts';

/** As `ComparedTable.astro`: nothing where there is no row. */
export function comparedTable(table: ComparedTable, base: string): Content[] {
  const { caption, name, columns, rows, absent, unsaid } = table;
  if (rows.length === 0) return [];
  const body = rows.map((row) =>
    el(
      'tr',
      {},
      el('th', { scope: 'row' }, methodLink(row.name, row.label, base), detail(row.detail)),
      ...row.cells.map((cell, column) => comparedCell(cell, columns[column]!)),
    ),
  );
  const head = headRow([rows[0]!.name === '' ? 'Test' : 'Figure', ...columns]);
  const title = el('caption', {}, methodLink(name, caption, base), detail(unsaid));
  return [
    scrolling(caption, el('table', {}, title, head, el('tbody', {}, ...body)), 'compared'),
    absent.length === 0 ? null : el('ul', { class: 'aside' }, ...absent.map((reason) => el('li', {}, `Absent: ${reason}`))),
  ];
}

function comparedCell(cell: ComparedCell, column: string): HTMLElement {
  const lines = cellLines(cell).map(({ text, kind, heavy, long }) =>
    el('span', { class: long ? `${kind} long` : kind }, heavy ? el('strong', {}, text) : text),
  );
  return el('td', { 'data-label': column }, ...lines);
}

/** As `FigureTable.astro`, of figures over all runs. */
export function overallTable(figures: readonly ShownFigure[], base: string): Content[] {
  if (figures.length === 0) return [];
  const rows = figures.map(({ name, label, detail: said, absent, shown, uncertainty }) =>
    el(
      'tr',
      {},
      el('th', { scope: 'row' }, methodLink(name, label, base), detail(said)),
      ...(absent === undefined
        ? [el('td', { class: 'number' }, shown), el('td', {}, uncertainty)]
        : [el('td', { colspan: '2', class: 'absent' }, `absent: ${absent}`)]),
    ),
  );
  const head = headRow(['Figure', 'Value', 'Uncertainty']);
  head.querySelectorAll('th')[1]!.className = 'number';
  const table = el('table', { class: 'figures' }, el('caption', {}, 'Over all runs'), head, el('tbody', {}, ...rows));
  return [scrolling('Over all runs', table)];
}

/** As `SideBySide.astro`. */
export function sideBySide({ runs, reference, apart }: ComparisonModel): Content[] {
  if (apart.length === 0) return [];
  const rows = apart.map(({ label, cells }) =>
    el(
      'tr',
      {},
      el('th', { scope: 'row' }, label),
      ...cells.map(({ text, differs }, column) =>
        el('td', { 'data-label': runs[column]!.alias }, differs ? el('strong', {}, text) : text),
      ),
    ),
  );
  const caption = el('caption', {}, `What differs; bold: differs from ${reference}`);
  const head = headRow([null, ...runs.map(({ alias }) => alias)]);
  return [scrolling('What differs', el('table', {}, caption, head, el('tbody', {}, ...rows)), 'compared')];
}

/** As `Rows.astro`. */
export function conditionList(rows: readonly ConditionRow[]): Content {
  if (rows.length === 0) return null;
  return el('dl', { class: 'rows' }, ...rows.map(({ label, text }) => el('div', {}, el('dt', {}, label), el('dd', {}, text))));
}

/** Any small table of texts. */
export function textTable(caption: string, head: readonly string[], rows: readonly (readonly string[])[]): HTMLElement {
  const body = rows.map((row) => el('tr', {}, ...row.map((cell) => el('td', {}, cell))));
  return scrolling(caption, el('table', {}, el('caption', {}, caption), headRow(head), el('tbody', {}, ...body)));
}

function methodLink(name: string, text: string, base: string): Content {
  return name === '' ? text : el('a', { href: `${base}method/#${name}` }, text);
}

function detail(text: string): Content {
  return text === '' ? null : el('span', { class: 'detail' }, text);
}
