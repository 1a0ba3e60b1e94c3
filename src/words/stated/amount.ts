/** A number as it is said, sign and fractions included: "minus 5", "two and a half", 2½, "two point five million". */
import { shift } from '../../quantities/decimal.ts';
import { readUnit } from '../../quantities/units.ts';
import { cardinalAt, digitAt, SCALE_PLACES } from './cardinal.ts';
import { type Digits, digitsOf, powerOf, scaled } from './digits.ts';
import { type Fraction, fractionAt } from './fraction.ts';
import type { Amount } from './phrase.ts';
import { clean, isUnread, type Unread, unread } from './stated-number.ts';
import type { Token } from './tokens.ts';

export interface AmountFound {
  readonly amount: Amount;
  /** Index after the last token. */
  readonly next: number;
}

const MINUS = new Set(['-', '−', '–']);
/** Words that go on counting where a number has ended. */
const COUNTING = new Set(
  'dozen dozens score hundred hundreds thousand thousands million millions billion billions trillion half halves'.split(' '),
);
/** "That point five runs agree on" is no decimal. */
const BEFORE_NOUN_POINT = new Set('a an the that this each every which one any some no at'.split(' '));

/** The number that begins at a token, or undefined; Unread where its digits cannot be one number. */
export function amountAt(tokens: readonly Token[], at: number): AmountFound | Unread | undefined {
  const first = signedFrom(tokens, at);
  if (first === undefined) return undefined;
  const found = unsignedAt(tokens, first);
  if (!found || isUnread(found)) return found;
  const after = tokens[found.next];
  if (after && COUNTING.has(after.low))
    return unread(`"${after.text}" after a number`, after.start, 'one number in digits or words');
  const negative = first > at && tokens[at]?.text !== '+';
  const start = tokens[at]!.start;
  const end = tokens[found.next - 1]!.end;
  const { next, value, ...more } = found;
  return { amount: { ...more, value: negative && value !== 0 ? -value : value, start, end }, next };
}

/** Where the number begins after its sign; undefined where the number's first token cannot begin one. */
function signedFrom(tokens: readonly Token[], at: number): number | undefined {
  const token = tokens[at];
  if (!token) return undefined;
  const next = tokens[at + 1];
  const stands = at === 0 || !token.glued || /^[([“"'~≈<>≤≥±]$/.test(tokens[at - 1]!.text);
  if ((MINUS.has(token.text) || token.text === '+') && next?.glued && next.kind !== 'word') return stands ? at + 1 : undefined;
  if (token.low === 'minus' || token.low === 'negative') return tokens[at - 1]?.low === 'or' || !next ? undefined : at + 1;
  return token.kind === 'number' && isNamePart(tokens, at) ? undefined : at;
}

/** A number that is part of a name: `no-1`, `larch-2`, `x86`. */
function isNamePart(tokens: readonly Token[], at: number): boolean {
  const before = tokens[at - 1];
  if (!tokens[at]!.glued || !before) return false;
  if (before.kind === 'word') return !isUnitOfNumber(tokens, at - 1);
  const word = tokens[at - 2];
  // "6.4 W/10.4 W", "5.1 V/1.26 A": a unit stands behind both.
  if (before.text === '/' && tokens[at - 3]?.kind === 'number' && isUnit(word) && isUnit(tokens[at + 1])) return false;
  return before.glued && /^[-‐‑._/]$/.test(before.text) && word?.kind === 'word' && !isUnitOfNumber(tokens, at - 2);
}

/** `10W` of `10W-20W`, `1h` of `1h20m`: letters right after digits that are not part of a name themselves. */
function isUnitOfNumber(tokens: readonly Token[], at: number): boolean {
  return tokens[at]!.glued && tokens[at - 1]?.kind === 'number' && !isNamePart(tokens, at - 1);
}

function isUnit(token: Token | undefined): boolean {
  return token?.kind === 'word' && readUnit(token.text) !== undefined;
}

type Unsigned = Omit<Amount, 'start' | 'end'> & { next: number };

function unsignedAt(tokens: readonly Token[], at: number): Unsigned | Unread | undefined {
  const fraction = fractionAt(tokens, at);
  if (fraction) return { value: fraction.value, place: 0, part: 1 / fraction.parts, style: fraction.style, next: fraction.next };
  const token = tokens[at]!;
  if (token.kind === 'number') {
    const digits = digitsOf(token);
    return isUnread(digits) ? digits : withParts(tokens, scaledAt(tokens, digits, at + 1, 'digits'));
  }
  if (token.kind === 'power') {
    const digits = powerOf(token);
    return isUnread(digits) ? digits : { ...digits, style: 'digits', next: at + 1 };
  }
  const words = wordsAt(tokens, at);
  return words && withParts(tokens, words);
}

/** A decimal or a whole number in words. */
function wordsAt(tokens: readonly Token[], at: number): Unsigned | undefined {
  const whole = cardinalAt(tokens, at);
  const point = whole?.next ?? at;
  const decimals =
    tokens[point]?.low === 'point' && (whole || !BEFORE_NOUN_POINT.has(tokens[at - 1]?.low ?? ''))
      ? decimalsFrom(tokens, point + 1)
      : '';
  if (decimals !== '') {
    const value = Number(`${whole?.value ?? 0}.${decimals}`);
    return scaledAt(tokens, { value, place: -decimals.length }, point + 1 + decimals.length, 'words');
  }
  return whole && { value: whole.value, place: whole.place, style: 'words', next: whole.next };
}

function decimalsFrom(tokens: readonly Token[], at: number): string {
  const digits: number[] = [];
  for (let digit = digitAt(tokens, at); digit !== undefined; digit = digitAt(tokens, at + digits.length)) digits.push(digit);
  return digits.join('');
}

/** "2.5 million": a word after digits or decimals that scales them. */
function scaledAt(tokens: readonly Token[], digits: Digits, next: number, style: Amount['style']): Unsigned {
  const power = SCALE_PLACES.get(tokens[next]?.low ?? '');
  if (power === undefined) return { ...digits, style, next };
  const value = scaled(digits, power);
  return { ...value, place: power > 3 || digits.place < 0 ? value.place : 0, style, next: next + 1 };
}

/** "and a half" after a whole number; 2½, 2 1/2. */
function withParts(tokens: readonly Token[], whole: Unsigned): Unsigned {
  const joined = tokens[whole.next]?.low === 'and';
  const fraction = whole.place === 0 ? fractionAt(tokens, joined ? whole.next + 1 : whole.next) : undefined;
  if (!fraction || !bound(joined, fraction, tokens[whole.next])) return whole;
  const power = SCALE_PLACES.get(tokens[fraction.next]?.low ?? '');
  const [value, part] = [clean(whole.value + fraction.value), 1 / fraction.parts];
  if (power === undefined) return { ...whole, value, part, next: fraction.next };
  return { ...whole, value: shift(value, power), part: shift(part, power), next: fraction.next + 1 };
}

/** Words need their "and"; signs must not have it. */
function bound(joined: boolean, fraction: Fraction, first: Token | undefined): boolean {
  return fraction.style === 'words' ? joined : !joined && first !== undefined;
}
