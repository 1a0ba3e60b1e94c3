/** The unit after a number, in words or signs. */
import { readUnit } from '../../quantities/units.ts';
import type { Amount, UnitKind, UnitSaid } from './phrase.ts';
import type { Token } from './tokens.ts';
import { nameOfSymbol, symbolOfWords } from './unit-names.ts';

export interface UnitFound {
  readonly unit: UnitSaid;
  /** Index after the last token. */
  readonly next: number;
}

/** More words than any unit's name has. */
const LONGEST = 3;
const TIMES = new Set(['times', 'time', 'fold']);
const TIMES_SIGNS = new Set(['x', '×', 'X']);

/** The unit that begins at a token: the longest that is known, with "per" and "/" for quotients. A symbol of one letter counts after digits only. */
export function unitAt(tokens: readonly Token[], at: number, after: Amount['style'] | undefined): UnitFound | undefined {
  const times = timesAt(tokens, at, after);
  if (times) return times;
  const first = singleAt(tokens, at, after);
  if (!first) return undefined;
  const per = tokens[first.next];
  const under = per?.text === '/' || per?.low === 'per' ? singleAt(tokens, first.next + 1, 'digits') : undefined;
  if (!under) return said(tokens, at, first.symbol, first.next);
  return said(tokens, at, `${first.symbol}/${under.symbol}`, under.next) ?? said(tokens, at, first.symbol, first.next);
}

function timesAt(tokens: readonly Token[], at: number, after: Amount['style'] | undefined): UnitFound | undefined {
  const token = tokens[at];
  if (!token) return undefined;
  const sign = TIMES_SIGNS.has(token.text) && after === 'digits' && tokens[at + 1]?.kind !== 'number';
  if (!sign && !TIMES.has(token.low)) return undefined;
  if (token.low === 'time') return undefined;
  return { unit: { spelling: '1', unit: readUnit('1')!, kind: 'times', start: token.start, end: token.end }, next: at + 1 };
}

interface Single {
  readonly symbol: string;
  readonly next: number;
}

function singleAt(tokens: readonly Token[], at: number, after: Amount['style'] | undefined): Single | undefined {
  for (let length = LONGEST; length > 0; length--) {
    const taken = tokens.slice(at, at + length);
    if (taken.length < length || taken.some(({ kind }) => kind !== 'word')) continue;
    const symbol = symbolOfWords(tidied(taken.map(({ low }) => low).join(' '))) ?? symbolFrom(taken, after);
    if (symbol !== undefined) return { symbol, next: at + length };
  }
  return undefined;
}

/** A symbol as it is written: `MHz`, `°C`, `° C`; one letter (`A`, `h`) after digits only, since it may be a word. */
function symbolFrom(taken: readonly Token[], after: Amount['style'] | undefined): string | undefined {
  const written = taken.map(({ text }) => text).join('');
  if (after === undefined || (after === 'words' && /^\p{L}$/u.test(written))) return undefined;
  const tidy = tidied(written);
  const symbol = SCALE_LETTERS.get(tidy) ?? tidy;
  return nameOfSymbol(symbol) || (taken.length === 1 && readUnit(symbol)) ? symbol : undefined;
}

/** The signs that look like those of units, as those. */
function tidied(written: string): string {
  return written.replace(/[º˚]/u, '°').replace('℃', '°C').replace('℉', '°F').replace('μ', 'µ').replace('\u2126', 'Ω');
}

const SCALE_LETTERS: ReadonlyMap<string, string> = new Map([
  ['C', '°C'],
  ['F', '°F'],
  ['degC', '°C'],
  ['degF', '°F'],
  ...'ghz GHz,Ghz GHz,GHZ GHz,mhz MHz,Mhz MHz,MHZ MHz,khz kHz,Khz kHz,KHz kHz,KHZ kHz,kw kW,KW kW,mw mW,mv mV,ma mA,mah mAh,wh Wh,kwh kWh,KWh kWh'
    .split(',')
    .map((pair) => pair.split(' ') as [string, string]),
]);

function said(tokens: readonly Token[], at: number, spelling: string, next: number): UnitFound | undefined {
  const unit = readUnit(spelling);
  const [first, last] = [tokens[at], tokens[next - 1]];
  if (!unit || !first || !last) return undefined;
  return { unit: { spelling, unit, kind: kindOf(spelling, unit.canonical), start: first.start, end: last.end }, next };
}

function kindOf(spelling: string, canonical: string): UnitKind {
  if (canonical === '°C') return 'temperature';
  if (canonical === 'K') return 'kelvin';
  if (canonical === 's') return 'time';
  return spelling === '%' || spelling === '‰' || spelling === 'ppm' ? 'percent' : 'other';
}
