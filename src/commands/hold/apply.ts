/** Writes directives in place of unheld numbers; every other word stays. */
import type { ListedNumber } from './numbers.ts';

/** What is to become of a number: an expression that holds it, or nothing, which leaves it free. */
export type Choice =
  | {
      readonly is: string;
      /** The unit of a score that is said without it. */
      readonly unit?: string;
      /** A condition, which holds the words as a claim. */
      readonly claim?: true;
      /** Other words in the place of the author's, without quotes. */
      readonly instead?: string;
      /** The whole of it: a `:value` in the place of the digits. */
      readonly value?: string;
    }
  | 'free';

/** The text with each chosen number held. Numbers not in `choices` stay as they are. */
export function applyChoices(source: string, numbers: readonly ListedNumber[], choices: ReadonlyMap<number, Choice>): string {
  let text = source;
  for (const listed of numbers.toSorted((a, b) => b.start - a.start)) {
    const choice = choices.get(listed.number);
    if (choice) text = text.slice(0, listed.start) + directive(listed, choice) + text.slice(listed.end);
  }
  return text;
}

/** The offset in the author's text for one in the new text; within a directive that was written, the start of its number. */
export function offsetBefore(numbers: readonly ListedNumber[], choices: ReadonlyMap<number, Choice>, offset: number): number {
  let shift = 0;
  for (const listed of numbers) {
    const { start, end, number } = listed;
    const choice = choices.get(number);
    if (!choice) continue;
    const { length } = directive(listed, choice);
    if (offset < start + shift) break;
    if (offset < start + shift + length) return start;
    shift += length - (end - start);
  }
  return offset - shift;
}

/**
 * `:stated[words]{is="…"}`, in single quotes where the expression has double ones or what it stands in is in double ones; the unit too, where
 * the number borrows one.
 */
export function directive({ words, unit, quote }: Pick<ListedNumber, 'words' | 'unit' | 'quote'>, choice: Choice): string {
  if (choice === 'free') return `:unheld[${words}]`;
  if (choice.value !== undefined) return quote ? choice.value.replaceAll('"', quote) : choice.value;
  const own = quote ?? (choice.is.includes('"') ? "'" : '"');
  if (choice.claim) return `:claim[${words}]{is=${own}${choice.is}${own}}`;
  const lacking = unit ?? choice.unit;
  const borrowed = lacking === undefined ? '' : `unit=${/^[A-Za-z]+$/.test(lacking) ? lacking : `${own}${lacking}${own}`} `;
  return `:stated[${choice.instead ?? words}]{${borrowed}is=${own}${choice.is}${own}}`;
}
