/** What a column probably is: quantity and unit, each with the evidence. Ranges of values are never evidence, only a suggestion. */
import { readUnit } from '../../quantities/units.ts';
import { headerUnit } from '../cells/header-units.ts';
import type { QuantityKind } from '../log.ts';
import { fitsQuantity, unitsInFile } from './column-units.ts';

export interface Proposal {
  readonly quantity: QuantityKind;
  readonly quantityWhy: string;
  /** Spelling of the unit; absent where the file states none. */
  readonly unit?: string;
  readonly unitWhy: string;
  /** A unit that the range of values suggests, where none is stated. */
  readonly suggestion?: string;
}

export interface ColumnEvidence {
  readonly name: string;
  readonly unitsLine?: string;
  readonly suffix?: string;
  readonly min: number;
  readonly max: number;
  /** Cells that are words of flags rather than readings: hexadecimal, yes and no. */
  readonly flags: boolean;
}

/** Words in names, most telling first. */
const NAMES: readonly (readonly [RegExp, QuantityKind])[] = [
  [/throttl|under_?volt/i, 'throttle_flag'],
  // German loggers: Raum, Umgebung, Zimmer; an Innenraum is the inside of a case.
  [/ambient|\bamb\b|_amb$|^amb_|room|(?<!\p{L})raum|umgebung|zimmer/iu, 'ambient'],
  [/temp|therm|celsius|\bt_?(?:cpu|soc|core|ssd|board|case)\b/i, 'temperature'],
  [/clock|clk|freq|hz\b/i, 'clock'],
  [/volt|vcore|vbus|\bv_?in\b/i, 'voltage'],
  [/charge_?level|state_?of_?charge|\bsoc_?%|battery_?(?:level|percent)/i, 'charge_level'],
  [/energy|watt_?hours?|\bm?k?wh\b/i, 'energy'],
  [/power|watt/i, 'power'],
  [/current|amp(?:s|ere)?|\bi_?in\b/i, 'current'],
  [/sound|noise|loudness|\bspl\b|\bdba?\b/i, 'sound_level'],
  [/fan|rpm/i, 'fan'],
  [/util|load|usage|busy/i, 'utilisation'],
];

/** Quantity by canonical unit, where the name says nothing. */
const BY_UNIT: Readonly<Record<string, QuantityKind>> = {
  '°C': 'temperature',
  Hz: 'clock',
  A: 'current',
  V: 'voltage',
  W: 'power',
  J: 'energy',
  rpm: 'fan',
  dB: 'sound_level',
};

/** Proposes what a column of numbers is. */
export function propose(column: ColumnEvidence): Proposal {
  const stated = statedUnit(column);
  const named = NAMES.find(([pattern]) => pattern.test(column.name))?.[1];
  const byUnit = stated ? BY_UNIT[readUnit(stated.spelling)?.canonical ?? ''] : undefined;
  if (column.flags || (named === 'throttle_flag' && !byUnit)) {
    return {
      quantity: 'throttle_flag',
      quantityWhy: named ? 'by its name' : 'its cells are words of flags',
      unitWhy: 'a flag needs no unit',
    };
  }
  const quantity = settle(named, byUnit);
  const quantityWhy = whyQuantity(quantity, named, byUnit);
  const [found] = unitsInFile({ quantity, ...column }).filter((unit) => fitsQuantity(unit.unit, quantity));
  if (found) return { quantity, quantityWhy, unit: found.spelling, unitWhy: `stands ${found.how}` };
  const suggestion = suggestUnit(quantity, column);
  return { quantity, quantityWhy, unitWhy: 'stated nowhere in the file', ...(suggestion ? { suggestion } : {}) };
}

function whyQuantity(quantity: QuantityKind, named: QuantityKind | undefined, byUnit: QuantityKind | undefined): string {
  if (quantity === named) return byUnit === undefined ? 'by its name' : 'by its name and unit';
  return quantity === byUnit ? 'by its unit' : 'neither name nor unit says what it is';
}

/** The unit outweighs the name: `fan power [W]` is a power. An ambient temperature is both. */
function settle(named: QuantityKind | undefined, byUnit: QuantityKind | undefined): QuantityKind {
  if (byUnit === 'temperature' && named === 'ambient') return 'ambient';
  return byUnit ?? named ?? 'other';
}

/** A unit told without knowing the quantity: header in brackets, units line, cells; then what looks like one in the name. */
function statedUnit(column: ColumnEvidence): { readonly spelling: string } | null {
  const [sure] = unitsInFile({ quantity: 'other', ...column });
  if (sure && BY_UNIT[sure.unit.canonical]) return sure;
  const found = headerUnit(column.name, undefined, (spelling) => BY_UNIT[readUnit(spelling)?.canonical ?? ''] !== undefined);
  return found;
}

function suggestUnit(quantity: QuantityKind, { min, max }: ColumnEvidence): string | undefined {
  const within = (low: number, high: number) => min >= low && max <= high;
  if (quantity === 'temperature' || quantity === 'ambient')
    return within(-40, 130) ? '°C' : within(-40_000, 130_000) && max > 1000 ? 'm°C' : undefined;
  if (quantity === 'clock') return max > 1e8 ? 'Hz' : max > 1e5 ? 'kHz' : max > 50 ? 'MHz' : 'GHz';
  if (quantity === 'voltage') return max > 250 ? 'mV' : 'V';
  if (quantity === 'current') return max > 20 ? 'mA' : 'A';
  if (quantity === 'power') return max > 1000 ? 'mW' : 'W';
  if (quantity === 'utilisation' || quantity === 'charge_level') return max > 1.01 ? '%' : '1';
  return quantity === 'fan' && max > 100 ? 'rpm' : undefined;
}
