/** Judges a stated number on a value. */
import { isShare } from './meaning.ts';
import type { SaidNumber } from './phrase.ts';
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
  const wanted = wantedSign(stated);
  const turned = wanted === undefined ? stated.bySize && value < 0 : wanted < 0;
  const at = turned ? -value : value;
  if (!Number.isFinite(at) || !allows(stated, at) || (wanted !== undefined && at < 0)) return 'fails';
  if (!interval) return 'holds';
  const [low, high] = turned ? [-interval[1], -interval[0]] : interval;
  return allows(stated, low) && allows(stated, high) ? 'holds' : 'holds narrowly';
}

/** The sign that a value has to have for words of more or less; undefined where it does not matter or the words set it themselves. */
export function wantedSign({ sense, said: { comparison, sides } }: Stated): 1 | -1 | undefined {
  if (sense === undefined || !comparison || comparison.kind === 'apart') return undefined;
  if (comparison.ofRatio && isShare(sides.at(-1) as SaidNumber)) return undefined;
  return comparison.kind === 'more' ? sense : sense === 1 ? -1 : 1;
}

function allows({ lower, upper, lowerClosed, upperClosed }: Ends, value: number): boolean {
  const [at, low, high] = [value, lower, upper].map(rounded) as [number, number, number];
  if (low === high) return at === low;
  return (at > low || (lowerClosed && at === low)) && (at < high || (upperClosed && at === high));
}

function rounded(value: number): number {
  return Number.isFinite(value) ? Number(value.toPrecision(COMPARED)) : value;
}
