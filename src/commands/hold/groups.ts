/** Numbers that one answer serves: the same words, with the same first offer. */
import type { ListedNumber } from './numbers.ts';

/** In the order of their first numbers. One that cannot be held stands alone. */
export function groupsOf(numbers: readonly ListedNumber[]): ListedNumber[][] {
  const key = ({ number, words, unit, offers, near, why }: ListedNumber): string =>
    why === undefined
      ? JSON.stringify([words.toLowerCase(), unit ?? '', offers[0]?.is ?? '', offers.length === 0 ? (near[0]?.is ?? '') : ''])
      : `alone ${number}`;
  return [...Map.groupBy(numbers, key).values()];
}
