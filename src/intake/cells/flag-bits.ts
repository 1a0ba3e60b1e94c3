/** Which bits the words of a flag have ever set, and whether they go off again: what tells bits of "now" from sticky ones. */

export interface UsedBit {
  /** 0 for the lowest. */
  readonly number: number;
  /** True where it was seen to go off again, which a sticky bit does at a boot alone. */
  readonly goesOff: boolean;
}

/** Bits beyond the 47th are none of a word that a cell can hold. */
const HIGHEST = 47;

/** Bits that any of the words has set, from the lowest up; NaN is no reading. A bit that stays on to the end may be either kind. */
export function usedBits(words: ArrayLike<number>): readonly UsedBit[] {
  return Array.from({ length: HIGHEST + 1 }, (_, number) => number).flatMap((number) => {
    let [seen, on, goesOff] = [false, false, false];
    for (let row = 0; row < words.length; row++) {
      const word = words[row]!;
      if (Number.isNaN(word)) continue;
      const now = Math.floor(word / 2 ** number) % 2 === 1;
      if (on && !now) goesOff = true;
      on = now;
      seen ||= now;
    }
    return seen ? [{ number, goesOff }] : [];
  });
}

/** What an author has to say of the bits, as sentences without a final stop; none for a flag that is only 0 and 1. */
export function flagOddities(words: ArrayLike<number>): string[] {
  const bits = usedBits(words);
  if (bits.every(({ number }) => number === 0)) return [];
  const list = (some: readonly UsedBit[]) => some.map(({ number }) => number).join(', ');
  const [off, on] = [bits.filter(({ goesOff }) => goesOff), bits.filter(({ goesOff }) => !goesOff)];
  return [
    ...(off.length > 0 ? [`bits that come and go: ${list(off)}; name those that tell of throttling now under \`bits\``] : []),
    ...(on.length > 0
      ? [`bits that never go off again: ${list(on)}; if they stay set until the next boot, name them under \`sticky\``]
      : []),
  ];
}
