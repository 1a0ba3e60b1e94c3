/**
 * The one printer of quantities: pages, plots, messages and scripts all print through it. Digits follow the uncertainty
 * (`uncertaintyPlace`), never finer than the instrument's step; ties to even, on the decimal numeral (`rounding.ts`).
 */
import { leadingPlace } from './decimal.ts';
import { askedUnit, type DisplayUnit, displayUnit, smallerUnit } from './display-unit.ts';
import { readerForm } from './numeral-print.ts';
import type { Quantity } from './quantity.ts';
import { type RoundingRange, rangeOfStep, roundDecimal, roundToRange, sizeOf, uncertaintyPlace } from './rounding.ts';
import { expandedUncertainty, standardUncertainty } from './uncertainty.ts';
import { fromCanonical } from './units.ts';

export { roundDecimal };

export interface PrintOptions {
  /** Spelling to print in; a unit that the quantity cannot be given in is not used (check it with `convert` first). */
  readonly unit?: string;
}

/** A quantity as readers see it. */
export interface Printed {
  /** Number and unit with a no-break space between (NIST SP 811, 7.2); the number alone for a ratio. */
  readonly text: string;
  /** Rounded, with U+2212 as minus. */
  readonly number: string;
  readonly unit: string;
  /** In `unit`, unrounded. */
  readonly value: number;
  /** Standard uncertainty in `unit` (its degree, where it is a temperature scale), unrounded; null = unknown. */
  readonly u: number | null;
}

const NO_BREAK = '\u00a0';
/** More digits than a double holds are rubbish. */
const DIGITS_HELD = 15;

/**
 * Prints a quantity: rounded by its uncertainty (rule of the Particle Data Group within JCGM 100:2008, 7.2.6), exact ones with all
 * their digits, those of unknown uncertainty to the instrument's step or three significant digits.
 */
export function printQuantity(quantity: Quantity, options: PrintOptions = {}): Printed {
  return printedIn(quantity, chosenUnit(quantity, options));
}

/**
 * The 95 % uncertainty in words: "± 1.2 K (95 %)", "repeatability only: ± 0.3 K (95 %)", "uncertainty unknown", '' for an exact
 * quantity. At most two significant digits, no finer than the place of the standard uncertainty, at most one place finer than the
 * printed value. Differences of °C are in K; of a value in minutes or hours the uncertainty has its own unit of time.
 */
export function printUncertainty(quantity: Quantity, options: PrintOptions = {}): string {
  const u = standardUncertainty(quantity);
  const expanded = expandedUncertainty(quantity);
  if (u === null || expanded === null) return 'uncertainty unknown';
  const limited = quantity.repeatabilityOnly ? 'repeatability only' : '';
  if (u === 0) return limited;
  const valueUnit = chosenUnit(quantity, options);
  const display = valueUnit.decimals === undefined ? valueUnit : displayUnit(quantity.unit, expanded);
  const shown = display === valueUnit ? -decimalsOf(rounding(quantity, display)) - 1 : Number.NEGATIVE_INFINITY;
  const half = differenceIn(display, expanded);
  const place = Math.max(uncertaintyPlace(differenceIn(display, u)), leadingPlace(half) - 1, Math.min(shown, leadingPlace(half)));
  const words = [`±${NO_BREAK}${readerForm(roundDecimal(half, place))}`, display.spelling === '°C' ? 'K' : display.spelling];
  return `${limited && `${limited}: `}${words.filter(Boolean).join(NO_BREAK)} (95${NO_BREAK}%)`;
}

/** The spelling asked for, else the one whose number stays readable after rounding. */
function chosenUnit(quantity: Quantity, options: PrintOptions): DisplayUnit {
  const asked = options.unit === undefined ? undefined : askedUnit(quantity.unit, options.unit);
  if (asked) return asked;
  const u = standardUncertainty(quantity) ?? 0;
  const first = displayUnit(quantity.unit, Math.max(Math.abs(quantity.value), u));
  if (isExact(quantity)) return shortUnit(quantity, first);
  const rounded = Math.abs(Number(rounding(quantity, first))) * first.unit.factor;
  return displayUnit(quantity.unit, Math.max(Math.abs(quantity.value), u, rounded));
}

/** Of an exact time, the largest unit in which it is a short decimal: 1510 s, not 25.1666… min. */
function shortUnit(quantity: Quantity, display: DisplayUnit): DisplayUnit {
  const decimals = decimalsOf(rounding(quantity, display));
  const smaller = display.decimals !== undefined && decimals > display.decimals && smallerUnit(quantity.unit, display.spelling);
  return smaller ? shortUnit(quantity, smaller) : display;
}

function printedIn(quantity: Quantity, display: DisplayUnit): Printed {
  const u = standardUncertainty(quantity);
  const number = readerForm(rounding(quantity, display));
  return {
    text: display.spelling === '' ? number : `${number}${NO_BREAK}${display.spelling}`,
    number,
    unit: display.spelling,
    value: fromCanonical(quantity.value, display.unit),
    u: u === null ? null : differenceIn(display, u),
  };
}

/** The value's decimal numeral in a unit, rounded as its uncertainty and step allow. */
function rounding(quantity: Quantity, display: DisplayUnit): string {
  const value = fromCanonical(quantity.value, display.unit);
  const step = quantity.step === undefined ? undefined : rangeOfStep(differenceIn(display, quantity.step));
  if (isExact(quantity) && !step) return shortest(value);
  const u = standardUncertainty(quantity);
  const range =
    u === null || u === 0 ? (step ?? threeDigits(value)) : coarser(powerOfTen(uncertaintyPlace(differenceIn(display, u))), step);
  return roundToRange(value, coarser(range, powerOfTen(finestPlace(value, display))));
}

function decimalsOf(numeral: string): number {
  return numeral.split('.')[1]?.length ?? 0;
}

/** Exact: known to have no uncertainty. A sensor without stated accuracy that repeats itself is not. */
function isExact({ parts, repeatabilityOnly }: Quantity): boolean {
  return parts !== null && parts.length === 0 && !repeatabilityOnly;
}

function finestPlace(value: number, { decimals }: DisplayUnit): number {
  return Math.max(leadingPlace(value) - DIGITS_HELD + 1, decimals === undefined ? Number.NEGATIVE_INFINITY : -decimals, -30);
}

/** The shortest decimal of a number, freed of the last digit's binary noise. */
function shortest(value: number): string {
  const clean = Number(value.toPrecision(DIGITS_HELD));
  const [mantissa = '', power = '0'] = String(clean).split('e');
  return roundDecimal(clean, Math.min(0, Number(power) - (mantissa.split('.')[1]?.length ?? 0)));
}

function threeDigits(value: number): RoundingRange {
  if (value === 0) return powerOfTen(0);
  const rounded = Number(roundDecimal(value, leadingPlace(value) - 2));
  return powerOfTen(leadingPlace(rounded) - 2);
}

function powerOfTen(place: number): RoundingRange {
  return { factor: 1, place };
}

function coarser(a: RoundingRange, b: RoundingRange | undefined): RoundingRange {
  return b && sizeOf(b) > sizeOf(a) ? b : a;
}

/** A width (an uncertainty, a step) in a unit: without the offset of temperature scales. */
function differenceIn(display: DisplayUnit, width: number): number {
  return fromCanonical(width, { ...display.unit, offset: 0 });
}
