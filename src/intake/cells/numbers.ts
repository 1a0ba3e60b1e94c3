/** The one strict conversion of text to a number. No hexadecimal, no grouping, no words, no trailing dot. */

/** What stands between whole and fraction: a point or a comma. */
export type DecimalMark = '.' | ',';

/** Powers of ten that a double holds exactly. */
export const POWERS = Array.from({ length: 23 }, (_, k) => Number(`1e${k}`));

/**
 * Reads `[+-]digits[mark digits][e[+-]digits]` with blanks around it, times 10^shift; NaN for anything else. The minus sign proper is one too.
 * Up to 15 digits the quotient or product of two exact doubles is the correctly rounded value (Clinger 1990, fast path);
 * everything else goes through `Number`, which rounds correctly too. So `71.3` mV becomes the double nearest to 0.0713.
 * `from` and `to` bound the text within a longer one, half open: a column is read without cutting its cells out.
 */
export function parseNumber(text: string, mark: DecimalMark, shift = 0, from = 0, to = text.length): number {
  const markCode = mark === '.' ? 46 : 44;
  let at = from;
  let end = to;
  while (at < end && isBlank(text.charCodeAt(at))) at++;
  while (end > at && isBlank(text.charCodeAt(end - 1))) end--;
  const sign = text.charCodeAt(at);
  let mantissa = 0;
  let decimals = -1;
  let digits = 0;
  for (let i = sign === 45 || sign === 43 ? at + 1 : at; i < end; i++) {
    const code = text.charCodeAt(i);
    if (code >= 48 && code <= 57) {
      mantissa = mantissa * 10 + (code - 48);
      digits++;
      if (decimals >= 0) decimals++;
    } else if (code === markCode && decimals < 0) decimals = 0;
    else return parseSlow(text.slice(at, end), mark, shift);
  }
  if (digits === 0 || decimals === 0) return Number.NaN;
  const power = (decimals > 0 ? -decimals : 0) + shift;
  if (digits > 15 || power < -22 || power > 22) return parseSlow(text.slice(at, end), mark, shift);
  const value = power < 0 ? mantissa / POWERS[-power]! : mantissa * POWERS[power]!;
  return sign === 45 ? -value : value;
}

const POINT = /^([+-]?(?:\d+(?:\.\d+)?|\.\d+))(?:[eE]([+-]?\d{1,3}))?$/;
const COMMA = /^([+-]?(?:\d+(?:,\d+)?|,\d+))(?:[eE]([+-]?\d{1,3}))?$/;

/** U+2212, the minus sign proper. */
const MINUS = 0x2212;

function parseSlow(text: string, mark: DecimalMark, shift: number): number {
  const match = (mark === '.' ? POINT : COMMA).exec(text.charCodeAt(0) === MINUS ? `-${text.slice(1)}` : text);
  if (!match) return Number.NaN;
  const value = Number(`${match[1]!.replace(',', '.')}e${Number(match[2] ?? 0) + shift}`);
  return Number.isFinite(value) ? value : Number.NaN;
}

function isBlank(code: number): boolean {
  return code === 32 || code === 9 || code === 13 || code === 0xa0;
}

const GROUPED: Readonly<Record<DecimalMark, RegExp>> = {
  '.': /^[+\u2212-]?\d{1,3}(?:,\d{3})+(?:\.\d+)?$|^[+\u2212-]?\d{1,3}(?:(['’\u00a0\u2009\u202f ])\d{3})(?:\1\d{3})*(?:\.\d+)?$/,
  ',': /^[+\u2212-]?\d{1,3}(?:\.\d{3})+(?:,\d+)?$|^[+\u2212-]?\d{1,3}(?:(['’\u00a0\u2009\u202f ])\d{3})(?:\1\d{3})*(?:,\d+)?$/,
};

/** A number whose thousands are grouped, `1,810,000`, as it can be where `mark` is the decimal mark. Such numbers are told, not read: `1,810` may be either. */
export function isGrouped(text: string, mark: DecimalMark): boolean {
  return GROUPED[mark].test(text.trim());
}

/** Decimals that a number is written with: 2 for `71.30`, 5 for `1.2e-4`, 0 for `4e3`. Bounds as for `parseNumber`. */
export function decimalsOf(text: string, mark: DecimalMark, from = 0, to = text.length): number {
  const markCode = mark === '.' ? 46 : 44;
  let at = to - 1;
  while (at >= from && text.charCodeAt(at) >= 48 && text.charCodeAt(at) <= 57) at--;
  if (at < from) return 0;
  if (text.charCodeAt(at) === markCode) return to - 1 - at;
  const match = /^\s*[+\u2212-]?\d*(?:[.,](\d+))?(?:[eE]([+-]?\d+))?/.exec(text.slice(from, to));
  return Math.max(0, (match?.[1]?.length ?? 0) - Number(match?.[2] ?? 0));
}
