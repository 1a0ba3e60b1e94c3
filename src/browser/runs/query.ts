/** What the index of runs is asked for, and how it stands in the address: `?device=larch-2&clock=2.4GHz..&order=-peak_temperature`. */
import { nearest } from '../../quantities/nearest.ts';

/** Both ends belong to it; '' is open. */
export interface Range {
  readonly from: string;
  readonly to: string;
}

/** '' asks for nothing. */
export interface Query {
  readonly words: string;
  readonly device: string;
  readonly specimen: string;
  readonly maker: string;
  readonly outcome: string;
  /** Ids of settings of the clock. */
  readonly clock: Range;
  /** ISO dates. */
  readonly date: Range;
  /** By what the rows are ordered; highest, newest or last first where it begins with a minus. */
  readonly order: string;
}

export type Filter = Exclude<keyof Query, 'order'>;

/** What can be asked for: ids in each filter, the clock's from the lowest to the highest. */
export interface Known {
  readonly device: readonly string[];
  readonly specimen: readonly string[];
  readonly maker: readonly string[];
  readonly outcome: readonly string[];
  readonly clock: readonly string[];
  readonly order: readonly string[];
}

const OPEN: Range = { from: '', to: '' };
const NEWEST_FIRST = '-date';
export const EVERYTHING: Query = {
  words: '',
  device: '',
  specimen: '',
  maker: '',
  outcome: '',
  clock: OPEN,
  date: OPEN,
  order: NEWEST_FIRST,
};

/** In the order in which they stand on the page and in the address. */
export const FILTERS: readonly Filter[] = ['words', 'device', 'specimen', 'maker', 'outcome', 'clock', 'date'];

/** Whether a filter asks for something. */
export function isActive(query: Query, filter: Filter): boolean {
  const value = query[filter];
  return typeof value === 'string' ? value.trim() !== '' : value.from !== '' || value.to !== '';
}

/** The query without one of its filters. */
export function without(query: Query, filter: Filter): Query {
  return { ...query, [filter]: EVERYTHING[filter] };
}

/** The part of the address behind the path: '' where nothing is asked for, else beginning with a question mark. */
export function writeAddress(query: Query): string {
  const parameters = new URLSearchParams();
  for (const filter of FILTERS.filter((each) => isActive(query, each))) {
    const value = query[filter];
    parameters.set(filter, typeof value === 'string' ? value : rangeText(value));
  }
  if (query.order !== NEWEST_FIRST) parameters.set('order', query.order);
  const text = parameters.toString();
  return text === '' ? '' : `?${text}`;
}

function rangeText({ from, to }: Range): string {
  return from === to ? from : `${from}..${to}`;
}

/** Reads an address. What it asks for and this page does not have is ignored, and told. */
export function readAddress(search: string, known: Known): { readonly query: Query; readonly told: readonly string[] } {
  const told: string[] = [];
  const asked = new Map<string, string>();
  for (const [name, value] of new URLSearchParams(search)) {
    if (!Object.hasOwn(EVERYTHING, name))
      told.push(`“${name}” is not a filter of this page; it is ignored.${meant(name, Object.keys(EVERYTHING))}`);
    else if (asked.has(name)) told.push(`“${name}” stands in the address twice; the first counts.`);
    else asked.set(name, value);
  }
  const one = (name: 'device' | 'specimen' | 'maker' | 'outcome' | 'order') =>
    knownOr(name, asked.get(name) ?? '', known[name], told);
  const range = (name: 'clock' | 'date', end: (value: string) => string): Range => {
    const text = asked.get(name) ?? '';
    const middle = text.indexOf('..');
    const [from, to] = middle < 0 ? [text, text] : [text.slice(0, middle), text.slice(middle + 2)];
    return { from: end(from), to: end(to) };
  };
  return {
    query: {
      words: asked.get('words') ?? '',
      device: one('device'),
      specimen: one('specimen'),
      maker: one('maker'),
      outcome: one('outcome'),
      clock: range('clock', (value) => knownOr('clock', value, known.clock, told)),
      date: range('date', (value) => dateOr(value, told)),
      order: one('order') || NEWEST_FIRST,
    },
    told: [...new Set(told)],
  };
}

function knownOr(name: string, value: string, known: readonly string[], told: string[]): string {
  if (value === '' || known.includes(value)) return value;
  const what = name === 'order' ? `Runs cannot be put in the order “${value}”` : `No run here has the ${name} “${value}”`;
  told.push(`${what}; it is ignored.${meant(value, known)}`);
  return '';
}

function dateOr(value: string, told: string[]): string {
  if (value === '' || isDate(value)) return value;
  told.push(`“${value}” is not a date such as 2026-03-14; it is ignored.`);
  return '';
}

/** Whether a text is a day of the calendar, written as ISO 8601 has it. */
export function isDate(text: string): boolean {
  if (!/^\d{4}-\d\d-\d\d$/.test(text)) return false;
  const day = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}

function meant(word: string, candidates: readonly string[]): string {
  const name = nearest(word, candidates);
  return name === undefined ? '' : ` Did you mean “${name}”?`;
}
