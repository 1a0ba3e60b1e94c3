/** A number phrase as it was said, before its meaning is worked out. */
import type { Unit } from '../../quantities/units.ts';

/** A number in words or digits. */
export interface Amount {
  /** Signed, in the unit that it was said in. */
  readonly value: number;
  /** Exponent of the last digit said: 0 for 58 and fifty-eight, −2 for 2.10, 6 for two million. */
  readonly place: number;
  /** Smallest part, where a fraction was said: 1/4 for "two and three quarters". */
  readonly part?: number;
  /** True for "a" or "an" in place of the number: an hour. */
  readonly article?: boolean;
  readonly style: 'digits' | 'words';
  /** What stands between groups of three digits, where it was said so. */
  readonly grouping?: string;
  readonly start: number;
  readonly end: number;
}

/** What a unit is of, as far as the words around it depend on that. */
export type UnitKind = 'temperature' | 'kelvin' | 'time' | 'percent' | 'times' | 'other';

export interface UnitSaid {
  /** As `readUnit` takes it. */
  readonly spelling: string;
  readonly unit: Unit;
  readonly kind: UnitKind;
  readonly start: number;
  readonly end: number;
}

/** A number with its unit, if it has one. */
export interface SaidNumber {
  readonly amount: Amount;
  readonly unit?: UnitSaid;
  /** True for the first number of a range whose unit stands after the second alone: "69 to 72 degrees". */
  readonly unitBorrowed?: boolean;
  /** Spellings of the units of a mixed time, the larger first: "an hour and 20 minutes". The amount is in the last. */
  readonly mixed?: readonly string[];
  /** True for "5 degrees below zero". */
  readonly belowZero?: boolean;
  /** The whole of it: number, unit and what binds them. */
  readonly start: number;
  readonly end: number;
}

/** Words beside a number that make it a difference or a share. */
export interface Comparison {
  readonly kind: 'more' | 'less' | 'apart';
  /** True where a share with it is a ratio ("30 percent faster" 1.3, "faster by 30 percent"); "a rise of 30 percent" is 0.3. */
  readonly ofRatio: boolean;
  readonly start: number;
  readonly end: number;
}

export interface Phrase {
  readonly text: string;
  readonly hedge?: { readonly name: string; readonly start: number; readonly end: number };
  /** One side; or the two of a range; or a number and its ±. */
  readonly sides: readonly [SaidNumber] | readonly [SaidNumber, SaidNumber];
  readonly plusMinus: boolean;
  readonly comparison?: Comparison;
  readonly start: number;
  readonly end: number;
}
