/** A number in the author's words, and the interval of true values that the words allow. */
import type { Phrase, UnitSaid } from './phrase.ts';

/** An interval; ends may be infinite, and an infinite end is open. */
export interface Ends {
  readonly lower: number;
  readonly upper: number;
  readonly lowerClosed: boolean;
  readonly upperClosed: boolean;
}

export interface Stated extends Ends {
  /** Canonical unit; '1' for ratios, percent, "times" and numbers without a unit. The ends and `nominal` are in it. */
  readonly unit: string;
  /** True where the words mean a temperature difference ("6 degrees warmer", "6 kelvin"); the unit is then K. */
  readonly difference: boolean;
  /** The number said; of a range its middle. */
  readonly nominal: number;
  /** Name in HEDGES. */
  readonly hedge?: string;
  /** True where words give the direction ("2 watts less", "6 degrees cooler"): a value below zero is then taken by its size. */
  readonly bySize: boolean;
  /** What a value above zero means where the expression tells: 1 for more, −1 for less. Words of more or less then have to go that way. */
  readonly sense?: 1 | -1;
  /** True where happenings are counted ("2 restarts", "once"): only a count can hold it. */
  readonly counts?: true;
  /** The phrase in the text, hedge and comparison included: 0-based, UTF-16 units, `end` exclusive. */
  readonly start: number;
  readonly end: number;
  /** How it was said: what `suggest` writes a new wording from. */
  readonly said: Phrase;
}

/** Why words cannot be read as one number. */
export interface Unread {
  /** What was found, one sentence without a final full stop. */
  readonly unread: string;
  /** Where in the text, 0-based, UTF-16 units. */
  readonly offset: number;
  /** What would have been right. */
  readonly expected: string;
  /** The phrase in the text where it has a unit: a number that somebody should hold or reword. */
  readonly measure?: { readonly start: number; readonly end: number; readonly unit: UnitSaid };
}

export function unread(found: string, offset: number, expected: string): Unread {
  return { unread: found, offset, expected };
}

export function isUnread(result: unknown): result is Unread {
  return typeof result === 'object' && result !== null && 'unread' in result;
}

/** A number freed of the binary noise of arithmetic: 15 significant digits hold all that words can say. */
export function clean(value: number): number {
  return Number.isFinite(value) ? Number(value.toPrecision(15)) : value;
}
