/** Numbers as authors write them: a decimal point, never a comma; plain or with an exponent. */
import { shift } from './decimal.ts';
import { fail, type ParseFailure } from './parse-failure.ts';

export interface Numeral {
  readonly value: number;
  /** One unit of the last digit written: 0.1 for 22.4, 10 for 1.2e2. */
  readonly step: number;
  /** Whether it was written with zeros at its end that a number does not keep: 2.0, not 2 or 20. */
  readonly padded: boolean;
  /** Offset after the last character. */
  readonly end: number;
}

const PLAIN = /[+\-−]?\d+(?:\.\d+)?(?:[eE][+\-−]?\d+)?/y;

/** Reads the number at an offset of a text. `expected` says what stands there when it is none. */
export function numeralAt(text: string, offset: number, expected: string): Numeral | ParseFailure {
  PLAIN.lastIndex = offset;
  const found = PLAIN.exec(text)?.[0];
  if (found === undefined)
    return fail(text.length > offset ? `no number at "${text.slice(offset)}"` : 'no number', offset, expected);
  const end = offset + found.length;
  if (/^,\d/.test(text.slice(end)))
    return fail(`a comma in the number ${/^[\d.,]+/.exec(text.slice(offset))?.[0] ?? found}`, end, 'a decimal point');
  if (/^\.\d*/.test(text.slice(end)))
    return fail(`a number that ends at a point or has two: ${text.slice(offset).trim()}`, end, 'digits on both sides of one point');
  if (/^[  \u202f]\d/.test(text.slice(end))) return fail('a blank inside a number', end, 'digits without blanks');
  const [mantissa = '', power = '0'] = found.replaceAll('−', '-').split(/e/i);
  const value = Number(`${mantissa}e${power}`);
  if (!Number.isFinite(value)) return fail(`the number ${found} is too large`, offset, 'a number below 1.8e308');
  const step = shift(1, Number(power) - (mantissa.split('.')[1]?.length ?? 0));
  return { value, step, padded: /\.\d*0$/.test(mantissa), end };
}
