/** Whole numbers in English words, short scale: "fifty-eight", "a hundred and five", "twelve hundred". */
import type { Token } from './tokens.ts';

const SMALL =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );
const TENS = '_ _ twenty thirty forty fifty sixty seventy eighty ninety'.split(' ');
const SCALES = ['', 'thousand', 'million', 'billion', 'trillion'];

const UNITS = new Map([...SMALL.map((word, value) => [word, value] as const), ['nought', 0], ['naught', 0]]);
const TENS_OF = new Map(TENS.map((word, value) => [word, 10 * value] as const).filter(([word]) => word !== '_'));

/** Exponents of the words that scale a number: "2.5 million". */
export const SCALE_PLACES: ReadonlyMap<string, number> = new Map([
  ['hundred', 2],
  ...SCALES.slice(1).map((word, index) => [word, 3 * (index + 1)] as const),
]);

export interface Cardinal {
  readonly value: number;
  /** Exponent of the last digit said: 6 for "two million", as "2 million" is written; 0 for "two thousand", as 2,000. */
  readonly place: number;
  /** Index after the last token. */
  readonly next: number;
}

/** A digit named after "point": zero to nine, or "oh". */
export function digitAt(tokens: readonly Token[], at: number): number | undefined {
  const word = tokens[at]?.low ?? '';
  if (word === 'oh' || word === 'o') return 0;
  const value = UNITS.get(word);
  return value !== undefined && value < 10 ? value : undefined;
}

/** The whole number that begins at a token, or undefined. "a" counts as one before hundred, thousand, million. */
export function cardinalAt(tokens: readonly Token[], at: number): Cardinal | undefined {
  let total = 0;
  let scale = SCALES.length;
  let next = at;
  let place = 0;
  for (;;) {
    const group = groupAt(tokens, next === at ? next : afterJoint(tokens, next), next === at);
    if (!group) break;
    const found = Math.max(SCALES.indexOf(tokens[group.next]?.low ?? ''), 0);
    if (found >= scale || (next !== at && startsFraction(tokens, group.next))) break;
    total += group.value * 1000 ** found;
    scale = found;
    place = found > 1 ? 3 * found : 0;
    next = found > 0 ? group.next + 1 : group.next;
    if (found === 0) break;
  }
  return next === at ? undefined : { value: total, place, next };
}

/** After "thousand" and larger: a comma and "and" may stand before the next group. */
function afterJoint(tokens: readonly Token[], at: number): number {
  const comma = tokens[at]?.text === ',' ? at + 1 : at;
  return tokens[comma]?.low === 'and' ? comma + 1 : comma;
}

/** Up to 999; up to 9900 as "twelve hundred" where the number begins with it. */
function groupAt(tokens: readonly Token[], at: number, first: boolean): { value: number; next: number } | undefined {
  const article = tokens[at]?.low === 'a' && SCALE_PLACES.has(tokens[at + 1]?.low ?? '') && first;
  const head = article ? { value: 1, next: at + 1 } : belowHundredAt(tokens, at);
  if (!head || tokens[head.next]?.low !== 'hundred' || head.value === 0 || (!first && head.value > 9)) return head;
  const value = head.value * 100;
  const rest = belowHundredAt(tokens, tokens[head.next + 1]?.low === 'and' ? head.next + 2 : head.next + 1);
  if (!rest || rest.value === 0 || startsFraction(tokens, rest.next)) return { value, next: head.next + 1 };
  return { value: value + rest.value, next: rest.next };
}

function belowHundredAt(tokens: readonly Token[], at: number): { value: number; next: number } | undefined {
  const word = tokens[at]?.low ?? '';
  const ten = TENS_OF.get(word);
  if (ten === undefined) {
    const value = UNITS.get(word);
    return value === undefined ? undefined : { value, next: at + 1 };
  }
  const unit = UNITS.get(tokens[at + 1]?.low ?? '');
  return unit !== undefined && unit > 0 && unit < 10 ? { value: ten + unit, next: at + 2 } : { value: ten, next: at + 1 };
}

/** True where a group's number belongs to a fraction after it: "a hundred and three quarters". */
function startsFraction(tokens: readonly Token[], at: number): boolean {
  return PARTS.has(tokens[at]?.low ?? '');
}

/** Words for parts of one, and how many make it up. */
export const PARTS: ReadonlyMap<string, number> = new Map(
  (
    [
      [2, 'half halves'],
      [3, 'third thirds'],
      [4, 'quarter quarters fourth fourths'],
      [5, 'fifth fifths'],
      [6, 'sixth sixths'],
      [7, 'seventh sevenths'],
      [8, 'eighth eighths'],
      [9, 'ninth ninths'],
      [10, 'tenth tenths'],
      [100, 'hundredth hundredths'],
      [1000, 'thousandth thousandths'],
    ] as const
  ).flatMap(([parts, words]) => words.split(' ').map((word) => [word, parts] as const)),
);

/** A whole number from 0 to 999 999 999 999 999 in words, with "and" before tens and units: "one hundred and five". */
export function cardinalWords(value: number): string {
  if (!Number.isSafeInteger(value) || value < 0 || value >= 1e15)
    throw new RangeError(`expected a whole number below 1e15, got ${value}`);
  if (value < 1000) return belowThousand(value);
  const power = Math.floor((String(value).length - 1) / 3);
  const rest = value % 1000 ** power;
  const head = `${belowThousand(Math.floor(value / 1000 ** power))} ${SCALES[power]}`;
  if (rest === 0) return head;
  return `${head}${rest < 100 ? ' and ' : ' '}${cardinalWords(rest)}`;
}

function belowThousand(value: number): string {
  if (value < 20) return SMALL[value]!;
  if (value < 100) return TENS[Math.floor(value / 10)]! + (value % 10 === 0 ? '' : `-${SMALL[value % 10]}`);
  const rest = value % 100;
  return `${SMALL[Math.floor(value / 100)]} hundred${rest === 0 ? '' : ` and ${belowThousand(rest)}`}`;
}
