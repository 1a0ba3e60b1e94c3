/** In which unit and to which digit a quantity is printed. */
import { leadingPlace } from './decimal.ts';
import { askedUnit, type DisplayUnit, displayUnit, smallerUnit } from './display-unit.ts';
import type { Quantity } from './quantity.ts';
import { type RoundingRange, rangeOfStep, roundDecimal, roundToRange, sizeOf, uncertaintyPlace } from './rounding.ts';
import { standardUncertainty } from './uncertainty.ts';
import { fromCanonical } from './units.ts';

/** More digits than a double holds are rubbish. */
const DIGITS_HELD = 15;
/** An exact value in a unit that is no power of ten of its own (J in Wh, s in min) may have no last decimal. */
const DIGITS_OF_RATIOS = 6;
/** Nobody writes so many digits: it is a quotient without a last one, as 4/3 is. */
const ENDLESS = 14;

/** The spelling asked for, else the one whose number stays readable after rounding. */
export function chosenUnit(quantity: Quantity, asked: string | undefined): DisplayUnit {
  const given = asked === undefined ? undefined : askedUnit(quantity.unit, asked);
  if (given) return given;
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

/** The value's decimal numeral in a unit, rounded as its uncertainty and step allow. */
export function rounding(quantity: Quantity, display: DisplayUnit): string {
  const value = fromCanonical(quantity.value, display.unit);
  const range = rangeFor(quantity, display);
  if (range) return roundToRange(value, range);
  if (display.unit.decimal === undefined) return shortest(value, DIGITS_OF_RATIOS);
  const held = shortest(value, DIGITS_HELD);
  return digitsOf(held) < ENDLESS ? withZeros(held, quantity, display) : shortest(value, DIGITS_OF_RATIOS);
}

/** The value's decimal numeral rounded to a range of the author's choice, or as `rounding` does where that is coarser. */
export function coarselyRounded(quantity: Quantity, display: DisplayUnit, to: RoundingRange): string {
  const own = roundingRange(quantity, display);
  return sizeOf(to) > sizeOf(own) ? roundToRange(fromCanonical(quantity.value, display.unit), to) : rounding(quantity, display);
}

/** The zeros that the author wrote at the end: 2.0 GHz stays so, beside 2.2 GHz. Zero itself has no use for them. */
function withZeros(numeral: string, { value, lastDigit }: Quantity, display: DisplayUnit): string {
  if (lastDigit === undefined || value === 0) return numeral;
  const missing = -leadingPlace(differenceIn(display, lastDigit)) - decimalsOf(numeral);
  if (missing <= 0) return numeral;
  return `${numeral}${numeral.includes('.') ? '' : '.'}${'0'.repeat(missing)}`;
}

/** What the printed value is a multiple of: also what its interval's ends are rounded to, so that the value never lies outside. */
export function roundingRange(quantity: Quantity, display: DisplayUnit): RoundingRange {
  return rangeFor(quantity, display) ?? powerOfTen(-decimalsOf(rounding(quantity, display)));
}

/** The range by uncertainty and step; undefined for an exact value, which keeps its digits. */
function rangeFor(quantity: Quantity, display: DisplayUnit): RoundingRange | undefined {
  const value = fromCanonical(quantity.value, display.unit);
  const step = quantity.step === undefined ? undefined : rangeOfStep(differenceIn(display, quantity.step));
  if (isExact(quantity) && !step) return undefined;
  const u = standardUncertainty(quantity);
  const range =
    u === null || u === 0 ? (step ?? threeDigits(value)) : coarser(powerOfTen(uncertaintyPlace(differenceIn(display, u))), step);
  return coarser(range, powerOfTen(finestPlace(value, display)));
}

function digitsOf(numeral: string): number {
  return numeral.replace(/\D/g, '').replace(/^0+/, '').length;
}

/** Digits after the point of a numeral. */
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

/** The shortest decimal of a number, freed of the last digits' binary noise. */
function shortest(value: number, significant: number): string {
  const clean = Number(value.toPrecision(significant));
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
export function differenceIn(display: DisplayUnit, width: number): number {
  return fromCanonical(width, { ...display.unit, offset: 0 });
}
