/** Whether a number prints differently than it did, through its data: an author who edits words or chooses a unit corrects nothing. */
import { readUnit, toCanonical } from '../../quantities/units.ts';
import type { Pair } from './match.ts';

/** True where what is printed differs and the value is another, or is rounded otherwise. */
export function printsDifferently({ was, is }: Pair): boolean {
  if (plain(was.shown) === plain(is.shown)) return false;
  const ownWords = was.kind === 'stated' || was.kind === 'claim';
  // A claim's value is that of its first operand: another one may have moved.
  if (was.kind === 'claim' && was.verdict !== is.verdict) return true;
  // What the data does not give keeps its old value: that tells nothing of the words.
  if (isUntold(was) || isUntold(is)) return true;
  return ownWords || was.unit !== is.unit ? !sameValue({ was, is }) : true;
}

function isUntold({ verdict }: Pair['is']): boolean {
  return verdict === 'cannot be told';
}

/** Whether the values are the same but for the last bits, whatever their units. */
export function sameValue({ was, is }: Pair): boolean {
  const before = was.unit === is.unit ? was.value : inCanonical(was.value, was.unit);
  const now = was.unit === is.unit ? is.value : inCanonical(is.value, is.unit);
  return Math.abs(now - before) <= 1e-9 * Math.max(Math.abs(now), Math.abs(before));
}

/** In the canonical unit; NaN for words that are no unit, which equals nothing. */
export function inCanonical(value: number, spelling: string): number {
  const unit = readUnit(spelling);
  return unit === undefined ? Number.NaN : toCanonical(value, unit);
}

/** A printed number as an author types it: with plain blanks. */
export function plain(shown: string): string {
  return shown.replaceAll(/[\u00a0\u202f\s]+/g, ' ').trim();
}
