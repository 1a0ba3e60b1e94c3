/** How far the true value may lie from the number said: what its digits, its parts or its roundness imply. */
import { shift } from '../../quantities/decimal.ts';
import type { SaidNumber } from './phrase.ts';
import { clean } from './stated-number.ts';

/** All in the unit that was said. */
export interface Precision {
  /** The number said. */
  readonly nominal: number;
  /** What the bare number implies, each way. */
  readonly half: number;
  /** What "about" allows, each way. */
  readonly about: number;
  /** How far "nearly" and "just over" reach, one way. */
  readonly near: number;
}

/** Below this many, hours, days and times are also said in halves ("two and a half hours"), so that a whole number means a nearer one. */
const SAID_IN_HALVES = 10;

/**
 * The bare number holds within half of the last digit said; zeros count, in words as in digits: 60 degrees reach from 59.5 to 60.5.
 * Readers take bare round numbers at their word (Katzir and Ariel, "Don't overthink! Round number expressions are interpreted sharp",
 * Glossa Psycholinguistics, doi:10.5070/G6011.48658); that trailing zeros alone do not tell the precision (AS 2706:2003, "significant
 * figures") is what "about" is for. A fraction holds within a quarter of its part, since the next finer words halve it; tenths and
 * hundredths are decimals. So do "a" and "an", and whole hours, days and times below ten. Common practice, no source.
 */
export function precisionOf(side: SaidNumber): Precision {
  const nominal = side.amount.value;
  const half = halfOf(side);
  const size = Math.abs(nominal);
  const near = Math.max(half, roundness(side));
  return { nominal, half, near, about: clean(Math.max(near, Math.min(2 * half, size / 5))) };
}

function halfOf({ amount, unit, mixed }: SaidNumber): number {
  const { part, place, article, value } = amount;
  if (part !== undefined) return [10, 100, 1000].includes(Math.round(1 / part)) ? clean(part / 2) : clean(part / 4);
  const inHalves = unit?.kind === 'times' || unit?.spelling === 'h' || unit?.spelling === 'd';
  if (!mixed && (article || (inHalves && place === 0 && Math.abs(value) < SAID_IN_HALVES))) return 0.25;
  return Number(`5e${place - 1}`);
}

/** A round number, one of 5 × 10^k, reaches half of that step when it is hedged, but no further than a twentieth of itself. 0 for others. */
function roundness({ amount }: SaidNumber): number {
  const size = Math.abs(amount.value);
  if (amount.place < 0 || amount.part !== undefined || size === 0 || !Number.isSafeInteger(size)) return 0;
  return Math.min(roundStep(size) / 2, size / 20);
}

/** The largest 5 × 10^k that divides a whole number: 50 for 1,200, 5 for 65; 0 where it is no multiple of five. */
export function roundStep(size: number): number {
  if (size === 0 || size % 5 !== 0) return 0;
  let power = 0;
  while (size % shift(5, power + 1) === 0) power += 1;
  return shift(5, power);
}
