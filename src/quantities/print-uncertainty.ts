/** The uncertainty of a quantity in words, beside its printed value. */
import { leadingPlace } from './decimal.ts';
import { type DisplayUnit, displayUnit } from './display-unit.ts';
import { readerForm } from './numeral-print.ts';
import { chosenUnit, decimalsOf, differenceIn, rounding, roundingRange } from './printed-digits.ts';
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

/**
 * The 95 % uncertainty in words: "± 1.2 K (95 %)", "repeatability only: ± 0.3 K (95 %)", "uncertainty unknown", '' for an exact
 * quantity; with an interval of its own "70.9 °C to 73.2 °C (95 %)" (NIST SP 811, 7.7), its ends rounded outward to the digit of the
 * printed value. Half widths have at most two significant digits, no finer than the place of the standard uncertainty, at most one
 * place finer than the printed value. Differences of °C are in K; of a value in
 * minutes or hours the uncertainty has its own unit of time.
 */
export function printUncertainty(quantity: Quantity, options: IntervalOptions = {}): string {
  if (quantity.parts === null && !options.interval) return 'uncertainty unknown';
  const limited = quantity.repeatabilityOnly ? 'repeatability only' : '';
  const stated = options.interval ? range(quantity, options.interval, options.unit) : plusMinus(quantity, options.unit);
  return [limited, stated].filter((words) => words !== '').join(': ');
}

function plusMinus(quantity: Quantity, asked: string | undefined): string {
  const u = standardUncertainty(quantity) ?? 0;
  const expanded = expandedUncertainty(quantity) ?? 0;
  if (u === 0) return '';
  const ofValue = chosenUnit(quantity, asked);
  const display = ofValue.decimals === undefined ? ofValue : displayUnit(quantity.unit, expanded);
  const half = differenceIn(display, expanded);
  const finest = Math.max(uncertaintyPlace(differenceIn(display, u)), placeOf(half, quantity, display, display === ofValue));
  const words = [`±${NO_BREAK}${readerForm(roundDecimal(half, finest))}`, display.spelling === '°C' ? 'K' : display.spelling];
  return `${words.filter((word) => word !== '').join(NO_BREAK)} ${LEVEL}`;
}

/** Both ends, to the printed value's own rounding range and outward: the interval is never narrowed, the value never outside it. */
function range(quantity: Quantity, [low, high]: readonly [number, number], asked: string | undefined): string {
  if (low === high) return '';
  const display = chosenUnit(quantity, asked);
  const to = roundingRange(quantity, display);
  const printed = (end: number, direction: 'down' | 'up') => {
    const number = readerForm(roundOutward(withoutNoise(fromCanonical(end, display.unit)), to, direction));
    return display.spelling === '' ? number : `${number}${NO_BREAK}${display.spelling}`;
  };
  return `${printed(low, 'down')} to ${printed(high, 'up')} ${LEVEL}`;
}

/** 19.7 that the way through seconds made 19.700000000000003 must not go up to 19.8. */
function withoutNoise(value: number): number {
  return Number(value.toPrecision(DIGITS_SURE));
}

/** The place of a half width's second digit, but at most one finer than the value's last, as long as a digit of it remains. */
function placeOf(half: number, quantity: Quantity, display: DisplayUnit, besideValue: boolean): number {
  const finest = besideValue ? -decimalsOf(rounding(quantity, display)) - 1 : Number.NEGATIVE_INFINITY;
  return Math.max(leadingPlace(half) - 1, Math.min(finest, leadingPlace(half)));
}
