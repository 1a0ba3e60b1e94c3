/**
 * Decimal numerals, exactly: the digits that a reader sees, never the binary double behind them.
 * A number stands here for its shortest decimal numeral (ECMA-262, Number::toString), so 12.2135 is 12.2135 and not 12.213499….
 */

/** digits × 10^exponent, negated where `negative`. */
export interface Decimal {
  readonly negative: boolean;
  readonly digits: bigint;
  readonly exponent: number;
}

/** The decimal behind a finite number. Throws a RangeError for NaN and infinities. */
export function decimalOf(value: number): Decimal {
  if (!Number.isFinite(value)) throw new RangeError(`expected a finite number, got ${value}`);
  const [mantissa = '', power = '0'] = String(Math.abs(value)).split('e');
  const [whole = '', fraction = ''] = mantissa.split('.');
  return { negative: value < 0, digits: BigInt(whole + fraction), exponent: Number(power) - fraction.length };
}

/** Writes a decimal without an exponent, with as many decimals as its exponent asks for; minus as ASCII, zero without a sign. */
export function numeralOf({ negative, digits, exponent }: Decimal): string {
  const sign = negative && digits !== 0n ? '-' : '';
  if (exponent >= 0) return `${sign}${digits}${digits === 0n ? '' : '0'.repeat(exponent)}`;
  const padded = digits.toString().padStart(1 - exponent, '0');
  return `${sign}${padded.slice(0, exponent)}.${padded.slice(exponent)}`;
}

/** value × 10^places with one rounding, on the numeral: 9 shifted by −3 is 0.009, where 9 * 0.001 is 0.009000000000000001. */
export function shift(value: number, places: number): number {
  if (places === 0 || !Number.isFinite(value)) return value;
  const [mantissa = '', power = '0'] = String(value).split('e');
  return Number(`${mantissa}e${Number(power) + places}`);
}

/** Exponent of the first significant digit: 2 for 612, −2 for 0.05. Unit: none. For zero and non-finite numbers: −Infinity. */
export function leadingPlace(value: number): number {
  if (value === 0 || !Number.isFinite(value)) return Number.NEGATIVE_INFINITY;
  return Number(value.toExponential().split('e')[1]);
}
