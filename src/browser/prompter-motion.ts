/** The arithmetic of the prompter: how fast the words move, where they stand, and what is left. */

/** Words per minute that it can be set to, and by how much a key changes it. */
const SLOWEST = 40;
const FASTEST = 400;
export const STEP = 5;

/** A pace within what the prompter can do. */
export function within(pace: number): number {
  return Math.min(FASTEST, Math.max(SLOWEST, pace));
}

/** Pixels a second at which `extent` pixels with `words` words pass at `pace` words a minute. All words count as equally long. */
export function speedOf(extent: number, words: number, pace: number): number {
  return words === 0 ? 0 : (extent * pace) / (words * 60);
}

/** Where the words are shown when they have come to `at`: moving by whole steps from `origin` where less motion is wished, else just there. */
export function shownAt(at: number, origin: number, step: number | null): number {
  return step === null ? at : origin + Math.floor((at - origin) / step) * step;
}

/** A jump where less motion is wished: whole lines, about four tenths of what is seen. */
export function stepOf(height: number, line: number): number {
  return Math.max(1, Math.floor((height * 0.4) / line)) * line;
}

/** The first of the tops (ascending) behind `at`, or undefined. */
export function nextTop(tops: readonly number[], at: number): number | undefined {
  return tops.find((top) => top > at + 1);
}

/** The last of the tops before `at`, or 0. */
export function previousTop(tops: readonly number[], at: number): number {
  return tops.findLast((top) => top < at - 1) ?? 0;
}

/** Where `at` is among the tops of paragraphs (ascending): 2.5 is halfway from the third to the fourth. */
export function placeAt(tops: readonly number[], at: number): number {
  const index = Math.max(
    0,
    tops.findLastIndex((top) => top <= at),
  );
  const [from = 0, to = from] = tops.slice(index);
  return index + (to > from ? Math.min(1, Math.max(0, at - from) / (to - from)) : 0);
}

/** The way back: where a place among the tops is. */
export function topOf(tops: readonly number[], place: number): number {
  const index = Math.min(tops.length - 1, Math.max(0, Math.floor(place)));
  const [from = 0, to = from] = tops.slice(Math.max(0, index));
  return from + (place - index) * (to - from);
}

/** "1:05 left" of a script of `words` words when `share` of it is done. */
export function leftText(words: number, share: number, pace: number): string {
  const seconds = Math.round((words * (1 - share) * 60) / pace);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')} left`;
}
