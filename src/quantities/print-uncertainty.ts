/** The uncertainty of a quantity in words, beside its printed value. */
import { leadingPlace } from './decimal.ts';
import { type DisplayUnit, displayUnit } from './display-unit.ts';
import { readerForm } from './numeral-print.ts';
import { chosenUnit, differenceIn, roundingRange } from './printed-digits.ts';
import type { Quantity } from './quantity.ts';
import { roundDecimal, roundOutward, uncertaintyPlace } from './rounding.ts';
import { expandedUncertainty, standardUncertainty } from './uncertainty.ts';
import { fromCanonical } from './units.ts';

export interface IntervalOptions {
  /** Spelling to print in, as in printQuantity. */
  readonly unit?: string | undefined;
  /** The 95 % interval in the quantity's unit, where it is not the one that follows from parts and degrees of freedom. */
  readonly interval?: readonly [number, number] | undefined;
}

/** Digits of a double that a conversion of units leaves right. */
const DIGITS_SURE = 12;
const NO_BREAK = '\u00a0';
const LEVEL = `(95${NO_BREAK}%)`;

/** What stands beside a value: half of an interval about it, or both ends; printed numbers with their unit. */
export type StatedInterval =
  | { readonly half: string; readonly unit: string }
  | { readonly low: string; readonly high: string; readonly unit: string };

/**
 * The 95 % uncertainty in words: "± 1.2 K (95 %)", "repeatability only: ± 0.3 K (95 %)", "uncertainty unknown", '' for an exact
 * quantity; with an interval of its own "70.9 °C to 73.2 °C (95 %)" (NIST SP 811, 7.7), its ends rounded outward to the digit of the
 * printed value. A half width in the value's unit has the value's last digit, or its own first where that is finer; in a unit of its own at most two
 * significant digits, no finer than the place of the standard uncertainty. Differences of °C are in K; of a value in
 * minutes or hours the uncertainty has its own unit of time.
 */
export function printUncertainty(quantity: Quantity, options: IntervalOptions = {}): string {
  if (quantity.parts === null && !options.interval) return 'uncertainty unknown';
  const limited = quantity.repeatabilityOnly ? 'repeatability only' : '';
  const stated = statedInterval(quantity, options);
  return [limited, stated === null ? '' : inWords(stated)].filter((words) => words !== '').join(': ');
}

function inWords(stated: StatedInterval): string {
  const { unit } = stated;
  const withUnit = (number: string) => (unit === '' ? number : `${number}${NO_BREAK}${unit}`);
  if ('half' in stated) return `±${NO_BREAK}${withUnit(stated.half)} ${LEVEL}`;
  return `${withUnit(stated.low)} to ${withUnit(stated.high)} ${LEVEL}`;
}

/** The numbers of the 95 % interval as they are printed; null for an exact quantity and for one of unknown uncertainty. */
export function statedInterval(quantity: Quantity, options: IntervalOptions = {}): StatedInterval | null {
  if (options.interval) return range(quantity, options.interval, options.unit);
  return quantity.parts === null ? null : plusMinus(quantity, options.unit);
}

function plusMinus(quantity: Quantity, asked: string | undefined): StatedInterval | null {
  const u = standardUncertainty(quantity) ?? 0;
  const expanded = expandedUncertainty(quantity) ?? 0;
  if (u === 0) return null;
  const ofValue = chosenUnit(quantity, asked);
  const display = ofValue.decimals === undefined ? ofValue : displayUnit(quantity.unit, expanded);
  const half = differenceIn(display, expanded);
  const place = placeBeside(half, quantity, display === ofValue ? display : null);
  const finest = place ?? Math.max(uncertaintyPlace(differenceIn(display, u)), leadingPlace(half) - 1);
  return { half: readerForm(roundDecimal(half, finest)), unit: display.spelling === '°C' ? 'K' : display.spelling };
}

/** Both ends, to the printed value's own rounding range and outward: the interval is never narrowed, the value never outside it. */
function range(quantity: Quantity, [low, high]: readonly [number, number], asked: string | undefined): StatedInterval | null {
  if (low === high) return null;
  const display = chosenUnit(quantity, asked);
  const to = roundingRange(quantity, display);
  const printed = (end: number, direction: 'down' | 'up') =>
    readerForm(roundOutward(withoutNoise(fromCanonical(end, display.unit)), to, direction));
  return { low: printed(low, 'down'), high: printed(high, 'up'), unit: display.spelling };
}

/** 19.7 that the way through seconds made 19.700000000000003 must not go up to 19.8. */
function withoutNoise(value: number): number {
  return Number(value.toPrecision(DIGITS_SURE));
}

/** The place of the value's last digit, where a half width stands beside it in its unit: at most its own first digit, so that one remains. Else null. */
function placeBeside(half: number, quantity: Quantity, ofValue: DisplayUnit | null): number | null {
  return ofValue === null ? null : Math.min(roundingRange(quantity, ofValue).place, leadingPlace(half));
}
