/** Writes a number in the form of another: words stay words, digits digits, with the same unit. */
import { shift } from '../../quantities/decimal.ts';
import { roundDecimal } from '../../quantities/rounding.ts';
import { cardinalWords, SCALE_PLACES } from './cardinal.ts';
import { numeralWords } from './numeral-words.ts';
import type { SaidNumber } from './phrase.ts';
import { clean } from './stated-number.ts';
import { namedWith } from './unit-names.ts';

/** A number to say: to a decimal place, or in parts of one. */
export type Saying = { readonly value: number; readonly place: number } | { readonly value: number; readonly parts: number };

const ARTICLE_AN = /^(?:hour|amp|ohm)/;

/** A side of a phrase with another number, or undefined where the form cannot say it. `text` is what the side stands in. */
export function wordingOf(side: SaidNumber, text: string, saying: Saying): string | undefined {
  if (side.mixed) return 'place' in saying ? mixedTime(side, text, saying) : undefined;
  const multiplier = side.unit?.kind === 'times' && saying.value === 2 && !gapped(side) ? 'twice' : undefined;
  if (multiplier) return multiplier;
  const number = numberOf(side, text, saying);
  if (number === undefined) return undefined;
  const sign = signOf(side, text, saying.value);
  const tail = side.belowZero && saying.value < 0 ? ' below zero' : '';
  return `${sign}${number}${unitOf(side, text, saying)}${tail}`;
}

/** True where the unit stands apart from the number; "twice" is both. */
function gapped({ amount, unit }: SaidNumber): boolean {
  return unit !== undefined && unit.start >= amount.end;
}

function signOf(side: SaidNumber, text: string, value: number): string {
  if (value >= 0 || side.belowZero) return '';
  const written = /^(?:[-−–]|minus |negative )/i.exec(text.slice(side.start))?.[0];
  return written ?? (side.amount.style === 'words' ? 'minus ' : '−');
}

function numberOf({ amount, unit }: SaidNumber, text: string, saying: Saying): string | undefined {
  const size = Math.abs(saying.value);
  if ('parts' in saying) return fractionWords(size, saying.parts);
  if (amount.article && size === 1 && saying.place === 0 && unit) return article(nameIn(text, unit.start, unit.end, false));
  const scale = scaleWord(text.slice(amount.start, amount.end), amount.place);
  const numeral = scale ? roundDecimal(shift(size, -scale.power), saying.place - scale.power) : roundDecimal(size, saying.place);
  // "Twice" and "a third" have no decimals in words: "1.2 times" it is.
  const inWords = amount.style === 'words' && !(saying.place < 0 && (unit?.kind === 'times' || amount.part !== undefined));
  const said = inWords ? numeralWords(numeral) : grouped(numeral, amount.grouping);
  return said === undefined || !scale ? said : `${said} ${scale.word}`;
}

function grouped(numeral: string, grouping: string | undefined): string {
  const [whole = '', fraction] = numeral.split('.');
  const said = grouping === undefined || whole.length < 4 ? whole : whole.replace(/\B(?=(?:\d{3})+$)/g, grouping);
  return fraction === undefined ? said : `${said}.${fraction}`;
}

/** "2.5 million", "two million": the word that scales the number, where its last digit is above ones or digits stand before it. */
function scaleWord(said: string, place: number): { word: string; power: number } | undefined {
  const [, word = ''] = /(?:^|[^\p{L}])(\p{L}+)$/u.exec(said.toLowerCase()) ?? [];
  const power = SCALE_PLACES.get(word);
  return power !== undefined && (place > 0 || /^[-−–+]?\d/.test(said)) ? { word, power } : undefined;
}

const PART_NAMES: ReadonlyMap<number, readonly [one: string, many: string]> = new Map([
  [2, ['half', 'halves']],
  [3, ['third', 'thirds']],
  [4, ['quarter', 'quarters']],
  [5, ['fifth', 'fifths']],
  [8, ['eighth', 'eighths']],
  [10, ['tenth', 'tenths']],
]);

/** "two and a half", "three quarters", "half"; undefined for whole numbers and parts without a common name. */
function fractionWords(size: number, parts: number): string | undefined {
  const whole = Math.floor(size + 1e-9);
  const count = Math.round((size - whole) * parts);
  const names = PART_NAMES.get(parts);
  if (!names || count === 0 || (parts > 2 && count * 2 === parts)) return undefined;
  if (whole === 0 && parts === 2) return 'half';
  const part = count === 1 ? `a ${names[0]}` : `${cardinalWords(count)} ${names[1]}`;
  return whole === 0 ? part : `${cardinalWords(whole)} and ${part}`;
}

