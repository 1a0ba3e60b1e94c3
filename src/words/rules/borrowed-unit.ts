/** A number that has the unit of one before it in its sentence, or of words before a colon: "7.3 W against 6.4", "Power (W): 7.3". */
import type { Stated } from '../stated/read.ts';

/** What stands between a number with its unit and one that shares it: each form whole. */
const LEADS = [
  // "7.3 W against 6.4", "58 °C, not 61", "7.3 W, up from 6.4", "59.5 degrees, then 65"
  /^\s*[,;]?\s*(?:(?:and|but|or|not|against|versus|vs\.?|up|down|from|instead|of|rather|than|compared|to|with|where|while|whereas|becomes?|became|then)\s+){1,4}(?:[\p{L}'’-]+\s+)?$/u,
  // "7.3 W (6.4 at stock)"
  /^\s*\(\s*(?:against\s+|from\s+|up\s+from\s+|down\s+from\s+)?$/u,
  // "7.3 W, quick 9.3", "10.39 W; quick: 9.32", "7.3 watts; the fast one, 10.4"
  /^\s*[,;–—]\s*(?:[\p{L}'’-]+\s+){0,3}(?:[\p{L}'’-]+[:,]?\s+)?$/u,
  // "59.5 °C at rated, but at 65 with brisk", "the old one hit 65 W where this one manages 60", "27.5 °C, i.e. by 32"
  /^[^.;:!?()]{0,60}?[\s,](?:at|by|is|was|are|were|hits?|reach(?:es|ed)|pulls?|pulled|draws?|drew|needs?|takes?|took|manages?|scores?|scored)\s+$/u,
  // "call it ten and a half watts, call it 11"
  /^[^.;:!?()]{0,60}?,\s*call\s+it\s+$/u,
  // "78.5 °C; the limit is 84"
  /^\s*;[^.;:!?()]{0,40}\s(?:is|was|at)\s+$/u,
  // "233.6 MB/s at the rated clock, 257.7 at brisk and 279.4 at quick"
  /^\s+(?:at|in|on|with|for)\s+[\p{L}'’ -]{1,40}(?:,\s*(?:and\s+|then\s+)?|\s+and\s+)$/u,
];
/** Words before a number that make it a name or a place in a list. */
const NAMES =
  /\b(?:version|firmware|kernel|revision|step|steps|part|page|figure|table|chart|section|chapter|port|pin|slot|day|note|no|number|core|cores|model|type|in|(?<!instead\s+)of|on|since|until|after|within|every|each|another|first|last|next)\.?\s+$/i;
/** What may stand behind such a number: the end of its clause, or a word that goes on. */
const ENDS =
  /^\s*(?:$|[.,;:!?)](?!\d)|(?:at|for|in|on|with|when|before|after|and|or|but|under|while|where|against|once|without|during)\b)/u;
const YEAR = /^(?:19|20)\d\d$/;

/** Whether a number without a unit has that of an earlier one; `between` is what stands between the two. */
export function borrows(prose: string, said: Stated, between: string): boolean {
  const number = prose.slice(said.start, said.end);
  if (!/^[\d.,]+$/.test(number) || YEAR.test(number)) return false;
  if (isDecimal(prose, said)) return !/[.!?]\s/.test(between);
  return LEADS.some((form) => form.test(between)) && !NAMES.test(between) && ENDS.test(prose.slice(said.end));
}

/** What makes a decimal a name, or a place in a text: "version 3.1", "Larch 2.1", "at 3.30 pm". */
const NUMBERED =
  /(?:\b(?:versions?|firmwares?|kernels?|releases?|revisions?|rev|builds?|section|chapter|clause|part|page|figure|fig|table|chart|equation|eq|step|item|point|no|number|port|driver|image|protocol|edition|standard|class|grade)\.?\s+|[\p{L}/_-])$/iu;
/** Of "kernel 6.12 and then 6.13" what stands between the name and the second number. */
const LISTED = /\d[\d.]*(?:\s*,)?(?:\s+(?:and|or|to|then))*\s+$/i;
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

/** Whether a decimal that borrows no unit is a ratio or a value all the same. */
export function isLoneDecimal(prose: string, said: Stated): boolean {
  const equals = /^[=≈~]/.test(prose.slice(said.start));
  return isDecimal(prose, said) && (equals || BEFORE_ALONE.test(prose.slice(0, said.start)));
}

/** The unit in words that end with a colon right before a number: "Power, in watts: ", "Clock (GHz): "; '' for none. */
export function announced(prose: string, { start }: Stated, isUnit: (word: string) => boolean): string {
  const said = /(?:\((?:in\s+)?([^()]+)\)|\bin\s+(\S+?))\s*(?::|\b(?:is|was|are|were|reached|came\s+to))\s*$/.exec(
    prose.slice(0, start),
  );
  const word = (said?.[1] ?? said?.[2] ?? '').trim();
  return word !== '' && isUnit(word) ? word : '';
}
