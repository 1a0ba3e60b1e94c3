/** The part of a text that answers a query, with its words marked. */
import { plainWord, wordsOf } from './terms.ts';

/** A stretch of the snippet; `marked` where it is one of the words. */
export interface Stretch {
  readonly text: string;
  readonly marked: boolean;
}

/** Letters before the first word found, and in all. */
const BEFORE = 60;
const LENGTH = 180;

/** About two lines of the text around the first of the terms (plain words of the index), cut between words; its beginning where none stands in it. */
export function snippetOf(text: string, terms: readonly string[]): Stretch[] {
  const wanted = new Set(terms);
  const places = placesOf(text).filter(({ word }) => wanted.has(plainWord(word)));
  const first = places[0]?.at ?? 0;
  const from = first <= BEFORE ? 0 : startOfWord(text, first - BEFORE);
  const to = from + LENGTH >= text.length ? text.length : endOfWord(text, from + LENGTH);
  const stretches: Stretch[] = [];
  let at = from;
  for (const place of places.filter((each) => each.at >= from && each.at + each.word.length <= to)) {
    stretches.push({ text: text.slice(at, place.at), marked: false }, { text: place.word, marked: true });
    at = place.at + place.word.length;
  }
  stretches.push({ text: text.slice(at, to), marked: false });
  const cut = (words: string): Stretch[] => [{ text: words, marked: false }];
  return [...(from > 0 ? cut('… ') : []), ...stretches, ...(to < text.length ? cut(' …') : [])].filter(
    ({ text: part }) => part !== '',
  );
}

/** Every word of the text and where it begins. */
function placesOf(text: string): { readonly word: string; readonly at: number }[] {
  let after = 0;
  return wordsOf(text).map((word) => {
    const at = text.indexOf(word, after);
    after = at + word.length;
    return { word, at };
  });
}

function startOfWord(text: string, at: number): number {
  const blank = text.indexOf(' ', at);
  return blank < 0 ? at : blank + 1;
}

function endOfWord(text: string, at: number): number {
  const blank = text.lastIndexOf(' ', at);
  return blank < 0 ? at : blank;
}
