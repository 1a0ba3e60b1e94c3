/**
 * The view in the address, and back: `?runs=larch-rated+larch-fast&show=temperature+clock&as=rise&units=degF+MHz&from=0&to=3600`.
 * What is as it is without being named is left out, so that a view has one address.
 */
import type { QuantityKind } from '../../intake/log.ts';
import { type Axis, EMPTY_VIEW, MOST_PLOTS, QUANTITIES, type ShownQuantity, UNITS, type View } from './view.ts';

export interface ReadAddress {
  readonly view: View;
  /** What of the address was not understood and is left out of account: sentences for readers. */
  readonly remarks: readonly string[];
}

const ID = /^[a-z0-9]+(-[a-z0-9]+)*$/;
const CHANNEL = /^[a-z][a-z0-9_]*$/;
const SECONDS = /^-?\d{1,9}(\.\d{1,6})?$/;
const MOST_REMARKS = 6;
const LONGEST_CITED = 60;
const AXES: readonly Axis[] = ['absolute', 'rise'];

/** Every parameter, each with what it says to a view. A remark is a sentence. */
type Read = (text: string, remark: (sentence: string) => void) => Partial<View>;

const PARAMETERS: Readonly<Record<string, Read>> = {
  runs: (text, remark) => ({ runs: once(wordsOf(text), ID, (word) => remark(`“${cited(word)}” is not the id of a run.`)) }),
  reference: (text, remark) => {
    if (ID.test(text)) return { reference: text };
    remark(`“${cited(text)}” is not the id of a run: the first run is the reference.`);
    return {};
  },
  show: (text, remark) => ({ show: shownOf(wordsOf(text), remark) }),
  as: (text, remark) => {
    const as = AXES.find((axis) => axis === text);
    if (as === undefined) remark(`“as=${cited(text)}” is none of ${AXES.join(', ')}: temperatures stand as they were read.`);
    return as === undefined ? {} : { as };
  },
  units: (text, remark) => ({ units: unitsOf(wordsOf(text), remark) }),
  from: (text, remark) => end('from', text, remark),
  to: (text, remark) => end('to', text, remark),
};

/** Reads the query of an address. Never throws: what it does not know it remarks upon and leaves out. */
export function readAddress(query: string): ReadAddress {
  const remarks: string[] = [];
  const remark = (sentence: string) => remarks.push(sentence);
  const given = new Map<string, string>();
  for (const [name, text] of new URLSearchParams(query)) {
    if (!Object.hasOwn(PARAMETERS, name)) remark(`“${cited(name)}” is not part of an address of this page.`);
    else if (given.has(name)) remark(`“${cited(name)}” stands more than once: the first counts.`);
    else given.set(name, text);
  }
  const parts = [...given].map(([name, text]) => PARAMETERS[name]!(text, remark));
  return { view: consistent(Object.assign({}, EMPTY_VIEW, ...parts), remark), remarks: fewOf(remarks) };
}

/** The first of many remarks, so that the comparison stays in sight. */
function fewOf(remarks: readonly string[]): string[] {
  const more = remarks.length - MOST_REMARKS;
  if (more < 2) return [...remarks];
  return [...remarks.slice(0, MOST_REMARKS), `${more} more parts of the address were not understood.`];
}

/** What stands in an address, cut where it is too long to be recognised. */
export function cited(text: string): string {
  return text.length <= LONGEST_CITED ? text : `${text.slice(0, LONGEST_CITED)}…`;
}

/** The query of a view, with its question mark; '' for the empty view. */
export function queryOf({ runs, reference, show, as, units, from, to }: View): string {
  const asIs = show.length === 1 && tokenOf(show[0]!) === tokenOf(EMPTY_VIEW.show[0]!);
  const parameters: [string, string][] = [
    ['runs', runs.join('+')],
    ['reference', reference ?? ''],
    ['show', asIs ? '' : show.map(tokenOf).join('+')],
    ['as', as === 'absolute' ? '' : as],
    ['units', unitWords(units).join('+')],
    ['from', from === null ? '' : String(from)],
    ['to', to === null ? '' : String(to)],
  ];
  const named = parameters.filter(([, text]) => text !== '').map(([name, text]) => `${name}=${text}`);
  return named.length === 0 ? '' : `?${named.join('&')}`;
}

