/** A score's unit as people say it behind a number: `sweeps/s` is also "sweeps per second", `GB/s` "gigabytes a second". */
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
  Ki: 'kibi',
  Mi: 'mebi',
  Gi: 'gibi',
  Ti: 'tebi',
};

const known = new Map<string, RegExp>();

/** Whether a text begins with a score's unit, in its author's spelling or in words; blanks before it count for nothing. */
export function beginsWithUnit(text: string, unit: string): boolean {
  const pattern = known.get(unit) ?? patternOf(unit);
  known.set(unit, pattern);
  return pattern.test(text);
}

function patternOf(unit: string): RegExp {
  const parts = unit.split('/');
  const quotient = parts.map((part) => `(?:${spellingsOf(part).map(escaped).join('|')})`);
  const words = parts.length === 2 ? `|${quotient.join(String.raw`(?:\s?/\s?|\s+(?:per|an?|each)\s+)`)}` : '';
  return new RegExp(String.raw`^\s*(?:${inCases(unit).map(escaped).join('|')}${words})(?![\p{L}\p{N}])`, 'u');
}

/** A word counts in any case; a symbol as it is written: `Gb` is an eighth of `GB`. */
function inCases(spelling: string): string[] {
  if (!/^(?:\p{Lu}?\p{Ll}{2,}|\p{Lu}{3,})(?:\P{L}.*)?$/u.test(spelling)) return [spelling];
  const low = spelling.toLowerCase();
  return [...new Set([spelling, low, `${low.charAt(0).toUpperCase()}${low.slice(1)}`, spelling.toUpperCase()])];
}

/** A part of a unit: as written, one and many, and by its name. */
function spellingsOf(part: string): string[] {
  const name = nameOfSymbol(part);
  const [, prefix = '', size] = /^([kKMGT]?|[KMGT]i)(B|b|bits?)$/.exec(part) ?? [];
  const sizes = size === undefined ? [] : [`${SIZES[prefix] ?? ''}${size === 'B' ? 'byte' : 'bit'}`];
  const single = /^\p{L}{3,}s$/u.test(part) ? [part.slice(0, -1)] : [];
  return [part, ...single, ...(name ? [name.many, name.one] : []), ...sizes.flatMap((word) => [`${word}s`, word])].flatMap(inCases);
}

function escaped(text: string): string {
  return text.replace(/[\\^$.*+?()[\]{}|/-]/g, String.raw`\$&`);
}
