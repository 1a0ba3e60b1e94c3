/** Numbers in digits as people group them: 1,234.5 and 1 234.5. */
import { shift } from '../../quantities/decimal.ts';
import { type Unread, unread } from './stated-number.ts';
import type { Token } from './tokens.ts';

export interface Digits {
  readonly value: number;
  /** Exponent of the last digit written. */
  readonly place: number;
  readonly grouping?: string;
}

const GROUPED = /^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/;
const BLANKS = /[ \u00a0\u2009\u202f]/;
const EXPECTED = 'digits with a decimal point, in groups of three or not: 1,234.5';

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** `1.2 × 10⁻⁷`, as small numbers are printed. */
export function powerOf({ text, start, ...token }: Token): Digits | Unread {
  const [mantissa = '', power = ''] = text.split(/[ \u00a0]?×[ \u00a0]?10\^?/);
  const plain = power.replace('⁻', '-').replace(/[⁰¹²³⁴-⁹]/gu, (digit) => String(SUPERSCRIPTS.indexOf(digit)));
  return digitsOf({ ...token, start, text: `${mantissa}e${plain}` });
}

/** Reads a number token. Every digit written counts, zeros too: the place is that of the last one. */
export function digitsOf({ text, start }: Token): Digits | Unread {
  if (text.includes(',') && !GROUPED.test(text)) return unread(`a comma in the number ${text}`, start, EXPECTED);
  if (/\..*\./.test(text)) return unread(`two points in the number ${text}`, start, EXPECTED);
  const grouping = text.includes(',') ? ',' : BLANKS.exec(text)?.[0];
  const plain = text.replace(/[, \u00a0\u2009\u202f]/g, '').replaceAll('−', '-');
  if (/[^\d.eE+-]/.test(plain)) return unread(`digits that are not 0 to 9: ${text}`, start, EXPECTED);
  const [mantissa = '', power = '0'] = plain.split(/e/i);
  const value = Number(plain);
  if (!Number.isFinite(value)) return unread(`the number ${text} is too large`, start, 'a number below 1.8e308');
  const place = Number(power) - (mantissa.split('.')[1]?.length ?? 0);
  return grouping === undefined ? { value, place } : { value, place, grouping };
}

/** A number of digits times a power of ten that a word or an exponent gives. */
export function scaled(digits: Digits, power: number): Digits {
  return { ...digits, value: shift(digits.value, power), place: digits.place + power };
}