/** A plot in an address: `temperature`, or `temperature.ssd` for the channel of that name. */
export function tokenOf({ quantity, channel }: ShownQuantity): string {
  return channel === null ? quantity : `${quantity}.${channel}`;
}

/** Words between blanks, which a plus sign stands for; also between plus signs that were written as %2B on the way, and commas. */
function wordsOf(text: string): string[] {
  return text.split(/[ +,]+/).filter((word) => word !== '');
}

function once(words: readonly string[], form: RegExp, refuse: (word: string) => void): string[] {
  for (const word of words) if (!form.test(word)) refuse(word);
  return [...new Set(words.filter((word) => form.test(word)))];
}

function shownOf(words: readonly string[], remark: (sentence: string) => void): readonly ShownQuantity[] {
  const shown = new Map<string, ShownQuantity>();
  for (const word of words) {
    const [quantity = '', channel = null, ...more] = word.split('.');
    const known = Object.hasOwn(QUANTITIES, quantity) && (channel === null || CHANNEL.test(channel)) && more.length === 0;
    if (known) shown.set(word, { quantity: quantity as QuantityKind, channel });
    else
      remark(
        `“${cited(word)}” is nothing that can be drawn: ${Object.keys(QUANTITIES).join(', ')}, or one of these with a channel after a dot.`,
      );
  }
  if (shown.size > MOST_PLOTS) remark(`The address asks for ${shown.size} plots: the first ${MOST_PLOTS} are drawn.`);
  return shown.size === 0 ? EMPTY_VIEW.show : [...shown.values()].slice(0, MOST_PLOTS);
}

/** Spellings in addresses: nothing that would be escaped there. */
const UNIT_WORDS: ReadonlyMap<string, readonly [QuantityKind, string]> = new Map(
  Object.entries(UNITS).flatMap(([quantity, spellings]) =>
    spellings.map((spelling) => [spelling.replace('°', 'deg'), [quantity as QuantityKind, spelling]] as const),
  ),
);

function unitsOf(words: readonly string[], remark: (sentence: string) => void): View['units'] {
  const units: Partial<Record<QuantityKind, string>> = {};
  for (const word of words) {
    const known = UNIT_WORDS.get(word);
    const [quantity, spelling] = known ?? ['other', ''];
    if (known === undefined) remark(`“${cited(word)}” is not a unit of this page: ${[...UNIT_WORDS.keys()].join(', ')}.`);
    else if (units[quantity] !== undefined) remark(`Two units of ${quantity} are asked for: the first counts.`);
    else units[quantity] = spelling;
  }
  return units;
}

function unitWords(units: View['units']): string[] {
  return [...UNIT_WORDS].filter(([, [quantity, spelling]]) => units[quantity] === spelling).map(([word]) => word);
}

function end(name: 'from' | 'to', text: string, remark: (sentence: string) => void): Partial<View> {
  if (SECONDS.test(text)) return { [name]: Number(text) + 0 };
  remark(`“${name}=${cited(text)}” is not a number of seconds.`);
  return {};
}

/** What two parameters say only together. */
function consistent(view: View, remark: (sentence: string) => void): View {
  const { runs, reference, from, to } = view;
  const stranger = reference !== null && !runs.includes(reference);
  if (stranger) remark(`The reference ${reference} is none of the runs: the first run is the reference.`);
  const backwards = from !== null && to !== null && from >= to;
  if (backwards) remark(`The window from ${from} s to ${to} s holds nothing: all of the time is drawn.`);
  return { ...view, ...(stranger ? { reference: null } : {}), ...(backwards ? { from: null, to: null } : {}) };
}
