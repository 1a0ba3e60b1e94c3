/** A count in digits or words, as the rules about ranks and shares look for it. */
import { cardinalWords } from '../stated/cardinal.ts';

/** Counts that are also said in words; larger ones stand in digits. */
const IN_WORDS = 100;

/** A pattern of whole numbers: "4", "1,000", "four", "twenty-five". */
export const COUNT = String.raw`(?:\d[\d,]*|${Array.from({ length: IN_WORDS }, (_, count) => cardinalWords(count + 1))
  .toSorted((a, b) => b.length - a.length)
  .join('|')})`;
