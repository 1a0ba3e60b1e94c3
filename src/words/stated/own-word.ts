/** A score's unit as people say it behind a number: `sweeps/s` is also "sweeps per second", `GB/s` "gigabytes a second". */
import { readUnit } from '../../quantities/units.ts';
import { nameOfSymbol } from './unit-names.ts';

/**
 * Prefixes of sizes in words; those with an i are of IEC 80000-13:2008, clause 4. Common practice, no source: whether a kilobyte has 1,000 or
 * 1,024 bytes is its author's word.
 */
const SIZES: Readonly<Record<string, string>> = {
  k: 'kilo',
  K: 'kilo',
  M: 'mega',
  G: 'giga',
  T: 'tera',
  P: 'peta',
  Ki: 'kibi',
  Mi: 'mebi',
  Gi: 'gibi',
  Ti: 'tebi',
  Pi: 'pebi',
};

const patterns = new Map<string, RegExp>();

/** Whether a text begins with a score's unit, in its author's spelling or in words; blanks before it count for nothing. */
export function beginsWithUnit(text: string, unit: string): boolean {
  const pattern = patterns.get(unit) ?? patternOf(unit);
  patterns.set(unit, pattern);
  return pattern.test(text);
}

function patternOf(unit: string): RegExp {
  const parts = unit.split('/');
  const quotient = parts.map((part) => `(?:${spellingsOf(part).map(inAnyCase).join('|')})`);
  const words = parts.length === 2 ? `|${quotient.join(String.raw`(?:\s?/\s?|\s+(?:per|an?|each)\s+)`)}` : '';
  return new RegExp(String.raw`^\s*(?:${inAnyCase(unit)}${words})(?![\p{L}\p{N}])`, 'u');
}

/** A pattern that takes each letter in either case, but where its case tells two known units apart: `Gb` is an eighth of `GB`, `mW` is no `MW`. */
function inAnyCase(spelling: string): string {
  return spelling.replace(/\p{L}+|\P{L}+/gu, (word) => (/^\p{L}/u.test(word) ? lettersOf(word) : escaped(word)));
}

function lettersOf(word: string): string {
  const own = known(word);
  return [...word]
    .map((letter, at, letters) => {
      const other = otherCase(letter);
      const meant = known(letters.with(at, other).join(''));
      return other === letter || (meant !== undefined && meant !== own) ? letter : `[${letter}${other}]`;
    })
    .join('');
}

function otherCase(letter: string): string {
  const other = letter === letter.toLowerCase() ? letter.toUpperCase() : letter.toLowerCase();
  return other.length === letter.length ? other : letter;
}

/** What a symbol means as it is written; undefined for an author's own word. */
function known(symbol: string): string | undefined {
  const unit = readUnit(symbol);
  return sizeNamed(symbol) ?? (unit && `${unit.factor} ${unit.canonical}`);
}

/** A part of a unit: as written, one and many, and by its name. */
function spellingsOf(part: string): string[] {
  const name = nameOfSymbol(part);
  const size = sizeNamed(part);
  const sizes = size === undefined ? [] : [size];
  const single = /^\p{L}{3,}s$/u.test(part) ? [part.slice(0, -1)] : [];
  return [part, ...single, ...(name ? [name.many, name.one] : []), ...sizes.flatMap((word) => [`${word}s`, word])];
}

/** `GB` is "gigabyte", `kbit` and `kb` are "kilobit". */
function sizeNamed(part: string): string | undefined {
  const [, prefix = '', size] = /^([kKMGTP]?|[KMGTP]i)(B|b|bits?)$/.exec(part) ?? [];
  return size === undefined ? undefined : `${SIZES[prefix] ?? ''}${size === 'B' ? 'byte' : 'bit'}`;
}

function escaped(text: string): string {
  return text.replace(/[\\^$.*+?()[\]{}|/]/g, String.raw`\$&`);
}
