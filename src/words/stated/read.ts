/** Reads the number of an author's words and what it allows. */
import { phrasesOf } from './find.ts';
import { exactCount, withSingle } from './happenings.ts';
import { inUnit, meaningOf } from './meaning.ts';
import { isUnread, type Stated, type Unread, unread } from './stated-number.ts';

export { inUnit } from './meaning.ts';
export { isUnread, type Stated, type Unread } from './stated-number.ts';

const EXPECTED = 'a number with its unit: 71 degrees, two and a half hours, 30 percent, twice as fast';
const VAGUE = /(?:^|[^\p{L}])((?:a )?(?:few|couple)|several|many|dozens|hundreds|thousands)(?=$|[^\p{L}])/iu;

/**
 * The one number phrase of a text: the interval of true values that it allows, in the canonical unit. Where several numbers stand, the
 * only one that fits `wanted` (a figure's canonical unit) is meant: "about 71 degrees after an hour" holds a temperature. Unread where
 * there is no number, one that cannot be read, or none or several that fit; offsets are in the text.
 */
export function readStated(words: string, wanted?: string): Stated | Unread {
  const text = withSingle(words);
  const all = findStated(text);
  const failed = all.find(isUnread);
  if (failed) return failed;
  const read = all as Stated[];
  const bound = boundPair(text, read);
  if (bound) return bound;
  if (read.length === 0) return noNumber(text);
  const fitting = wanted === undefined ? read : read.map((stated) => inUnit(stated, wanted));
  const [only, second] = fitting.filter((stated) => !isUnread(stated)) as Stated[];
  if (only && !second) return exactCount(only, words);
  if (!only && fitting.length === 1) return fitting[0] as Unread;
  const offset = (second ?? (read[1] as Stated)).start;
  const said = read.map(({ start, end }) => `"${text.slice(start, end)}"`).join(' and ');
  return unread(
    `${only ? 'more than one number' : 'no number that fits'}: ${said}`,
    offset,
    'one number between the brackets, the others outside',
  );
}

/** Every number phrase of a text in its order, and Unread for each that cannot be read. Numbers in names (`larch-2`, `2nd`) are none. */
export function findStated(text: string): (Stated | Unread)[] {
  return phrasesOf(text).map((phrase) => (isUnread(phrase) ? phrase : meaningOf(phrase)));
}

/** Two numbers that mean one thing together, such as "two or three degrees", "half of 58 degrees", "a degree or two". */
function boundPair(text: string, read: readonly Stated[]): Unread | undefined {
  for (const [index, second] of read.entries()) {
    const first = read[index - 1];
    if (first && isBound(first, second, text.slice(first.end, second.start))) {
      const said = text.slice(first.start, second.end);
      return unread(
        `two numbers that mean one: "${said}"`,
        second.start,
        'one number between the brackets, or a range: 2 to 3 degrees',
      );
    }
  }
  return undefined;
}

const RATIO_OF = /^\s*(?:of\s*)?(?:the|that|a|an|its|those|these|x|×|\*)?\s*$/u;
const JOINTS =
  /^[\s,]*(?:or|and|of|out of|in|by|to|then|through|thru|till|until|plus|minus|less|times|over|per|against|versus|vs\.?|\/|x|×|\+|\(|…|\.{2,3}|[·:^'_])?\s*$/u;

function isBound(first: Stated, second: Stated, between: string): boolean {
  if (first.unit === '1' && RATIO_OF.test(between)) return true;
  return hasUnit(first) !== hasUnit(second) && JOINTS.test(between);
}

function hasUnit({ said }: Stated): boolean {
  return said.sides.at(-1)?.unit !== undefined;
}

function noNumber(text: string): Unread {
  const vague = VAGUE.exec(text);
  if (!vague) return unread('no number in these words', 0, EXPECTED);
  return unread(`"${vague[1]}", which is not a number`, vague.index + vague[0].length - vague[1]!.length, EXPECTED);
}
