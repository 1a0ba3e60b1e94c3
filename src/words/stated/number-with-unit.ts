/** A number with its unit: "half an hour", "a degree and a half", "an hour and 20 minutes", "5 degrees below zero". */
import { amountAt } from './amount.ts';
import { cardinalAt } from './cardinal.ts';
import { clockAt } from './clock-time.ts';
import { fractionAt } from './fraction.ts';
import type { Amount, SaidNumber, UnitSaid } from './phrase.ts';
import { clean, isUnread, type Unread, unread } from './stated-number.ts';
import type { Token } from './tokens.ts';
import { unitAt } from './unit-said.ts';
import { type WordsBetween, wordsBetweenAt } from './words-between.ts';

export interface NumberFound {
  readonly side: SaidNumber;
  /** What stands between the number and its unit. */
  readonly inner?: WordsBetween;
  /** Index after the last token. */
  readonly next: number;
}

/** Words that double as numbers of times: "twice as fast". */
const MULTIPLIERS: ReadonlyMap<string, number> = new Map([
  ['twice', 2],
  ['double', 2],
  ['doubled', 2],
  ['doubles', 2],
  ['thrice', 3],
  ['triple', 3],
  ['treble', 3],
  ['tripled', 3],
  ['triples', 3],
  ['quadruple', 4],
  ['quadrupled', 4],
  ['twofold', 2],
  ['threefold', 3],
  ['fourfold', 4],
  ['fivefold', 5],
  ['tenfold', 10],
  ['halved', 0.5],
  ['halves', 0.5],
]);

/** The number and unit that begin at a token. `separate` keeps "and" out: it belongs to a "between". */
export function numberWithUnitAt(tokens: readonly Token[], at: number, separate = false): NumberFound | Unread | undefined {
  if (tokens[at]?.kind === 'clock') return clockAt(tokens, at);
  const found = multiplierAt(tokens, at) ?? articleAt(tokens, at) ?? numberAt(tokens, at);
  if (!found || isUnread(found)) return found;
  const whole = separate ? found : withPart(tokens, found);
  const mixed = mixedAt(tokens, whole, separate);
  return isUnread(mixed) ? mixed : { ...belowZero(tokens, mixed), ...(found.inner && { inner: found.inner }) };
}

function multiplierAt(tokens: readonly Token[], at: number): NumberFound | undefined {
  const token = tokens[at];
  const value = MULTIPLIERS.get(token?.low ?? '');
  if (value === undefined || !token) return undefined;
  const { start, end } = token;
  const amount: Amount = { value, place: 0, style: 'words', start, end, ...(value < 1 && { part: value }) };
  const times = { spelling: '1', unit: { canonical: '1', factor: 1, offset: 0, decimal: 0 }, kind: 'times', start, end } as const;
  return { side: { amount, unit: times, start, end }, next: at + 1 };
}

/** "An hour": the article stands for one. "A second" may be an ordinal, so that no noun may follow it. */
function articleAt(tokens: readonly Token[], at: number): NumberFound | undefined {
  const token = tokens[at];
  if (token?.low !== 'a' && token?.low !== 'an') return undefined;
  const unit = unitAt(tokens, at + 1, undefined);
  if (!unit || unit.unit.kind === 'times' || unit.unit.kind === 'percent' || !/^\p{L}+$/u.test(tokens[at + 1]!.text))
    return undefined;
  if (tokens[at + 1]?.low === 'second' && !AFTER_SECOND.has(tokens[unit.next]?.low ?? '.')) return undefined;
  const amount: Amount = { value: 1, place: 0, article: true, style: 'words', start: token.start, end: token.end };
  return sideOf(amount, unit.unit, unit.next);
}

const AFTER_SECOND = new Set(
  ', . ; : ! ? ) and or later after before more less longer faster slower shorter too to per of at in on for'.split(' '),
);

function numberAt(tokens: readonly Token[], at: number): NumberFound | Unread | undefined {
  const found = amountAt(tokens, at);
  if (!found || isUnread(found)) return found;
  const unit = unitAfter(tokens, found.amount, found.next);
  if (unit && isDecade(tokens, at, unit.unit)) return undefined;
  if (unit) return sideOf(found.amount, unit.unit, unit.next);
  const inner = wordsBetweenAt(tokens, found.next);
  const later = inner && unitAt(tokens, inner.next, found.amount.style);
  if (later) return { ...sideOf(found.amount, later.unit, later.next), inner };
  if (isPronoun(tokens, at, found.next) || isGluedToName(tokens, found)) return undefined;
  return { side: { amount: found.amount, start: found.amount.start, end: found.amount.end }, next: found.next };
}

/** After a fraction "of" and an article may stand: "three quarters of an hour", "half a degree". */
function unitAfter(tokens: readonly Token[], amount: Amount, next: number) {
  const direct = unitAt(tokens, next, amount.style);
  if (direct || amount.part === undefined || Math.abs(amount.value) >= 1) return direct;
  const article = tokens[next]?.low === 'of' ? next + 1 : next;
  if (tokens[article]?.low !== 'a' && tokens[article]?.low !== 'an') return undefined;
  return unitAt(tokens, article + 1, 'words');
}

/** "In the low 70s" are no seconds. */
function isDecade(tokens: readonly Token[], at: number, unit: UnitSaid): boolean {
  return (
    unit.spelling === 's' &&
    unit.start === tokens[at]?.end &&
    /^(?:the|low|mid|high|early|late|upper)$/.test(tokens[at - 1]?.low ?? '')
  );
}

