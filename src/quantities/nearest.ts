/** The nearest right spelling of an unknown name. */

/**
 * The candidate with the fewest slips (letters added, left out, changed, or two swapped), if that is few enough to be a slip:
 * at most one in a short word, a third of a long one. Case counts a quarter of a slip. The first wins a tie.
 */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  let best: string | undefined;
  let bestDistance = Math.max(1, Math.floor(word.length / 3)) + 0.5;
  for (const candidate of candidates) {
    const distance = slips(word.toLowerCase(), candidate.toLowerCase()) + (slips(word, candidate) > 0 ? 0.25 : 0);
    if (distance < bestDistance && distance < word.length) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

/** Optimal string alignment distance (Damerau 1964, restricted to adjacent swaps). Cost: product of the lengths. */
function slips(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + change);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) least = Math.min(least, beforeLast[j - 2]! + 1);
      row.push(least);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length]!;
}
