/** Amounts that are said otherwise than by a number with its unit: "an order of magnitude", "a dozen watts", "in the mid-fifties", "one in five runs". */
import type { Span } from '../expression/expression-tree.ts';
import { HAPPENING } from '../stated/happenings.ts';
import { OUTCOMES, THINGS } from './beside-number.ts';
import { COUNT } from './count-words.ts';

/** An amount that data could hold, and what an author may write so that it is held. */
export interface OtherAmount extends Span {
  readonly what: string;
  readonly expected: string;
}

/** What can be held as it stands where it stands alone. */
export const COUNT_OF_ONE = 'a count of one';

const TENS = 'twenties|thirties|forties|fifties|sixties|seventies|eighties|nineties';
const PART = 'low|lower|mid|middle|high|higher|upper';
const KINDS = `(?:${THINGS}|readings?|samples?|rows?)`;
const COUNTED = `(?:${KINDS}|times|tries)`;

/** `unit`: whether the first word behind the amount has to be a unit or a thing that the data counts. */
const FORMS: readonly { readonly pattern: RegExp; readonly unit?: true; readonly what: string; readonly expected: string }[] = [
  {
    pattern: /\b(?:an?|one|two|three|four|five|six|several|half an)\s+orders?\s+of\s+magnitude\b/gi,
    what: 'orders of magnitude',
    expected: 'the ratio: `9.6 times`',
  },
  {
    pattern: /\b(?:two|three|four|five|six|seven|eight|nine|ten|\d+)-?fold(?=\s*(?:$|[.,;:!?)]))/gi,
    what: 'a multiple',
    expected: 'the ratio: `3 times`',
  },
  {
    pattern: /(?<=\bratio\b[^.;:]{0,40}\s)\d+(?:\.\d+)?\s?:\s?1\b(?![\d:/]|\.\d)/g,
    what: 'a ratio of two',
    expected: 'one number: `4.7 times`',
  },
  {
    pattern: new RegExp(
      String.raw`\b${COUNT}\s+out\s+of\s+(?:the\s+)?${COUNT}\b(?=\s+(?:held|passed|failed|hung|restarted|booted|throttled|kept|settled|reached|survived|got)\b)`,
      'gi',
    ),
    what: 'a share',
    expected: 'both counts as values, or a percentage',
  },
  {
    pattern: new RegExp(String.raw`\b(?:one|a\s+single)\s+${HAPPENING}\b`, 'gi'),
    what: COUNT_OF_ONE,
    expected: 'the count: `1 throttle event`',
  },
  {
    pattern: new RegExp(
      String.raw`(?<=^|[.,;:!?(–—]\s*|\b(?:and|but|then|only|just|exactly|where|while)\s+)one(?:\s+of\s+(?:them|these|those))?(?=(?:\s+of\s+(?:the|our|its)\s+(?:${THINGS}))?\s+(?:${OUTCOMES})\b(?!\s+(?:me|us|you|him|her|by)\b))`,
      'gi',
    ),
    what: COUNT_OF_ONE,
    expected: 'a claim: `any *.throttle_events >= 1`, or the count as a value',
  },
  {
    pattern:
      /(?<=\b(?:throttled|restarted|rebooted|hung|crashed|intervened|stepped\s+in)\s+(?:only\s+|just\s+|exactly\s+)?)once\b(?=\s*(?:$|[.,;:!?)]|(?:during|in|before|after|at|on|under|over|per|within|and|but|or|while|when)\b))/gi,
    what: COUNT_OF_ONE,
    expected: 'the count: `1 throttle event`',
  },
  {
    // "x86", "x64" and "x4" are names: with the letter only a decimal is a multiple.
    pattern: /(?<![\p{L}\p{N}×]|\p{N}\s)(?:×\s?\d+(?:\.\d+)?|x\s?\d+\.\d+)(?![\p{L}\p{N}×])(?!\s?[×x])/gu,
    what: 'a multiple',
    expected: 'the ratio: `1.24 times`',
  },
  {
    pattern: /\b(?:two|three|four|five|six|seven|eight|nine|ten)\s+to\s+one\b(?=\s*(?:$|[.,;:!?)]))/gi,
    what: 'a ratio of two',
    expected: 'one number: `2 times`',
  },
  {
    pattern:
      /(?<![\p{L}\p{N}.,])\d{2,}(?:\.\d+)?k\b(?![\p{N}/-])(?!\s+(?:resistors?|resistances?|pull-?(?:ups?|downs?)|thermistors?|potentiometers?|runs?|runners?|races?|walks?)\b)/gu,
    what: 'thousands',
    expected: 'the whole number: `85,000 IOPS`',
  },
  {
    pattern: /\b(?:half\s+an?|an?|one|two|three|four|several)\s+dozen\b/gi,
    unit: true,
    what: 'dozens',
    expected: 'the number: `12`',
  },
  {
    pattern: new RegExp(
      String.raw`\b(?:(?:${PART})[- ])?(?:\d0s|${TENS})\b(?=\s*(?:°|degrees|celsius|kelvin|watts?|percent|%))`,
      'gi',
    ),
    what: 'a decade',
    expected: 'the number, or two: `between 70 and 79 °C`',
  },
  {
    pattern: new RegExp(String.raw`\b(?:in|into|to)\s+the\s+(?:(?:${PART})[- ])(?:\d0s|${TENS})\b`, 'gi'),
    what: 'a decade',
    expected: 'the number, or two: `between 70 and 79 °C`',
  },
  {
    pattern: new RegExp(String.raw`\b(?:only|just|exactly)\s+one\s+of\s+(?:the\s+|our\s+)?${COUNT}\s+${COUNTED}\b`, 'gi'),
    what: 'a count of several',
    expected: 'a claim of each, or both counts as values',
  },
  {
    pattern: new RegExp(
      String.raw`\b${COUNT}\s+(?:${KINDS}\s+(?:in|out\s+of)\s+(?:every\s+)?${COUNT}|(?:in|out\s+of)\s+(?:every\s+)?${COUNT}\s+${COUNTED})\b(?!\s+(?:settings?|runs?|specimens?))`,
      'gi',
    ),
    what: 'a share',
    expected: 'both counts as values, or a percentage',
  },
];

/** All of them in their order. `isUnit` says what is a unit of the project. */
export function otherAmounts(prose: string, isUnit: (word: string) => boolean): OtherAmount[] {
  const all = FORMS.flatMap(({ pattern, unit, what, expected }) =>
    [...prose.matchAll(pattern)].flatMap((match) => {
      const end = match.index + match[0].length;
      const word = unit ? behind(prose.slice(end), isUnit) : '';
      return word === undefined ? [] : [{ start: match.index, end: end + word.length, what, expected }];
    }),
  ).sort((a, b) => a.start - b.start || b.end - a.end);
  return all.filter(({ start }, index) => all.slice(0, index).every(({ end }) => end <= start));
}

const THING = new RegExp(String.raw`^\s+(?:of\s+(?:the\s+)?)?${COUNTED}\b`, 'u');

/** The unit or the counted thing that stands behind an amount, its blank included; undefined for anything else. */
function behind(rest: string, isUnit: (word: string) => boolean): string | undefined {
  const word = /^\s+[^\s.,;:!?]+/u.exec(rest)?.[0];
  return word !== undefined && isUnit(word.trim()) ? word : THING.exec(rest)?.[0];
}