/** "One" alone is a word for a thing before it is a number; not so in "one to two watts". */
function isPronoun(tokens: readonly Token[], at: number, next: number): boolean {
  if (tokens[at]?.low !== 'one' || next !== at + 1) return false;
  const range = tokens[next]?.low === 'to' || (tokens[next]?.low === 'and' && tokens[at - 1]?.low === 'between');
  return !(range && (tokens[next + 1]?.kind === 'number' || cardinalAt(tokens, next + 1)));
}

/** `2nd`, `8GB`: letters at a number's end that are no unit. */
function isGluedToName(tokens: readonly Token[], { amount, next }: { amount: Amount; next: number }): boolean {
  const after = tokens[next];
  return amount.style === 'digits' && after?.kind === 'word' && after.start === amount.end;
}

function sideOf(amount: Amount, unit: UnitSaid, next: number): NumberFound {
  return { side: { amount, unit, start: amount.start, end: unit.end }, next };
}

/** "An hour and a half", "two degrees and a quarter": the part is one of the unit before it. */
function withPart(tokens: readonly Token[], { side, next }: NumberFound): NumberFound {
  const { amount, unit } = side;
  const fraction = tokens[next]?.low === 'and' && unit && wholeOf(amount) ? fractionAt(tokens, next + 1) : undefined;
  if (fraction?.style !== 'words' || ownUnit(tokens, fraction.next)) return { side, next };
  const sign = amount.value < 0 ? -1 : 1;
  const { article: _, ...rest } = amount;
  const value = clean(amount.value + sign * fraction.value);
  return {
    side: { ...side, amount: { ...rest, value, part: 1 / fraction.parts }, end: tokens[fraction.next - 1]!.end },
    next: fraction.next,
  };
}

function wholeOf({ place, part }: Amount): boolean {
  return place === 0 && part === undefined;
}

/** True where the fraction has a unit of its own: "an hour and a quarter of a minute". */
function ownUnit(tokens: readonly Token[], next: number): boolean {
  return tokens[next]?.low === 'of' || unitAt(tokens, next, 'words') !== undefined;
}

/** Seconds in the units of mixed times. */
const SECONDS: ReadonlyMap<string, number> = new Map([
  ['d', 86400],
  ['h', 3600],
  ['min', 60],
  ['m', 60],
  ['s', 1],
]);

/** `m` beside hours or seconds is no metre: `1h20m`, `19m40s`. */
function inMinutes(unit: UnitSaid | undefined): UnitSaid | undefined {
  if (unit?.spelling !== 'm') return unit;
  return { ...unit, spelling: 'min', unit: { canonical: 's', factor: 60, offset: 0 }, kind: 'time' };
}

/** "1 h 20 min", "two hours, five minutes and ten seconds": whole larger units, then smaller ones, into one number of the smallest. */
function mixedAt(tokens: readonly Token[], found: NumberFound, separate: boolean): NumberFound | Unread {
  const { side, next } = found;
  const larger = SECONDS.get(side.unit?.spelling ?? '');
  if (!larger || !side.unit || !wholeOf(side.amount)) return found;
  const second = numberOrArticleAt(tokens, afterJoint(tokens, next, separate));
  const smaller = second && SECONDS.get(second.side.unit?.spelling ?? '');
  if (!second || !smaller || smaller >= larger || second.side.amount.value < 0) return found;
  const { amount } = second.side;
  const unit = inMinutes(second.side.unit);
  if (amount.value * smaller >= larger) {
    const said = `${amount.value} ${unit!.spelling} after ${side.unit.spelling}`;
    return unread(said, amount.start, `less than ${larger / smaller} ${unit!.spelling}`);
  }
  const sign = side.amount.value < 0 ? -1 : 1;
  const value = clean(side.amount.value * (larger / smaller) + sign * amount.value);
  const { article: _, ...rest } = amount;
  const start = side.start;
  const mixed = [...(side.mixed ?? [inMinutes(side.unit)!.spelling]), unit!.spelling];
  return mixedAt(
    tokens,
    { side: { amount: { ...rest, value, start }, unit: unit!, mixed, start, end: second.side.end }, next: second.next },
    separate,
  );
}

function numberOrArticleAt(tokens: readonly Token[], at: number): NumberFound | undefined {
  const found = articleAt(tokens, at) ?? numberAt(tokens, at);
  return found && !isUnread(found) ? found : undefined;
}

function afterJoint(tokens: readonly Token[], at: number, separate: boolean): number {
  const comma = tokens[at]?.text === ',' ? at + 1 : at;
  return tokens[comma]?.low === 'and' && !separate ? comma + 1 : comma;
}

/** "5 degrees below zero", "5 below zero". */
function belowZero(tokens: readonly Token[], found: NumberFound): NumberFound {
  const { side, next } = found;
  const zero = tokens[next + 1]?.low === 'zero' || tokens[next + 1]?.text === '0';
  const said = tokens[next]?.low;
  const fits = side.unit === undefined || side.unit.kind === 'temperature';
  if (!zero || !fits || (said !== 'below' && said !== 'above') || side.amount.value <= 0) return found;
  if (unitAt(tokens, next + 2, 'digits')) return found;
  const unit = side.unit ?? degreesAt(side.amount.end);
  const amount = said === 'below' ? { ...side.amount, value: -side.amount.value } : side.amount;
  const end = tokens[next + 1]!.end;
  return { side: { ...side, amount, unit, end, ...(said === 'below' && { belowZero: true }) }, next: next + 2 };
}

/** "Five below zero" has no other unit than degrees. */
function degreesAt(end: number): UnitSaid {
  return { spelling: '°C', unit: { canonical: '°C', factor: 1, offset: 0, decimal: 0 }, kind: 'temperature', start: end, end };
}
