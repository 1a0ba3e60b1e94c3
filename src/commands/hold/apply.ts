/** Writes directives in place of unheld numbers; every other byte stays. */
import type { ListedNumber } from './numbers.ts';

/** What is to become of a number: an expression that holds it, or nothing, which leaves it free. */
export type Choice = { readonly is: string } | 'free';

/** The text with each chosen number held. Numbers not in `choices` stay as they are. */
export function applyChoices(source: string, numbers: readonly ListedNumber[], choices: ReadonlyMap<number, Choice>): string {
  let text = source;
  for (const { number, start, end, words, quote } of numbers.toSorted((a, b) => b.start - a.start)) {
    const choice = choices.get(number);
    if (choice) text = text.slice(0, start) + directive(words, choice, quote) + text.slice(end);
  }
  return text;
}

/** The offset in the author's text for one in the new text; within a directive that was written, the start of its number. */
export function offsetBefore(numbers: readonly ListedNumber[], choices: ReadonlyMap<number, Choice>, offset: number): number {
  let shift = 0;
  for (const { number, start, end, words, quote } of numbers) {
    const choice = choices.get(number);
    if (!choice) continue;
    const length = directive(words, choice, quote).length;
    if (offset < start + shift) break;
    if (offset < start + shift + length) return start;
    shift += length - (end - start);
  }
  return offset - shift;
}

/** `:stated[words]{is="…"}`, in single quotes where the expression has double ones or what it stands in is in double ones. */
export function directive(words: string, choice: Choice, wanted?: "'"): string {
  if (choice === 'free') return `:unheld[${words}]`;
  const quote = wanted ?? (choice.is.includes('"') ? "'" : '"');
  return `:stated[${words}]{is=${quote}${choice.is}${quote}}`;
}
