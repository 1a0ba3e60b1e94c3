/** How words are told apart, the same when the index is written and when it is searched. */

/** Blanks, punctuation and symbols part words; a point or comma between digits does not ("71.3"), nor do degree, percent and micro signs. */
const APART = /(?:(?<!\d)[.,]|[.,](?!\d)|[^\p{L}\p{N}\p{M}.,°%µΩ])+/u;

/** The words of a text as they stand. */
export function wordsOf(text: string): string[] {
  return text.split(APART).filter((word) => word !== '');
}

/** A word as it is compared: lower case, without accents. */
export function plainWord(word: string): string {
  return word.normalize('NFKD').replaceAll(/\p{M}/gu, '').toLowerCase();
}
