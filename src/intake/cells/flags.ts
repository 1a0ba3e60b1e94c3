/** Cells of a throttle flag: a word of bits in hexadecimal or decimal, `key=value`, yes and no, true and false. */

/** How digits without a prefix are read. */
export type FlagBase = 10 | 16;

const WORDS: Readonly<Record<string, number>> = { yes: 1, no: 0, true: 1, false: 0, on: 1, off: 0 };
/** What other languages say for yes and no. These are told, not read: a list of them is never whole. */
const FOREIGN = /^(?:ja|nein|oui|non|s[ií]|nee|nej|tak|nie|sim|n[aã]o|vrai|faux|wahr|falsch|да|нет|是|否|はい|いいえ)$/i;

/** The value of a flag cell; NaN for anything else. A `0x` prefix always means hexadecimal. */
export function parseFlag(cell: string, base: FlagBase): number {
  const text = bareWord(cell);
  const word = WORDS[text.toLowerCase()];
  if (word !== undefined) return word;
  if (/^0[xX][0-9a-fA-F]{1,12}$/.test(text)) return Number.parseInt(text.slice(2), 16);
  const digits = base === 16 ? /^[0-9a-fA-F]{1,12}$/ : /^\d{1,15}$/;
  return digits.test(text) ? Number.parseInt(text, base) : Number.NaN;
}

/** Whether a cell says yes or no, in words that are read as a flag. */
export function isAnswer(cell: string): boolean {
  return WORDS[cell.trim().toLowerCase()] !== undefined;
}

/** Whether a cell says yes or no in a language that is not read. */
export function isForeignAnswer(cell: string): boolean {
  return FOREIGN.test(cell.trim()) && !isAnswer(cell);
}

/** Whether a cell without a prefix can be nothing but hexadecimal: `e0`, but neither `10` nor `0xe0`. */
export function isLetteredWord(cell: string): boolean {
  const text = bareWord(cell);
  return /^[0-9a-fA-F]*[a-fA-F][0-9a-fA-F]*$/.test(text) && /\d/.test(text);
}

/** As many words with letters are no damage, if they are also as many as `SHARE` of the words. */
const SEVERAL = 3;
/** One word in twenty. Common practice, no source. */
const SHARE = 0.05;

/**
 * The base of a column without a declaration, by all its cells. Words with a letter a to f prove hexadecimal where they are half of the
 * words that set a bit, or at least three and one in twenty. Fewer may be damaged cells, and must not change how the intact ones are
 * read: such a column is decimal. `50005` alone could be either: it is read as decimal, and that is said.
 */
export function flagBase(cells: Iterable<string>): { readonly base: FlagBase; readonly how: string } {
  let [lettered, others, long] = [0, 0, false];
  for (const cell of cells) {
    const text = bareWord(cell);
    if (isLetteredWord(text)) lettered++;
    else if (/^(?:0[xX])?[0-9a-fA-F]+$/.test(text) && !/^0[xX]?0*$/.test(text)) others++;
    if (/^\d{2,}$/.test(text)) long = true;
  }
  const words = lettered + others;
  const proven = lettered * 2 >= words || (lettered >= SEVERAL && lettered >= words * SHARE);
  if (lettered > 0 && proven) return { base: 16, how: 'hexadecimal: some words hold a to f' };
  if (lettered > 0) return { base: 10, how: `decimal: only ${lettered} of ${words} words that are not 0 hold a letter a to f` };
  return { base: 10, how: long ? 'decimal: no word has a prefix 0x or a letter a to f' : 'words of bits as written' };
}

/** The word without the blanks around it and without `key=`. */
function bareWord(cell: string): string {
  return cell.trim().replace(/^[A-Za-z_]\w*\s*=\s*/, '');
}
