/** When each word of a script is said: from a pace, and from the moments that are known. */

/** A word (by its index in the script) and the second at which it begins. The word behind the last stands for the end. */
export interface Anchor {
  readonly word: number;
  readonly at: number;
}

export interface Timeline {
  /** The second at which a word begins, after a pause before it. */
  readonly start: (word: number) => number;
  /** The second at which the word before it has ended. */
  readonly end: (word: number) => number;
}

/**
 * Words follow each other at `pace` (words per minute) from each anchor on. What would run past the next anchor is squeezed before it,
 * evenly; what ends early leaves a pause. Without anchors the first word begins at 0.
 */
export function timeline(anchors: readonly Anchor[], pace: number): Timeline {
  const known = inOrder(anchors);
  const spread = (word: number, last: number): number => {
    const from = known[last] as Anchor;
    const next = known[last + 1];
    const paced = 60 / pace;
    const each = next ? Math.min(paced, (next.at - from.at) / (next.word - from.word)) : paced;
    return from.at + (word - from.word) * each;
  };
  return {
    start: (word) =>
      spread(
        word,
        lastAt(known, (anchor) => anchor.word <= word),
      ),
    end: (word) =>
      spread(
        word,
        lastAt(known, (anchor) => anchor.word < word),
      ),
  };
}

/** By word, each once (the later time stays: what is said begins after all that must come before it), and never back in time. */
function inOrder(anchors: readonly Anchor[]): Anchor[] {
  const known: Anchor[] = [{ word: 0, at: 0 }];
  for (const anchor of anchors.toSorted((a, b) => a.word - b.word || a.at - b.at)) {
    const last = known.at(-1) as Anchor;
    if (anchor.word === last.word) known[known.length - 1] = anchor.at > last.at ? anchor : last;
    else if (anchor.at >= last.at) known.push(anchor);
  }
  return known;
}

function lastAt(known: readonly Anchor[], fits: (anchor: Anchor) => boolean): number {
  return Math.max(0, known.findLastIndex(fits));
}

/** "0:15", "2:05", "1:02:05": seconds to the nearest whole one. */
export function clockTime(seconds: number): string {
  const whole = Math.round(seconds);
  const [hours, minutes, rest] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  const two = (part: number): string => String(part).padStart(2, '0');
  return hours > 0 ? `${hours}:${two(minutes)}:${two(rest)}` : `${minutes}:${two(rest)}`;
}
