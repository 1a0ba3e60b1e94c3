/** The table of runs as the page has it: rows, what they are filtered and ordered by, and the headings that order them. */
import { plainWord } from '../../search/terms.ts';
import type { Row } from './rows.ts';

/** Rows that are shown at once: more than the tallest window has. */
const FIRST = 60;
/** Rows that follow in each frame. */
const BATCH = 150;

export interface Table {
  readonly rows: readonly Row[];
  /** Shows these rows and no others, in this order. */
  show(visible: readonly boolean[], order: readonly number[]): void;
  /** Says in the headings which one orders. */
  mark(order: string): void;
}

/** Reads the table once. `choose` is called with the name of a heading that was pressed, and with whether its highest come first by itself. */
export function readTable(table: HTMLTableElement, choose: (name: string, highestFirst: boolean) => void): Table {
  const body = table.tBodies[0]!;
  const elements = [...body.rows];
  const headings = [...table.tHead!.rows[0]!.cells].filter((cell) => cell.dataset.order !== undefined);
  const ranks = new Map(headings.flatMap((cell) => ranksOf(cell)));
  const clocks = numbersOf(table.dataset.clocks ?? '');
  const makers = makersByDevice();
  const rows = elements.map((row, index): Row => rowOf(row, index, { ranks, clocks, makers }));
  for (const heading of headings) makeButton(heading, choose);
  const reveal = revealer();
  let shownOrder = elements.map((_row, index) => index);
  return {
    rows,
    show: (visible, order) => {
      const moved = order.some((row, place) => row !== shownOrder[place]);
      shownOrder = [...order];
      const wanted = order.filter((index) => visible[index]).map((index) => elements[index]!);
      const first = new Set(wanted.slice(0, FIRST));
      for (const [index, element] of elements.entries()) {
        // A row that moves is laid out anew like one that appears.
        const hide = !visible[index] || (moved && !first.has(element));
        if (hide !== element.hidden && (hide || first.has(element))) element.hidden = hide;
      }
      if (moved) body.append(...order.map((index) => elements[index]!));
      reveal(wanted);
    },
    mark: (order) => {
      for (const heading of headings) {
        const name = heading.dataset.order!;
        if (order === name) heading.setAttribute('aria-sort', 'ascending');
        else if (order === `-${name}`) heading.setAttribute('aria-sort', 'descending');
        else heading.removeAttribute('aria-sort');
      }
    },
  };
}

/** Shows rows a batch a frame, since the layout of a thousand rows takes longer than a reader waits; a later call takes the place of an earlier one. */
function revealer(): (rows: readonly HTMLElement[]) => void {
  let latest = 0;
  return (rows) => {
    latest += 1;
    const mine = latest;
    const left = rows.filter((row) => row.hidden);
    const next = () => {
      if (mine !== latest) return;
      for (const row of left.splice(0, BATCH)) row.hidden = false;
      later();
    };
    // Behind the painting of the frame, so that what stands in the window is seen first.
    const later = () => {
      if (left.length > 0) requestAnimationFrame(() => setTimeout(next));
    };
    later();
  };
}

interface Columns {
  readonly ranks: ReadonlyMap<string, readonly (number | null)[]>;
  readonly clocks: readonly (number | null)[];
  readonly makers: ReadonlyMap<string, string>;
}

function rowOf(row: HTMLTableRowElement, index: number, { ranks, clocks, makers }: Columns): Row {
  const run = row.cells[0]!;
  const [date, device] = [...row.cells].slice(-3) as unknown as [HTMLElement, HTMLElement];
  const link = device.querySelector('a')!;
  const id = idOf(link);
  const specimen = device.querySelector('.detail')!.textContent!;
  const day = date.textContent!;
  const clock = clocks[index] ?? null;
  const maker = makers.get(id) ?? '';
  const outcomes = (run.querySelector('.outcome')?.textContent ?? '').split(', ').map((words) => words.replaceAll(/\s/g, '-'));
  const words = [...row.cells].map((cell) => cell.textContent);
  return {
    device: id,
    specimen,
    maker,
    outcomes,
    clock,
    date: day,
    text: plainWord([...words, maker].join(' ')),
    keys: {
      title: plainWord(run.querySelector('a')!.textContent!),
      date: day,
      device: plainWord(`${link.textContent} ${specimen}`),
      clock,
      ...Object.fromEntries([...ranks].map(([name, column]) => [name, column[index] ?? null])),
    },
  };
}

/** The last folder of a link's path. */
function idOf(link: HTMLAnchorElement): string {
  return link.pathname.split('/').at(-2) ?? '';
}

/** Makers by device, from the list of devices that the page has. */
function makersByDevice(): Map<string, string> {
  const items = [...document.querySelectorAll<HTMLElement>('#device-list [data-maker]')];
  return new Map(items.map((item) => [idOf(item.querySelector('a')!), item.dataset.maker!]));
}

function ranksOf(heading: HTMLTableCellElement): [string, (number | null)[]][] {
  const { order, ranks } = heading.dataset;
  return order === undefined || ranks === undefined ? [] : [[order, numbersOf(ranks)]];
}

/** "0 3 - 1": a hyphen is none. */
function numbersOf(text: string): (number | null)[] {
  return text === '' ? [] : text.split(' ').map((number) => (number === '-' ? null : Number(number)));
}

function makeButton(heading: HTMLTableCellElement, choose: (name: string, highestFirst: boolean) => void): void {
  const button = document.createElement('button');
  button.type = 'button';
  button.append(...heading.childNodes);
  const { order, ranks } = heading.dataset;
  button.addEventListener('click', () => choose(order!, ranks !== undefined || order === 'date'));
  heading.append(button);
}
