/** Whether a number prints differently than it did, through its data: an author who edits words or chooses a unit corrects nothing. */
import { readUnit, toCanonical } from '../../quantities/units.ts';
import { NOT_TOLD } from '../../words/page/recorded-words.ts';
import type { Pair } from './match.ts';

/** True where what is printed differs and the value is another, or is rounded otherwise. */
export function printsDifferently({ was, is }: Pair): boolean {
  if (plain(was.shown) === plain(is.shown)) return false;
  const ownWords = was.kind === 'stated' || was.kind === 'claim';
  // A claim's value is that of its first operand: another one may have moved. What the data no longer gives keeps its old value.
  if ((was.kind === 'claim' || is.verdict === 'cannot be told') && was.verdict !== is.verdict) return true;
  if (saysNotTold(was) !== saysNotTold(is)) return true;
  return ownWords || was.unit !== is.unit ? !sameValue({ was, is }) : true;
}

function saysNotTold({ shown }: Pair['is']): boolean {
  return plain(shown).endsWith(NOT_TOLD);
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
