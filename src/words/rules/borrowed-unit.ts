/**
 * A number without a unit that has that of an earlier one of its paragraph, or of words before it: "7.3 W against 6.4", "Power (W): 7.3",
 * "Rated, it settles at 59.5 °C. Brisk, 65." The rule: in digits, where a measured number stands before it in this sentence or the last, a
 * number that counts nothing (no noun follows) and names nothing (no word of a name goes before it) is one more of the same kind.
 */
import type { Stated } from '../stated/read.ts';
import { CAME_TO } from './beside-number.ts';

/** Things that have numbers for names, one or several: "port 1", "on cores 0, 2". */
const NUMBERED_THINGS =
  'version|firmware|kernel|revision|step|part|page|figure|table|chart|section|chapter|port|pin|slot|day|note|number|core|model|type|room|floor|bench|shelf|bay|lane|channel|row|column|line|item|appendix|house|bus|route|platform|profile|rung';
/** Words before a number that make it a name or a place in a list. */
const NAMES = new RegExp(
  String.raw`\b(?:(?:${NUMBERED_THINGS})s?|no|in|on|since|until|after|within|every|each|another|first|last|next)\.?\s+$`,
  'i',
);
/** Further numbers behind such names, or behind one in capitals: "ports 1, 2 and ", "RFC 791, ", "day 12, "; but "in bay 5, 61". */
const NAMED_LIST = new RegExp(
  String.raw`(?:\b(?:(?:${NUMBERED_THINGS})s|day)\s+|\b(?:${NUMBERED_THINGS})\s+(?=\d+\s+(?:and|or|to)\b)|(?<!\p{L})(?:(?!CPU|GPU|SSD|RAM)\p{Lu}){2,}s?\s+)\d+(?:,?\s+(?:(?:and|or|to)\s+)?\d+)*,?\s+(?:(?:and|or|to)\s+)?$`,
  'u',
);
const NUMBER_AS_NAME = String.raw`\d+(?:\.\d+)*`;
/** Three and more behind a thing that has a number for its name are all names: "core 0, 1, 2 and 3". Of two with a comma the second may be a value. */
const LIST_OF_NAMES = new RegExp(
  String.raw`\b(?:${NUMBERED_THINGS})\s+${NUMBER_AS_NAME}(?:,\s+${NUMBER_AS_NAME})*(?:,?\s+(?:and|or|to)\s+|(?<=,\s+${NUMBER_AS_NAME}),\s+)${NUMBER_AS_NAME}(?![\d.,]*\d)`,
  'giu',
);
/** "One of 4", "a set of 5", "of the 20"; but "instead of 6.4", "ahead of 1,190", "lows of 48". */
const PART_OF =
  /(?<!\b(?:instead|ahead|short|lows?|highs?|peaks?|dips?|averages?|means?|medians?|totals?|values?|readings?|scores?|rates?|levels?|maximum|minimum)\s+)\bof\s+(?:(?:the|these|those|our|all)\s+)*$/i;
/** Somebody's age: "my neighbour, 47, ". */
const AGE = /\b(?:my|our|his|her|their|your)\s+\p{Ll}+,\s+$/iu;
/** The first figures of a number whose thousands a blank parts: half of it would be another number. */
const HALF = /(?<![\d.,])\d{1,3}(?:\s\d{3})*\s$/;
/** What may stand behind such a number: the end of its clause, or a word that goes on. */
export const ENDS =
  /^\s*(?:$|[.,;:!?)](?!\d)|\(|(?:at|for|in|on|with|when|before|after|and|or|but|under|while|where|against|once|without|during)\b)/u;
