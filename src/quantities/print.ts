/**
 * The one printer of quantities: pages, plots, messages and scripts all print through it. Digits follow the uncertainty
 * (`uncertaintyPlace`), never finer than the instrument's step; ties to even, on the decimal numeral (`rounding.ts`).
 */
import { readerForm } from './numeral-print.ts';
import { chosenUnit, coarselyRounded, differenceIn, rounding, roundingRange } from './printed-digits.ts';
import type { Quantity } from './quantity.ts';
import { type RoundingRange, sizeOf } from './rounding.ts';
import { standardUncertainty } from './uncertainty.ts';
import { fromCanonical, toCanonical } from './units.ts';

export { type IntervalOptions, printUncertainty } from './print-uncertainty.ts';
export { roundDecimal } from './rounding.ts';

export interface PrintOptions {
  /** Spelling to print in; a unit that the quantity cannot be given in is not used (check it with `convert` first). */
  readonly unit?: string;
  /** Print multiples of this, in the unit that is printed; used only where it is coarser than what the uncertainty allows. */
  readonly to?: RoundingRange;
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

/**
 * Prints a quantity: rounded by its uncertainty (rule of the Particle Data Group within JCGM 100:2008, 7.2.6), exact ones with all
 * their digits, those of unknown uncertainty to the instrument's step or three significant digits.
 */
export function printQuantity(quantity: Quantity, options: PrintOptions = {}): Printed {
  const display = chosenUnit(quantity, options.unit);
  const u = standardUncertainty(quantity);
  const number = readerForm(
    options.to === undefined ? rounding(quantity, display) : coarselyRounded(quantity, display, options.to),
  );
  return {
    text: display.spelling === '' ? number : `${number}${NO_BREAK}${display.spelling}`,
    number,
    unit: display.spelling,
    value: fromCanonical(quantity.value, display.unit),
    u: u === null ? null : differenceIn(display, u),
  };
}

/** What a quantity's printed value is a multiple of: its size in `unit` and in the canonical unit. */
export interface PrintedStep {
  readonly size: number;
  readonly unit: string;
  readonly canonical: number;
}

/** The step of the printed value in a unit, or in the printer's choice. A coarser one may be asked for, a finer one not. */
export function printedStep(quantity: Quantity, unit?: string): PrintedStep {
  const display = chosenUnit(quantity, unit);
  const size = sizeOf(roundingRange(quantity, display));
  return { size, unit: display.spelling, canonical: toCanonical(size, { ...display.unit, offset: 0 }) };
}
