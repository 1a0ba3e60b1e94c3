/** Ids: of files, specimens, and of the tests, spots and parts that a table has rows of. */

const ID = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;

/**
 * The one word of that spelling that JavaScript objects answer to by themselves: a look-up in a record of channels or instruments
 * would find something under it that nobody wrote.
 */
export const TAKEN_WORD = 'constructor';

export const ID_RULE = 'lower-case letters and digits, in words joined by single hyphens';

/** Tells whether a text is an id: the name of a file of content/, a specimen, a test. */
export function isId(text: string): boolean {
  return ID.test(text) && text !== TAKEN_WORD;
}

/** The id that words would have: lower case, everything else to single hyphens; '' when nothing is left. */
export function idFromWords(words: string): string {
  return words
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}
