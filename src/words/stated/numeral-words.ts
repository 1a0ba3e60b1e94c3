/** Decimal numerals in spoken words: "58.30" is "fifty-eight point three zero". */
import { cardinalWords } from './cardinal.ts';

/** Whole numbers longer than this are read out digit by digit. */
const DIGITS_NAMED = 15;

/**
 * A plain decimal numeral (`-58.30`, with or without grouping commas) in words; digits after the point one by one, as CLDR's English
 * rules spell them (Unicode CLDR, rbnf/en, %spellout-cardinal-verbose, without its commas). undefined for any other text.
 */
export function numeralWords(numeral: string): string | undefined {
  const [, sign = '', whole = '', fraction] = /^([-−]?)(\d+)(?:\.(\d+))?$/.exec(numeral.replaceAll(',', '')) ?? [];
  if (whole === '') return undefined;
  const said = whole.length > DIGITS_NAMED ? digits(whole) : cardinalWords(Number(whole));
  return `${sign === '' ? '' : 'minus '}${said}${fraction === undefined ? '' : ` point ${digits(fraction)}`}`;
}

function digits(numeral: string): string {
  return [...numeral].map((digit) => cardinalWords(Number(digit))).join(' ');
}
