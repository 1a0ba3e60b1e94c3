/** Units as people write them, read into the canonical ones: °C, K, s, Hz, A, V, W, J, 1, quotients of these, a score's own word. */
import { shift } from './decimal.ts';
import { type Dimension, dimensionOf, nameOf, single, times } from './dimension.ts';
import { nearest } from './nearest.ts';
import { type Refusal, refuse } from './refusal.ts';
import { lookUp } from './unit-library.ts';
import { ALIASES, KELVIN_SCALES, PREFIXES, READ, SCALES, type Scale, SYMBOLS } from './unit-spellings.ts';

export interface Unit {
  readonly canonical: string;
  /** Canonical value = value × factor + offset. */
  readonly factor: number;
  readonly offset: number;
  /** Set where the factor is this power of ten: `toCanonical` then shifts the decimal point and keeps every digit. */
  readonly decimal?: number;
}

/**
 * What a unit's reader knows of the reading: an absolute temperature (a bare `K` or `F` then means that scale), a difference (`°C` then
 * means K), or a score, whose unit may be any word of the author's.
 */
export type ReadingKind = 'temperature' | 'difference' | 'score';

const NO_WORDS: Dimension = new Map();

/** Reads a unit. `°C` and `°F` are absolute temperatures unless the kind says otherwise; undefined where the spelling is not known. */
export function readUnit(spelling: string, kind?: ReadingKind): Unit | undefined {
  return remembered(readings, `${kind ?? ''}\0${spelling}`, () => readAnew(spelling, kind));
}

function readAnew(spelling: string, kind?: ReadingKind): Unit | undefined {
  const text = tidy(spelling);
  const scale = scaleOf(text, kind);
  if (scale) return scaledTemperature(scale, kind);
  const found = text === '' ? undefined : compound(text, NO_WORDS);
  if (found) return multiple(nameOf(found.dimension), found.ratio, found.decimal);
  return kind === 'score' ? ownWord(spelling.trim()) : undefined;
}

/** A site asks for the same few units thousands of times; most of printing a page of figures was reading them. */
const readings = new Map<string, Unit | undefined>();
const fittings = new Map<string, Unit | Refusal>();
const MOST_REMEMBERED = 10_000;

function remembered<T>(known: Map<string, T>, key: string, make: () => T): T {
  if (known.has(key)) return known.get(key)!;
  const made = make();
  if (known.size < MOST_REMEMBERED) known.set(key, made);
  return made;
}

/** A reading in a unit as a value in its canonical unit. Powers of ten keep every digit: 9 mV is 0.009 V exactly. */
export function toCanonical(value: number, unit: Unit): number {
  if (unit.decimal !== undefined) return shift(value, unit.decimal) + unit.offset;
  return value * unit.factor + unit.offset;
}

/** The inverse of `toCanonical`. */
export function fromCanonical(value: number, unit: Unit): number {
  if (unit.decimal !== undefined) return shift(value - unit.offset, -unit.decimal);
  return (value - unit.offset) / unit.factor;
}

/** A canonical value in another spelling: °C in °F or absolute K, Hz in GHz, J in Wh. A difference in K stays a difference. */
export function convert(value: number, fromUnit: string, toSpelling: string): number | Refusal {
  const unit = unitFor(fromUnit, toSpelling);
  return 'refused' in unit ? unit : fromCanonical(value, unit);
}

/** The unit that a spelling means for values of a canonical unit, or why they cannot be given in it. */
export function unitFor(canonical: string, spelling: string): Unit | Refusal {
  return remembered(fittings, `${canonical}\0${spelling}`, () => fitAnew(canonical, spelling));
}

function fitAnew(canonical: string, spelling: string): Unit | Refusal {
  if (spelling === canonical) return { canonical, factor: 1, offset: 0, decimal: 0 };
  const unit = readUnit(spelling, canonical === '°C' ? 'temperature' : undefined) ?? withWordsOf(canonical, spelling);
  if (unit?.canonical === canonical) return unit;
  const expected = `one of ${unitsOf(canonical).join(', ')}`;
  if (!unit) return refuse(`unknown unit ${spelling}`, expected);
  if (canonical === 'K' && unit.canonical === '°C')
    return refuse(`a temperature difference in K cannot be given in ${spelling}`, expected);
  return refuse(`a value in ${canonical} cannot be given in ${spelling}`, expected);
}

/** Reads a spelling in which the words of a canonical unit may stand: `mJ/points` for values in `J/points`. */
function withWordsOf(canonical: string, spelling: string): Unit | undefined {
  const found = compound(tidy(spelling), dimensionOf(canonical));
  return found && multiple(nameOf(found.dimension), found.ratio, found.decimal);
}

/** Spellings that people read for values of a canonical unit; its own name where there are no others. */
export function unitsOf(canonical: string): string[] {
  return [...(READ.get(canonical) ?? [canonical])];
}

