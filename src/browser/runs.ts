/**
 * The index of runs, with scripting: filters and orders its rows, and keeps what is asked for in the address. Without scripting the
 * page has every row. It asks no host for anything.
 */
import { readFilters, waysOut } from './runs/filters.ts';
import { EVERYTHING, FILTERS, isActive, type Known, type Query, readAddress, writeAddress } from './runs/query.ts';
import { answering, ordered } from './runs/rows.ts';
import { readTable } from './runs/table.ts';

const form = byId<HTMLFormElement>('filters');
const told = byId('told');
const count = byId('count');
const none = byId('none');
const ways = byId('ways');
const region = document.querySelector<HTMLElement>('.runs')!;
const table = readTable(byId<HTMLTableElement>('runs'), order);
const filters = readFilters(form, fromForm);
const names = Object.keys(table.rows[0]?.keys ?? {});
const known: Known = { ...filters.known, order: names.flatMap((name) => [name, `-${name}`]) };

let query = EVERYTHING;
/** Whether the newest entry of the browser's history was made by typing words: it is then replaced, one letter after the other. */
let typed = false;

byId('clear').addEventListener('click', () => {
  go({ ...EVERYTHING, order: query.order });
  (form.elements.namedItem('words') as HTMLElement).focus();
});
addEventListener('popstate', fromAddress);
fromAddress();

function fromAddress(): void {
  typed = false;
  const read = readAddress(location.search, known);
  tell(read.told);
  show(read.query);
}

function fromForm(typing: boolean): void {
  go({ ...filters.read(), order: query.order }, typing);
}

function order(name: string, highestFirst: boolean): void {
  const [first, second] = highestFirst ? [`-${name}`, name] : [name, `-${name}`];
  go({ ...query, order: query.order === first ? second : first });
}

function go(next: Query, typing = false): void {
  const address = location.pathname + writeAddress(next);
  if (typing && typed) history.replaceState(null, '', address);
  else history.pushState(null, '', address);
  typed = typing;
  tell([]);
  show(next);
}

function show(next: Query): void {
  query = next;
  filters.write(query);
  const visible = answering(table.rows, query, known.clock);
  table.show(visible, ordered(table.rows, query.order));
  table.mark(query.order);
  const left = visible.filter((each) => each).length;
  const all = table.rows.length;
  count.textContent = left === all ? runs(all) : `${left} of ${runs(all)}`;
  const nothing = left === 0;
  byId('clear').hidden = nothing || !FILTERS.some((filter) => isActive(query, filter));
  none.hidden = !nothing;
  region.hidden = nothing;
  ways.replaceChildren(...(nothing ? waysOut(query, countOf, leave) : []));
}

/** By a button that then goes: the keyboard goes on at the words. */
function leave(next: Query): void {
  go(next);
  (form.elements.namedItem('words') as HTMLElement).focus();
}

function countOf(other: Query): number {
  return answering(table.rows, other, known.clock).filter((each) => each).length;
}

function tell(sentences: readonly string[]): void {
  told.replaceChildren(
    ...sentences.map((sentence) => {
      const line = document.createElement('p');
      line.textContent = sentence;
      return line;
    }),
  );
}

function runs(number: number): string {
  return `${number} ${number === 1 ? 'run' : 'runs'}`;
}

function byId<T extends HTMLElement = HTMLElement>(id: string): T {
  return document.getElementById(id) as T;
}