/** The unit with what binds it to the number: " degrees", " of an hour", "-minute", " more degrees", "-ish degrees". */
function unitOf(side: SaidNumber, text: string, saying: Saying): string {
  const { amount, unit } = side;
  const size = Math.abs(saying.value);
  if (!unit || side.unitBorrowed || unit.start === unit.end) return '';
  if (!gapped(side)) return ' times';
  const written = text.slice(unit.start, unit.end);
  if ('parts' in saying && size < 1) {
    const one = namedWith(written, true);
    return one === undefined || unit.kind === 'times' ? ` ${written}` : ` ${saying.parts === 2 ? '' : 'of '}${article(one)} ${one}`;
  }
  const gap = text.slice(amount.end, unit.start);
  const inner = amount.part === undefined && /[^\s-]/.test(gap);
  const plain = inner || /^[ \u00a0\u2009\u202f]?$/.test(gap) || /^[-‐‑]$/.test(gap) ? gap : ' ';
  const single = /^[-‐‑]$/.test(gap) || (size === 1 && !('place' in saying && saying.place < 0));
  return `${plain}${nameIn(text, unit.start, unit.end, !single)}`;
}

/** The unit as it is written, in the number that fits; "times" and symbols stay. */
function nameIn(text: string, start: number, end: number, many: boolean): string {
  const written = text.slice(start, end);
  return namedWith(written, !many) ?? written;
}

function article(noun: string): string {
  return ARTICLE_AN.test(noun.toLowerCase()) ? 'an' : 'a';
}

const SECONDS: ReadonlyMap<string, number> = new Map([
  ['d', 86400],
  ['h', 3600],
  ['min', 60],
  ['s', 1],
]);
const NAMES: ReadonlyMap<string, readonly [one: string, many: string]> = new Map([
  ['d', ['day', 'days']],
  ['h', ['hour', 'hours']],
  ['min', ['minute', 'minutes']],
  ['s', ['second', 'seconds']],
]);

/** A mixed time with another number, in the same units and style; undefined below one of the larger unit. */
function mixedTime(
  { amount, mixed = [], unit, start, end }: SaidNumber,
  text: string,
  { value, place }: { value: number; place: number },
): string | undefined {
  const written = text.slice(start, end);
  const small = SECONDS.get(unit?.spelling ?? '') ?? 1;
  const parts: string[] = [];
  let left = clean(Math.abs(value));
  for (const [index, spelling] of mixed.entries()) {
    const size = (SECONDS.get(spelling) ?? 1) / small;
    const last = index === mixed.length - 1;
    const count = last ? left : Math.floor(clean(left / size));
    left = clean(left - count * size);
    parts.push(
      index === 0 && count === 1 && /^an? /i.test(written)
        ? oneOf(spelling)
        : componentOf(count, spelling, last ? place : 0, written, amount.style),
    );
  }
  if (value < 0 || Math.abs(value) < (SECONDS.get(mixed[0] ?? '') ?? 1) / small) return undefined;
  if (written.includes(':')) return clockOf(parts, written);
  return `${parts.slice(0, -1).join(' ')}${written.includes(' and ') ? ' and ' : ' '}${parts.at(-1)}`;
}

/** "An hour", as the author has it. */
function oneOf(spelling: string): string {
  const [one] = NAMES.get(spelling)!;
  return `${article(one)} ${one}`;
}

function componentOf(count: number, spelling: string, place: number, written: string, style: 'digits' | 'words'): string {
  if (written.includes(':')) return roundDecimal(count, place).padStart(2, '0');
  const named = new RegExp(`${NAMES.get(spelling)![0]}`, 'i').test(written);
  const numeral = roundDecimal(count, place);
  const said = style === 'words' ? (numeralWords(numeral) ?? numeral) : numeral;
  return `${said} ${named ? NAMES.get(spelling)![count === 1 ? 0 : 1] : spelling}`;
}

function clockOf(parts: readonly string[], written: string): string {
  const unit = /[^\d:].*$/.exec(written)?.[0] ?? '';
  return `${parts.join(':').replace(/^0(?=\d)/, '')}${unit}`;
}
