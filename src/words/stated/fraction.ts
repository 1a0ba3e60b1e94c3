/** Fractions of one: "a quarter", "three quarters", "two thirds", ¾, 3/4. */
import { cardinalAt, PARTS } from './cardinal.ts';
import type { Token } from './tokens.ts';

export interface Fraction {
  readonly value: number;
  /** How many parts make one. */
  readonly parts: number;
  readonly style: 'digits' | 'words';
  readonly next: number;
}

const VULGAR: ReadonlyMap<string, readonly [number, number]> = new Map(
  '½12 ⅓13 ⅔23 ¼14 ¾34 ⅕15 ⅖25 ⅗35 ⅘45 ⅙16 ⅚56 ⅛18 ⅜38 ⅝58 ⅞78'
    .split(' ')
    .map((entry) => [entry[0]!, [Number(entry[1]), Number(entry[2])]] as const),
);

/** Words before "half" that make it a noun of its own: "the first half". */
const NOT_BEFORE_HALF = new Set([
  'first',
  'second',
  'last',
  'other',
  'latter',
  'former',
  'third',
  'final',
  'each',
  'every',
  'either',
]);
/** Words that may follow a singular part: without one of them "a third" may be an ordinal: "a third run". */
const AFTER_PART = new Set(
  'of as less more fewer faster slower higher lower longer shorter greater smaller larger bigger again the warmer hotter cooler colder'.split(
    ' ',
  ),
);

/** The fraction that begins at a token, or undefined. */
export function fractionAt(tokens: readonly Token[], at: number): Fraction | undefined {
  return signAt(tokens, at) ?? slashAt(tokens, at) ?? wordsAt(tokens, at);
}

function signAt(tokens: readonly Token[], at: number): Fraction | undefined {
  const sign = VULGAR.get(tokens[at]?.text ?? '');
  return sign && { value: sign[0] / sign[1], parts: sign[1], style: 'digits', next: at + 1 };
}

/** `3/4` without blanks, the upper number smaller. */
function slashAt(tokens: readonly Token[], at: number): Fraction | undefined {
  const [over, slash, under] = [tokens[at], tokens[at + 1], tokens[at + 2]];
  if (!over || !under || slash?.text !== '/' || !slash.glued || !under.glued) return undefined;
  if (!/^\d{1,3}$/.test(over.text) || !/^\d{1,3}$/.test(under.text) || tokens[at + 3]?.text === '/') return undefined;
  const [n, parts] = [Number(over.text), Number(under.text)];
  return n > 0 && n < parts ? { value: n / parts, parts, style: 'digits', next: at + 3 } : undefined;
}

function wordsAt(tokens: readonly Token[], at: number): Fraction | undefined {
  const word = tokens[at]?.low;
  if (word === 'half' && !NOT_BEFORE_HALF.has(tokens[at - 1]?.low ?? '')) return words(1, 2, at + 1);
  if (word === 'quarter' && tokens[at + 1]?.low === 'of') return words(1, 4, at + 1);
  if (isQualified(tokens, at) && PARTS.has(word ?? '') && mayFollow(tokens[at + 1])) return words(1, PARTS.get(word!)!, at + 1);
  const article = word === 'a' || word === 'an' || word === 'one';
  const count = article ? { value: 1, next: at + 1 } : countAt(tokens, at);
  const part = tokens[count?.next ?? -1]?.low ?? '';
  const parts = PARTS.get(part);
  if (!count || parts === undefined || count.value === 0) return undefined;
  const spoken = part === 'quarter' && count.value === 3 && tokens[at - 1]?.low === 'and';
  if (!spoken && (count.value === 1) === /s$|ves$/.test(part)) return undefined;
  if (count.value === 1 && parts !== 2 && part !== 'quarter' && !mayFollow(tokens[count.next + 1])) return undefined;
  return words(count.value, parts, count.next + 1);
}

/** "A good fifth faster": the words before the part are its hedge. */
function isQualified(tokens: readonly Token[], at: number): boolean {
  return tokens[at - 2]?.low === 'a' && ['good', 'full', 'solid', 'clear'].includes(tokens[at - 1]?.low ?? '');
}

/** How many parts ("one and three quarter hours" is said too): in words, or digits before the word ("3 quarters"). */
function countAt(tokens: readonly Token[], at: number): { value: number; next: number } | undefined {
  const token = tokens[at];
  if (token?.kind === 'number' && /^\d{1,3}$/.test(token.text)) return { value: Number(token.text), next: at + 1 };
  return cardinalAt(tokens, at);
}

function mayFollow(token: Token | undefined): boolean {
  return token === undefined || token.kind !== 'word' || AFTER_PART.has(token.low);
}

function words(count: number, parts: number, next: number): Fraction {
  return { value: count / parts, parts, style: 'words', next };
}
