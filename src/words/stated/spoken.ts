/** A printed quantity in spoken words, for scripts: "58.3 °C" is "fifty-eight point three degrees". */
import { numeralWords } from './numeral-words.ts';
import { nameOfSymbol } from './unit-names.ts';

const BLANK = '[ \\u00a0\\u2009\\u202f]';
const NUMERAL = String.raw`[-−]?\d+(?:,\d{3})*(?:\.\d+)?`;
const PRINTED = new RegExp(
  `^(${NUMERAL})(?:${BLANK}?×${BLANK}?10([⁻⁰¹²³⁴-⁹]+|\\^[-−]?\\d+))?(?:${BLANK}?(\\D\\S*(?: \\S+)*))?$`,
  'u',
);
/** What stood in for something that was not measured. */
const ASIDE = / \(\p{L}[^()]*\)$/u;
const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** Units that are said otherwise than word by word. */
const SAID: ReadonlyMap<string, string> = new Map([
  ['m²', 'square metres'],
  ['A·s', 'amp seconds'],
]);

/**
 * The words to say for a printed number with or without its unit. Signs are minus, powers "times ten to the minus seven", quotients "per";
 * a unit without a name (a score's own) stays as it is, and so do words in brackets behind it. A text that is no printed quantity comes back unchanged.
 */
export function spoken(printed: string): string {
  const aside = ASIDE.exec(printed)?.[0] ?? '';
  return spokenNumber(aside === '' ? printed : printed.slice(0, -aside.length)) + aside;
}

function spokenNumber(printed: string): string {
  const [, numeral = '', power, unit] = PRINTED.exec(printed.trim()) ?? [];
  const words = numeral === '' ? undefined : numeralWords(numeral);
  if (words === undefined) return printed;
  const scaled = power === undefined ? words : `${words} times ten to the ${powerWords(power)}`;
  return unit === undefined ? scaled : `${scaled} ${unitWords(unit, isOne(numeral) && power === undefined)}`;
}

function isOne(numeral: string): boolean {
  return /^[-−]?1$/.test(numeral);
}

function powerWords(power: string): string {
  const plain = power
    .replace('^', '')
    .replace('⁻', '-')
    .replace(/[⁰¹²³⁴-⁹]/gu, (digit) => String(SUPERSCRIPTS.indexOf(digit)));
  return numeralWords(plain) ?? plain;
}

/** The first unit in the number that fits, those after "per" single. */
function unitWords(unit: string, one: boolean): string {
  const [first = '', ...under] = unit.split('/');
  return [unitName(first, one), ...under.map((part) => unitName(part, true))].join(' per ');
}

function unitName(symbol: string, one: boolean): string {
  const name = nameOfSymbol(symbol.trim());
  return name ? (one ? name.one : name.many) : (SAID.get(symbol.trim()) ?? symbol.trim());
}
