/**
 * Rounding of reported values. Ties go to the even multiple (ISO 80000-1:2009, Annex B, rule A; NIST SP 811, B.7.1), decided on the
 * decimal numeral, once, never in stages.
 */
import { type Decimal, decimalOf, leadingPlace, numeralOf, shift } from './decimal.ts';

/** A rounding range: factor × 10^place, such as 0.5 or 100. Results are whole multiples of it. */
export interface RoundingRange {
  readonly factor: 1 | 2 | 5;
  readonly place: number;
}

/**
 * Rounds to a power of ten and writes all decimals: roundDecimal(12.25, -1) is "12.2". Minus as ASCII.
 * `place` is the exponent of the last digit kept (−1 tenths, 0 units, 2 hundreds). Throws a RangeError for a number that is not finite.
 */
export function roundDecimal(value: number, place: number): string {
  return roundToRange(value, { factor: 1, place });
}

/** Rounds to the nearest multiple of a rounding range, written to the range's last digit. Same rule and errors as roundDecimal. */
export function roundToRange(value: number, range: RoundingRange): string {
  const decimal = decimalOf(value);
  const steps = nearestMultiple(decimal, range);
  return numeralOf({ negative: decimal.negative, digits: steps * BigInt(range.factor), exponent: range.place });
}

/** Rounds to the multiple of a range at or below (`down`) or at or above (`up`) the value. Same form and errors as roundToRange. */
export function roundOutward(value: number, range: RoundingRange, direction: 'down' | 'up'): string {
  const decimal = decimalOf(value);
  const away = decimal.negative === (direction === 'down');
  const steps = wholeMultiple(decimal, range, away);
  return numeralOf({ negative: decimal.negative, digits: steps * BigInt(range.factor), exponent: range.place });
}

/** How many times the range goes into the decimal's size: whole times, or one more (`away` from zero) where something is left. */
function wholeMultiple(decimal: Decimal, range: RoundingRange, away: boolean): bigint {
  const { numerator, denominator } = quotient(decimal, range);
  return numerator / denominator + (away && numerator % denominator > 0n ? 1n : 0n);
}

function quotient({ digits, exponent }: Decimal, { factor, place }: RoundingRange): { numerator: bigint; denominator: bigint } {
  return {
    numerator: digits * 10n ** BigInt(Math.max(0, exponent - place)),
    denominator: BigInt(factor) * 10n ** BigInt(Math.max(0, place - exponent)),
  };
}

/** How many times the range goes into the decimal, nearest, ties to even. */
function nearestMultiple(decimal: Decimal, range: RoundingRange): bigint {
  const { numerator, denominator } = quotient(decimal, range);
  const whole = numerator / denominator;
  const twice = 2n * (numerator % denominator);
  const up = twice > denominator || (twice === denominator && whole % 2n === 1n);
  return up ? whole + 1n : whole;
}

/**
 * The place to which a standard uncertainty and its value are rounded: the rule of the Particle Data Group's Review (Introduction, 5.3),
 * within JCGM 100:2008, 7.2.6 (at most two significant digits). First three digits 100–354: two digits; 355–949: one;
 * 950–999: up to 1000, two digits of that. `u` is positive; unit that of the quantity.
 */
export function uncertaintyPlace(u: number): number {
  const leading = leadingPlace(u);
  const firstThree = Math.round(shift(u, 2 - leading));
  return firstThree <= 354 ? leading - 1 : leading;
}

/** A range may be finer by this much than a step that is worked out: that of a product (0.01 A × 12 V = 0.12 W) is no range itself. */
const FINER = 1.2;

/**
 * The finest rounding range of 1, 2 or 5 × 10^n that is not finer than a step, or than a step of several digits by more than a fifth: in
 * 0.2 W for steps of 0.12 W the printed value would lie nearer to another reading than to its own. The step is positive; unit that of the step.
 */
export function rangeOfStep(step: number): RoundingRange {
  const place = leadingPlace(step);
  const lead = Number(step.toExponential(9).split('e')[0]);
  const least = Number.isInteger(lead) ? lead : lead / FINER;
  if (least <= 1) return { factor: 1, place };
  if (least <= 2) return { factor: 2, place };
  return least <= 5 ? { factor: 5, place } : { factor: 1, place: place + 1 };
}

/** The range's size as a number. */
export function sizeOf({ factor, place }: RoundingRange): number {
  return Number(`${factor}e${place}`);
}
