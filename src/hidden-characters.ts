/** Characters that nobody sees and that change what is seen: they act on a terminal, turn the order of letters round, or hide digits. */

/**
 * Control characters but tab and line ends; line and paragraph separators; Unicode's Bidi_Control (UAX 9); and next to a digit whatever has
 * no width (Default_Ignorable_Code_Point, UAX 44), since `7` and `1` with such a character between them read as 71. Keycap signs are left alone.
 */
const HIDDEN =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F-\u009F\u2028\u2029]|\r(?!\n)|\p{Bidi_Control}|(?!\uFE0F\u20E3)\p{DI}(?:(?<=\p{Nd}\p{DI}+)|(?=\p{DI}*\p{Nd}))/gu;

export interface HiddenCharacter {
  /** Offset in UTF-16 units. */
  readonly index: number;
  /** "U+202E". */
  readonly name: string;
  /** What it does, as the end of "a character that …". */
  readonly does: string;
}

/** The text with each hidden character shown by its name: ESC becomes ⟨U+001B⟩, and so on. */
export function visible(text: string): string {
  return text.replace(HIDDEN, (character) => `⟨${nameOf(character)}⟩`);
}

/** The hidden characters of a text, in order. */
export function hiddenIn(text: string): HiddenCharacter[] {
  return Array.from(text.matchAll(HIDDEN), ({ 0: character, index }) => ({
    index,
    name: nameOf(character),
    does: doing(character),
  }));
}

function nameOf(character: string): string {
  return `U+${character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`;
}

function doing(character: string): string {
  if (/\p{Bidi_Control}/u.test(character)) return 'turns the order of text round';
  return /\p{DI}/u.test(character) ? 'has no width, next to a digit' : 'controls a terminal';
}
