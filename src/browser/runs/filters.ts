/** The form of the filters, and what is said beside it. */
import { EVERYTHING, FILTERS, type Filter, isActive, type Known, type Query } from './query.ts';

type Field = HTMLInputElement | HTMLSelectElement;

export interface Filters {
  /** What can be asked for, as far as the form has it; orders are the table's. */
  readonly known: Omit<Known, 'order'>;
  /** What the form asks for. */
  read(): Omit<Query, 'order'>;
  write(query: Query): void;
}

/** The form. `changed` is called when a field has changed, and with whether words are being typed. */
export function readFilters(form: HTMLFormElement, changed: (typing: boolean) => void): Filters {
  const field = (name: string) => form.elements.namedItem(name) as Field;
  const value = (name: string) => field(name).value;
  const choices = (name: string) =>
    [...(field(name) as HTMLSelectElement).options].map((option) => option.value).filter((id) => id !== '');
  form.addEventListener('input', (event) => changed((event.target as Field).name === 'words'));
  form.addEventListener('submit', (event) => event.preventDefault());
  return {
    known: {
      device: choices('device'),
      specimen: choices('specimen'),
      maker: choices('maker'),
      outcome: choices('outcome'),
      clock: choices('clock-from'),
    },
    read: () => ({
      words: value('words'),
      device: value('device'),
      specimen: value('specimen'),
      maker: value('maker'),
      outcome: value('outcome'),
      clock: { from: value('clock-from'), to: value('clock-to') },
      date: { from: value('date-from'), to: value('date-to') },
    }),
    write: (query) => {
      for (const name of ['words', 'device', 'specimen', 'maker', 'outcome'] as const) set(field(name), query[name]);
      for (const name of ['clock', 'date'] as const) {
        set(field(`${name}-from`), query[name].from);
        set(field(`${name}-to`), query[name].to);
      }
    },
  };
}

/** Leaves a field alone that has the value, so that the place of the caret stays. */
function set(field: Field, value: string): void {
  if (field.value !== value) field.value = value;
}

/** What is said where no run answers: how many there are without each of the filters, as buttons that take it out. */
export function waysOut(query: Query, count: (query: Query) => number, go: (query: Query) => void): HTMLElement[] {
  const active = FILTERS.filter((filter) => isActive(query, filter));
  const single = active.map((filter): [Filter, number] => [filter, count({ ...query, [filter]: EVERYTHING[filter] })]);
  const some = active.length > 1 ? single.filter(([, left]) => left > 0) : [];
  return [
    ...some.map(([filter, left]) =>
      button(`Without the ${filter}: ${left} ${left === 1 ? 'run' : 'runs'}`, () => go({ ...query, [filter]: EVERYTHING[filter] })),
    ),
    button('Show all runs', () => go({ ...EVERYTHING, order: query.order })),
  ];
}

function button(text: string, press: () => void): HTMLElement {
  const element = document.createElement('button');
  element.type = 'button';
  element.textContent = text;
  element.addEventListener('click', press);
  return element;
}