/** The nearest spelling that is known, or undefined where none is near. */
export function nearestUnit(spelling: string): string | undefined {
  const known = [...READ.values()].flat().filter((name) => name !== '1');
  known.push(...SYMBOLS.keys(), ...SCALES.keys(), ...ALIASES.keys());
  const found = nearest(tidy(spelling), known);
  return found === undefined ? undefined : (ALIASES.get(found) ?? found);
}

/** One form for what keyboards and encodings spell in several: degree signs, micro and ohm signs, apostrophes, blanks. */
function tidy(spelling: string): string {
  return spelling
    .trim()
    .replace(/\s+/gu, ' ')
    .replaceAll('μ', 'µ')
    .replaceAll('\u2126', 'Ω')
    .replaceAll('℃', '°C')
    .replaceAll('℉', '°F')
    .replace(/[º˚°] ?(?=[CF])/gu, '°')
    .replace(/[’‘´′](?=[CF])/gu, "'");
}

function scaleOf(text: string, kind: ReadingKind | undefined): Scale | undefined {
  const name = kind === 'temperature' && text === 'F' ? '°F' : aliased(text);
  return SCALES.get(name) ?? (kind === 'temperature' ? KELVIN_SCALES.get(name) : undefined);
}

function scaledTemperature(scale: Scale, kind: ReadingKind | undefined): Unit {
  if (kind === 'difference') return multiple('K', scale.ratio, scale.decimal ?? 0);
  return { ...multiple('°C', scale.ratio, scale.decimal ?? 0), offset: scale.offset };
}

function multiple(canonical: string, ratio: number, decimal: number): Unit {
  if (ratio === 1) return { canonical, factor: Number(`1e${decimal}`), offset: 0, decimal };
  return { canonical, factor: shift(ratio, decimal), offset: 0 };
}

function aliased(text: string): string {
  return ALIASES.get(text) ?? ALIASES.get(text.toLowerCase()) ?? text;
}

/** A score's word. What is written like a quotient is one; brackets and dots would make it ambiguous. */
function ownWord(word: string): Unit | undefined {
  if (!/^[\p{L}\p{N}_%. /+-]+$/u.test(word) || word.split('/').some((part) => part.trim() === '')) return undefined;
  return { canonical: nameOf(dimensionOf(word)), factor: 1, offset: 0, decimal: 0 };
}

/** A multiple of a dimension: ratio × 10^decimal. */
interface Multiple {
  readonly dimension: Dimension;
  readonly ratio: number;
  readonly decimal: number;
}

/** Reads `K/W`, `W/(m² K)`, `mA h`, `1/s`: products over products. */
function compound(text: string, words: Dimension): Multiple | undefined {
  const whole = atom(text, words);
  if (whole) return whole;
  const [over = '', ...under] = text.split(/ ?\/ ?| per /);
  let result = product(over, words);
  for (const divisor of under) {
    const divided = product(divisor.replace(/^\((.*)\)$/, '$1'), words);
    result = result && divided && combined(result, divided, -1);
  }
  return result;
}

function product(text: string, words: Dimension): Multiple | undefined {
  let result: Multiple | undefined = { dimension: new Map(), ratio: 1, decimal: 0 };
  for (const factor of text.split(/ ?[·⋅*×] ?| /)) {
    const [, name = '', power = '1'] = /^(.*?)(?:\^?(-?[1-9])|[²³])?$/u.exec(factor) ?? [];
    const found = atom(name, words) ?? atom(factor, words);
    const exponent = factor.endsWith('²') ? 2 : factor.endsWith('³') ? 3 : Number(power);
    result = result && found && combined(result, found, exponent);
  }
  return result;
}

function combined(a: Multiple, b: Multiple, power: number): Multiple {
  return {
    dimension: times(a.dimension, b.dimension, power),
    ratio: a.ratio * b.ratio ** power,
    decimal: a.decimal + b.decimal * power,
  };
}

/** A symbol with or without a prefix, a whole spelling, a temperature scale's degree (as K), or a unit of the library. */
function atom(text: string, words: Dimension): Multiple | undefined {
  if (words.has(text)) return { dimension: single(text), ratio: 1, decimal: 0 };
  const name = aliased(text);
  const scale = SCALES.get(name);
  if (scale) return { dimension: single('K'), ratio: scale.ratio, decimal: scale.decimal ?? 0 };
  const symbol = SYMBOLS.get(name);
  if (symbol) return multipleOf(name, 0);
  const letter = name.startsWith('u') ? 'µ' : (name[0] ?? '');
  const rest = aliased(name.slice(1)) === 'Ω' ? 'Ω' : name.slice(1);
  if (SYMBOLS.get(rest)?.prefixes?.includes(letter)) return multipleOf(rest, PREFIXES.get(letter) ?? 0);
  const found = lookUp(name.replace('µ', 'u'));
  return found && { dimension: found.dimension, ratio: found.factor, decimal: 0 };
}

function multipleOf(symbol: string, prefix: number): Multiple {
  const { of, ratio = 1, decimal = 0 } = SYMBOLS.get(symbol)!;
  return { dimension: dimensionOf(of), ratio, decimal: decimal + prefix };
}
