/** What a single cell looks like, for finding header, columns and formats. Conversion itself is elsewhere. */
import { isCivil } from './civil.ts';
import { type DecimalMark, parseNumber } from './numbers.ts';

export type CellKind = 'number' | 'time' | 'missing' | 'text';

/** Cell texts that mean "no reading" everywhere; a column can declare more. */
export const MISSING_MARKERS: ReadonlySet<string> = new Set([
  '',
  'NA',
  'N/A',
  'n/a',
  'na',
  'NaN',
  'nan',
  'NAN',
  'null',
  'NULL',
  'None',
  'none',
  '-',
  '--',
  '---',
  '?',
  '#N/A',
]);

export interface SuffixedNumber {
  readonly value: number;
  /** What follows the number: `°C`, `'C`, `mA`. */
  readonly suffix: string;
}

const SUFFIXED = /^([+\u2212-]?[\d.,]+(?:[eE][+-]?\d+)?)\s*(['’]?\s*[°℃℉%µμΩ\p{L}][\p{L}°%/·²³\d]{0,11})$/u;

/** A number with its unit glued to it or after a blank; null for anything else. */
export function suffixedNumber(cell: string, mark: DecimalMark): SuffixedNumber | null {
  const match = SUFFIXED.exec(cell.trim());
  // `0x0` is a word of bits.
  if (!match || /^0[xX]/.test(match[0])) return null;
  const value = parseNumber(match[1]!, mark);
  return Number.isNaN(value) ? null : { value, suffix: match[2]!.trim() };
}

/** A number or a time by itself, which no name is: `12V` is none. */
export function isTyped(text: string, mark: DecimalMark): boolean {
  return !Number.isNaN(parseNumber(text, mark)) || isCivil(text);
}

/** Classifies a cell. */
export function cellKind(cell: string, mark: DecimalMark): CellKind {
  const text = cell.trim();
  if (MISSING_MARKERS.has(text)) return 'missing';
  if (!Number.isNaN(parseNumber(text, mark))) return 'number';
  if (isCivil(text)) return 'time';
  if (/^(?:\w+=)?0[xX][0-9a-fA-F]+$/.test(text)) return 'number';
  return suffixedNumber(text, mark) ? 'number' : 'text';
}
