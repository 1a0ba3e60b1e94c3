/** A published value beside ours, and how far they must agree. */

export interface CheckedValue {
  /** What it is: "slope", "b1 from start 2". */
  readonly what: string;
  /** As published. */
  readonly printed: string;
  readonly ours: number;
  /** Largest difference that will do, in the unit of the value. */
  readonly tolerance: number;
  /** The demand in words: "9 digits", "as printed", "one row of the log (1 s)". */
  readonly demand: string;
}

/** Values with one origin. */
export interface Check {
  /** Stable, kebab-case: the anchor on the page. */
  readonly id: string;
  readonly title: string;
  /** Where the published values stand, and where they were read. */
  readonly source: string;
  readonly compare: () => readonly CheckedValue[];
}

/** Doubles carry no more decimal digits than this through a computation. */
const MOST_DIGITS = 15;

/** Agreement to a number of significant digits: a relative difference of at most 10 to the minus that. */
export function toDigits(what: string, printed: string, ours: number, digits: number, why = ''): CheckedValue {
  const tolerance = Math.abs(Number(printed)) * 10 ** -digits;
  return { what, printed, ours, tolerance, demand: `${digits} digits${why && `: ${why}`}` };
}

/** Agreement with a rounded value: ours rounds to it, so it is at most half a unit of its last digit away. */
export function asPrinted(what: string, printed: string, ours: number): CheckedValue {
  return { what, printed, ours, tolerance: halfUnit(printed) * (1 + 1e-9), demand: 'as printed' };
}

/** Agreement to an absolute tolerance, named in words. */
export function within(what: string, value: number, ours: number, tolerance: number, demand: string): CheckedValue {
  return { what, printed: String(Number(value.toPrecision(10))), ours, tolerance, demand };
}

/** Half a unit of the last decimal place that a numeral such as `0.170`, `9.7` or `1.2e-3` shows. */
function halfUnit(printed: string): number {
  const [mantissa = '', exponent = '0'] = printed.toLowerCase().split('e');
  const decimals = mantissa.split('.')[1]?.length ?? 0;
  return 0.5 * 10 ** (Number(exponent) - decimals);
}

/**
 * Significant digits that agree: −log₁₀ of the relative difference, at most 15 (B. D. McCullough, "Assessing the reliability of
 * statistical software: part I", The American Statistician 52, 1998, 358–366). For a published zero, of the difference itself.
 */
export function digitsReached({ printed, ours }: CheckedValue): number {
  return digitsOf(Number(printed) - ours, Number(printed));
}

/** Digits that the demand comes to, on the same scale. */
export function digitsRequired({ printed, tolerance }: CheckedValue): number {
  return digitsOf(tolerance, Number(printed));
}

function digitsOf(difference: number, value: number): number {
  if (difference === 0) return MOST_DIGITS;
  const digits = -Math.log10(Math.abs(difference) / (Math.abs(value) || 1));
  return Number.isNaN(digits) ? 0 : Math.max(0, Math.min(MOST_DIGITS, digits));
}

/** Whether ours is as near as demanded; never for a value that is not a number. */
export function agrees({ printed, ours, tolerance }: CheckedValue): boolean {
  return Math.abs(Number(printed) - ours) <= tolerance;
}
