/** Units that stand in a column's name: `Temp [°C]`, `Temp (C)`, `T / K`, `temp_c`, `Core °C`, `elapsed seconds`. */
import { type ReadingKind, readUnit, type Unit } from '../../quantities/units.ts';
import { dataUnit } from './data-units.ts';

export interface HeaderUnit {
  /** As the header has it. */
  readonly spelling: string;
  /** How it stands there, for the reader. */
  readonly form: 'in brackets' | 'after a slash' | 'after a comma' | 'as a suffix' | 'as the last word' | 'as the name';
  /** False for spellings that could be part of the name: these count only where they fit the quantity. */
  readonly sure: boolean;
}

/** Lower-case spellings as programs write them, besides those that the units reader knows. `mw` is milliwatt: a megawatt is no reading of a bench. */
const LOWER: Readonly<Record<string, string>> = {
  c: '°C',
  degc: '°C',
  f: '°F',
  degf: '°F',
  k: 'K',
  mc: 'm°C',
  hz: 'Hz',
  khz: 'kHz',
  mhz: 'MHz',
  ghz: 'GHz',
  ua: 'µA',
  ma: 'mA',
  a: 'A',
  amps: 'A',
  mv: 'mV',
  v: 'V',
  mw: 'mW',
  w: 'W',
  j: 'J',
  wh: 'Wh',
  mwh: 'mWh',
  kwh: 'kWh',
  us: 'µs',
  millis: 'ms',
  msecs: 'ms',
  'u/min': 'rpm',
  mb: 'MB',
  'mb/s': 'MB/s',
  'kb/s': 'kB/s',
  kb: 'kB',
  gb: 'GB',
};

/** A unit of a column, physical or not. */
export function columnUnit(spelling: string, kind?: ReadingKind): Unit | undefined {
  return readUnit(spelling, kind) ?? dataUnit(spelling);
}

/** The spelling that the units reader knows for a unit as it stands in a header or cell; the text itself where none is needed. */
export function unitSpelling(text: string, kind?: ReadingKind): string | undefined {
  const trimmed = text.trim();
  if (trimmed === '') return undefined;
  if (columnUnit(trimmed, kind)) return trimmed;
  const lower = LOWER[trimmed.toLowerCase()];
  return lower !== undefined && columnUnit(lower, kind) ? lower : undefined;
}

/** The unit in a column's name, or null. `fits` says which units the quantity can have: names that merely look like a unit are skipped. */
export function headerUnit(name: string, kind: ReadingKind | undefined, fits: (spelling: string) => boolean): HeaderUnit | null {
  for (const match of [...name.matchAll(/[([]\s*([^()[\]]+?)\s*[)\]]/g)].reverse()) {
    const spelling = unitSpelling(match[1]!, kind);
    if (spelling !== undefined) return { spelling, form: 'in brackets', sure: true };
  }
  for (const { pattern, form } of FORMS) {
    const text = pattern.exec(name)?.[1];
    const spelling = text === undefined ? undefined : unitSpelling(text, kind);
    if (spelling !== undefined && fits(spelling)) return { spelling, form, sure: false };
  }
  return null;
}

/** In order of trust. A single letter as the last word is a name (`Sensor A`), not a unit. */
const FORMS: readonly { readonly pattern: RegExp; readonly form: HeaderUnit['form'] }[] = [
  { pattern: /\S\s*\/\s*([^\s/]+(?:\/[^\s/]+)?)$/, form: 'after a slash' },
  { pattern: /,\s*(\S+)$/, form: 'after a comma' },
  { pattern: /[_.-]([A-Za-z%°µμ]+)$/, form: 'as a suffix' },
  { pattern: /\s(\S{2,}|%)$/, form: 'as the last word' },
  { pattern: /^([a-z]{3,}|%)$/i, form: 'as the name' },
];

/** What stands in brackets at the end of a name, whatever it is: for telling that it is not a unit. */
export function bracketText(name: string): string | undefined {
  return /[([]\s*([^()[\]]+?)\s*[)\]]\s*$/.exec(name)?.[1];
}
