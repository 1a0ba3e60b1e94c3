/** Judges a stated number on a value. */
import type { Ends, Stated } from './stated-number.ts';

export type Verdict = 'holds' | 'holds narrowly' | 'fails';

/** Values and ends are compared to this many significant digits, so that 57.499999999999993 is the 57.5 that arithmetic meant. */
const COMPARED = 12;

/**
 * Whether a value is one that the words allow. `value` is in the stated number's unit, `interval` its 95 % interval, null = unknown.
 * 'holds narrowly' where the value is allowed and its interval reaches beyond. An unknown uncertainty cannot make it narrow.
 * Values that are not finite fail.
 */
export function holds(stated: Stated, value: number, interval: readonly [number, number] | null): Verdict {
  const turned = stated.bySize && value < 0;
  const at = turned ? -value : value;
  if (!Number.isFinite(at) || !allows(stated, at)) return 'fails';
  if (!interval) return 'holds';
  const [low, high] = turned ? [-interval[1], -interval[0]] : interval;
  return allows(stated, low) && allows(stated, high) ? 'holds' : 'holds narrowly';
}

function allows({ lower, upper, lowerClosed, upperClosed }: Ends, value: number): boolean {
  const [at, low, high] = [value, lower, upper].map(rounded) as [number, number, number];
  if (low === high) return at === low;
  return (at > low || (lowerClosed && at === low)) && (at < high || (upperClosed && at === high));
}

function rounded(value: number): number {
  return Number.isFinite(value) ? Number(value.toPrecision(COMPARED)) : value;
}