/** A letter or sign right before a number: "no-1", "A/4". */
const GLUED = /[\p{L}\p{N}/_#:.,-]$/u;
const YEAR = /^(?:19|20)\d\d$/;

/** Each number with a word behind it that says whose it is: "233 MB/s rated, 258 brisk". */
const LABELLED = /^\s+[\p{Ll}'’-]+\s*[,;]\s*(?:and\s+|then\s+)?$/u;
const LABEL = /^\s+[\p{Ll}'’-]+\s*(?:$|[.,;!?)](?!\d)|and\b)/u;
/** A sentence about prices: "40 euros for a 10 W supply, and 12 for the cable". */
const MONEY = /[$€£¥₹]|\b(?:euros?|dollars?|pounds?|cents?|francs?|yen|rupees?|price|prices|paid|pay|pays)\b/iu;
/** Ends of sentences in what stands between two numbers. */
const SENTENCES = /[.!?](?=["')\]]*\s)/g;
const SENTENCES_ONE = new RegExp(SENTENCES.source);

/**
 * Whether a number without a unit has that of an earlier one; `between` is what stands between the two. `bare` are the places of all
 * numbers of the prose that have no unit.
 */
export function borrows(prose: string, said: Stated, between: string, bare: readonly number[]): boolean {
  const number = prose.slice(said.start, said.end);
  if (!isValue(number, said) || (between.match(SENTENCES) ?? []).length > 1) return false;
  if (isDecimal(prose, said)) return true;
  if (HEDGE.test(number) && SENTENCES_ONE.test(between)) return false;
  if (
    isPlace(prose, said.start) &&
    bare.some((other) => other !== said.start && nounBefore(prose, other) === nounBefore(prose, said.start))
  )
    return false;
  const [before, rest] = [prose.slice(0, said.start), prose.slice(said.end)];
  if (/^\d{3}$/.test(number) && HALF.test(before)) return false;
  if ([NAMES, NAMED_LIST, PART_OF, AGE, GLUED, CAPITAL].some((form) => form.test(before))) return false;
  if (isInList(prose, said.start)) return false;
  if (MONEY.test(sentenceOf(before))) return false;
  return ENDS.test(rest) || (LABELLED.test(between) && LABEL.test(rest));
}

function isInList(prose: string, at: number): boolean {
  return [...prose.matchAll(LIST_OF_NAMES)].some(({ index, 0: { length } }) => index < at && at < index + length);
}

/** "At desk 4": what stands somewhere, with a number for its name. Not "at best 61" and other words that say how a value was reached. */
const PLACE =
  /\b(?:in|on|at|from|into|under|near|behind|beside|after|before|during)\s+(?!(?:best|worst|most|least|first|last|rest|idle|load|average|total|all|peak|only|about|just|nearly|almost|over|under)\b)\p{Ll}[\p{Ll}-]*\s+$/u;

function isPlace(prose: string, at: number): boolean {
  return PLACE.test(prose.slice(0, at));
}

/** The word right before a number; two numbers behind the same noun name two of its kind ("on tray 3 …, on tray 4"). */
function nounBefore(prose: string, at: number): string | undefined {
  return /(\p{Ll}[\p{Ll}-]*)\s+$/u.exec(prose.slice(0, at))?.[1];
}

/** Words that stand before anything. */
const BEFORE_ANYTHING = new Set([
  'the',
  'an',
  'in',
  'on',
  'of',
  'no',
  'and',
  'or',
  'for',
  'is',
  'was',
  'are',
  'were',
  'than',
  'only',
]);

/**
 * Whether a number has the unit of the next one, before which the same word stands: "the fast run settles at 84, the quick one at 79 °C". `next`
 * is where that one begins.
 */
export function borrowsAhead(prose: string, said: Stated, next: number): boolean {
  const number = prose.slice(said.start, said.end);
  const word = nounBefore(prose, said.start);
  if (word === undefined || BEFORE_ANYTHING.has(word) || word !== nounBefore(prose, next)) return false;
  if (NAMES.test(prose.slice(0, said.start))) return false;
  const between = prose.slice(said.end, next);
  return (
    said.nominal >= 10 && isValue(number, said) && !SENTENCES_ONE.test(between) && ENDS.test(between) && !isPlace(prose, said.start)
  );
}

/** A word such as "under" or "about" that belongs to the number, and says how near it lies. */
const HEDGE = /^(?:\p{L}+\s+)+(?=[-−]?\d)/u;

/** Digits, with a sign or without, that are no year; in words from ten on, since "the two" and "one" stand for things. */
function isValue(words: string, { nominal }: Stated): boolean {
  const number = words.replace(HEDGE, '');
  if (/^[-−]?[\d.,]+$/.test(number)) return !YEAR.test(number);
  return nominal >= 10 && /^[\p{L}-]+$/u.test(number);
}

function sentenceOf(before: string): string {
  return before.split(SENTENCES).at(-1) as string;
}

/** A name and what may stand between it and its value: "rated 59", "Brisk: 65", "fast (84)", "Rated reached 59". */
const BEHIND_NAME = new RegExp(String.raw`([\p{L}\p{N}_-]+)(?::?\s+\(?|\s+${CAME_TO}\s+)$`, 'u');
/** An article makes another thing of an alias ("the first 10", "the Larch 2"), a capital within a sentence the name of a device or month. */
const OTHER_NAME = /(?:\b(?:[Tt]he|[Aa]n?)\s+[\p{L}\p{N}_-]+|[\p{L}\p{N}]\s+\p{Lu}[\p{L}\p{N}_-]*)$/u;

/** What a note's own subjects are called, in lower case. */
export interface Named {
  /** The short names of the runs. */
  readonly runs: ReadonlySet<string>;
  /** Titles of runs and devices. */
  readonly titles: readonly string[];
}

/** The run whose name stands right before a bare number that counts nothing: "rated 59, brisk 65". `titles`: no part of these is a value. */
export function runBefore(prose: string, said: Stated, { runs, titles }: Named): string | undefined {
  const behind = BEHIND_NAME.exec(prose.slice(0, said.start));
  const [name = '', word] = [behind?.[1], behind?.[1]?.toLowerCase()];
  if (!behind || word === undefined || !runs.has(word) || OTHER_NAME.test(prose.slice(0, behind.index + name.length)))
    return undefined;
  const number = prose.slice(said.start, said.end);
  if (titles.some((title) => title.includes(`${word} ${number}`))) return undefined;
  return isValue(number, said) && ENDS.test(prose.slice(said.end)) ? word : undefined;
}

/** What makes a decimal a name, or a place in a text: "version 3.1", "Larch 2.1", "at 3.30 pm". */
const NUMBERED =
  /(?:\b(?:versions?|firmwares?|kernels?|releases?|revisions?|rev|builds?|section|chapter|clause|part|page|figure|fig|table|chart|equation|eq|step|item|point|no|number|port|driver|image|protocol|edition|standard|class|grade)\.?\s+|[\p{L}/_-])$/iu;
/** Of "kernel 6.12 and then 6.13" what stands between the name and the second number. */
const LISTED = /(?:\d[\d.]*(?:\s*,\s*|\s+(?=and|or|to|then))(?:(?:and|or|to|then)\s+)*)+$/i;
const CAPITAL = /(?<=[^.!?\s]\s+)\p{Lu}[\p{L}\p{N}-]*\s+$/u;
/** "3.30 pm", "3.1.2", "2.5 inches" and other words that make it something else. */
const OTHERWISE = /^(?:\.?\d|\s*(?:am|pm|a\.m|p\.m)\b|-\p{L}|\p{L}|\s+\p{Ll}+(?:s|ches)\b(?<!\b(?:is|was|as|less|this|its)))/u;

/**
 * Whether a number is a bare decimal that can only be data: nobody writes "0.73" of anything but a measured or computed value, but for names and
 * places in a text.
 */
function isDecimal(prose: string, { start, end }: Stated): boolean {
  const before = prose.slice(0, start);
  if (!/^(?:[=≈~]\s?|about\s)?\d+\.\d+$/.test(prose.slice(start, end)) || OTHERWISE.test(prose.slice(end))) return false;
  if (/^[=≈~]/.test(prose.slice(start))) return true;
  return !NUMBERED.test(before) && !CAPITAL.test(before) && !NUMBERED.test(before.replace(LISTED, ''));
}

/** What stands before a decimal that has no unit and no number with one before it: "the exponent is 0.73", and no name such as "integer mix 3.1". */
const BEFORE_ALONE =
  /(?:^|[(:,;–—→]\s*|\b(?:at|is|was|are|were|of|to|by|only|just|merely|still|about|nearly|almost|exponent|power|ratio|factor|speed-?ups?|scores?|scored|and|or|from|than|not|then|but|reach(?:es|ed)|kept|keeps)\s+)$/iu;

/** What another decimal is of: "for the grid ", "of its copies ", "with the lid ". */
const OF_ANOTHER = /\b(?:for|of|with)\s+(?:(?:the|its|our|this|that|these|those|an?)\s+(?:\p{Ll}[\p{Ll}-]*\s+){1,3}|\p{Ll}+s\s+)$/u;

/** What stands between two decimals of a list: ", the grid ", "; grid ", " for copies, its rivals ". A number or a hyphen may belong to a name. */
const NEXT_OF_LIST =
  /^[^\d.!?]*[,;]\s+(?:(?:and|but)\s+)?(?:(?:the|its|our|their|this|that|these|those)\s+(?:\p{Ll}[\p{Ll}-]*\s+){1,2}|\p{Ll}+\s+)$/u;

/**
 * Whether a decimal that borrows no unit is a ratio or a value all the same. `before` is where the last one ended: in the same sentence and
 * in the next, words that say of what it is make one more of its kind ("the exponent is 0.17, for the grid 0.97"),
 * and in the same sentence a noun behind a comma does.
 */
export function isLoneDecimal(prose: string, said: Stated, before?: number): boolean {
  if (!isDecimal(prose, said)) return false;
  const between = before === undefined ? undefined : prose.slice(before, said.start);
  if (between !== undefined && (between.match(SENTENCES) ?? []).length <= 1 && OF_ANOTHER.test(prose.slice(0, said.start)))
    return true;
  if (between !== undefined && NEXT_OF_LIST.test(between)) return true;
  return /^[=≈~]/.test(prose.slice(said.start)) || BEFORE_ALONE.test(prose.slice(0, said.start));
}

/** The unit in words that end with a colon right before a number: "Power, in watts: ", "Clock (GHz): "; '' for none. */
export function announced(prose: string, { start }: Stated, isUnit: (word: string) => boolean): string {
  const said = /(?:\((?:in\s+)?([^()]+)\)|\bin\s+(\S+?))\s*(?::|\b(?:is|was|are|were|reached|came\s+to))\s*$/.exec(
    prose.slice(0, start),
  );
  const word = (said?.[1] ?? said?.[2] ?? '').trim();
  return word !== '' && isUnit(word) ? word : '';
}

/** "Power is given in watts.", "all in GB/s:" */
const GIVEN_IN = /\b(?:given|stated|measured|quoted|shown|printed|listed|expressed|all)\s+in\s+(\S+?)(?=[.:;,]?\s)/giu;

/** A unit that a sentence gives for the numbers behind it, with where that stands; undefined where none does before an offset. */
export function givenUnit(
  prose: string,
  before: number,
  isUnit: (word: string) => boolean,
): { readonly unit: string; readonly end: number } | undefined {
  const found = [...prose.slice(0, before).matchAll(GIVEN_IN)].findLast((match) => isUnit(match[1] as string));
  return found && { unit: found[1] as string, end: found.index + found[0].length };
}
