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
  // "233.6 MB/s at the rated clock, 257.7 at brisk and 279.4 at quick"
  /^\s+(?:at|in|on|with|for)\s+[\p{L}'’ -]{1,40}(?:,\s*(?:and\s+|then\s+)?|\s+and\s+)$/u,
];
/** Words before a number that make it a name or a place in a list. */
const NAMES =
  /\b(?:version|firmware|kernel|revision|step|steps|part|page|figure|table|chart|section|chapter|port|pin|slot|day|note|no|number|core|cores|model|type|by|in|of|on|since|until|after|within|every|each|another|first|last|next)\.?\s+$/i;
/** What may stand behind such a number: the end of its clause, or a word that goes on. */
const ENDS =
  /^\s*(?:$|[.,;:!?)](?!\d)|(?:at|for|in|on|with|when|before|after|and|or|but|under|while|where|against|once|without|during)\b)/u;
const YEAR = /^(?:19|20)\d\d$/;

/** Whether a number without a unit has that of an earlier one; `between` is what stands between the two. */
export function borrows(prose: string, said: Stated, between: string): boolean {
  const number = prose.slice(said.start, said.end);
  if (!/^[\d.,]+$/.test(number) || YEAR.test(number)) return false;
  return LEADS.some((form) => form.test(between)) && !NAMES.test(between) && ENDS.test(prose.slice(said.end));
}

/** The unit in words that end with a colon right before a number: "Power, in watts: ", "Clock (GHz): "; '' for none. */
export function announced(prose: string, { start }: Stated, isUnit: (word: string) => boolean): string {
  const said = /(?:\((?:in\s+)?([^()]+)\)|\bin\s+(\S+?))\s*(?::|\b(?:is|was|are|were|reached|came\s+to))\s*$/.exec(
    prose.slice(0, start),
  );
  const word = (said?.[1] ?? said?.[2] ?? '').trim();
  return word !== '' && isUnit(word) ? word : '';
}
