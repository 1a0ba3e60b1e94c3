/** What a column probably is: quantity and unit, each with the evidence. Ranges of values are never evidence, only a suggestion. */
import { columnUnit, headerUnit } from '../cells/header-units.ts';
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
  /** Cells that are words of bits rather than readings. */
  readonly flags: boolean;
}

/** Words in names, most telling first. */
const NAMES: readonly (readonly [RegExp, QuantityKind])[] = [
  [/throttl|under_?volt|(?<!\p{L})thr(?:ttl|tl|ot)?(?!\p{L})/iu, 'throttle_flag'],
  // German loggers: Raum, Umgebung, Zimmer; an Innenraum is the inside of a case.
  [/ambient|\bamb\b|_amb$|^amb_|room|(?<!\p{L})raum|umgebung|zimmer/iu, 'ambient'],
  [/(?<!at|con)temp(?!late|t)|(?<!\p{L})tmp|therm|celsius|\bt_?(?:cpu|soc|core|ssd|board|case)\b/iu, 'temperature'],
  [/clock|clk|freq|takt|hz\b/i, 'clock'],
  [/volt|spannung|vcore|vbus|\bv_?in\b|(?<!\p{L})(?:vlt|vdd|vcc)(?!\p{L})/iu, 'voltage'],
  [/charge_?level|state_?of_?charge|\bsoc_?%|battery_?(?:level|percent)/i, 'charge_level'],
  [/energy|watt_?hours?|\bm?k?wh\b/i, 'energy'],
  [/power|watt|leistung|(?<!\p{L})pwr(?!\p{L})/iu, 'power'],
  // "samples" holds "amp": the word must stand alone.
  [/current|(?<!\p{L})(?:milli)?(?:cur|curr|amps?|amperes?)(?!\p{L})|\bi_?in\b/iu, 'current'],
  [/sound|noise|loudness|\bspl\b|\bdba?\b/i, 'sound_level'],
  [/(?<!\p{L})fans?(?!\p{L})|rpm|drehzahl/iu, 'fan'],
  [/util|(?<!up|down|pay|work|over)load|usage|busy/i, 'utilisation'],
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

/** Whether a name says that a column tells of throttling. */
export function saysThrottling(name: string): boolean {
  return NAMES[0]![0].test(name);
}

/** Proposes what a column of numbers is. */
export function propose(column: ColumnEvidence): Proposal {
  const stated = statedUnit(column);
  if (DIFFERENCE.test(column.name))
    return { quantity: 'other', quantityWhy: DISTANCE, unitWhy: 'a difference has no scale of its own' };
  const named = NAMES.find(([pattern]) => pattern.test(column.name))?.[1];
  const byUnit = stated ? quantityOfUnit(stated.spelling, column.name) : undefined;
  if (column.flags || (named === 'throttle_flag' && !byUnit)) {
    return {
      quantity: 'throttle_flag',
      quantityWhy: named ? 'by its name' : 'its cells are words of flags',
      unitWhy: 'a flag needs no unit',
    };
  }
  const quantity = settle(named, byUnit, column);
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

/** `distance to the limit [°C]` is so many kelvins, and no temperature of anything. */
const DIFFERENCE = /distance|headroom|margin|(?<!\p{L})(?:delta|diff(?:erence)?|offset)(?!\p{L})|abstand/iu;
const DISTANCE = 'its name says a difference, not a reading on a scale';

/** A rate is no clock, though both are in hertz. */
function quantityOfUnit(spelling: string, name: string): QuantityKind | undefined {
  const quantity = BY_UNIT[columnUnit(spelling)?.canonical ?? ''];
  return quantity === 'clock' && /frame|refresh|(?<!\p{L})rate|sampl/iu.test(name) ? undefined : quantity;
}

/** The unit outweighs the name: `fan power [W]` is a power, `memory usage [MB]` no utilisation. An ambient temperature is both. */
function settle(named: QuantityKind | undefined, byUnit: QuantityKind | undefined, column: ColumnEvidence): QuantityKind {
  if (named !== undefined && PHASED.has(named) && byUnit !== named && isLetter(column)) return named;
  if (byUnit === 'temperature' && named === 'ambient') return 'ambient';
  if (byUnit !== undefined || named === undefined) return byUnit ?? 'other';
  if (unitsInFile({ quantity: named, ...column }).some(({ unit }) => fitsQuantity(unit, named))) return named;
  const [sure] = unitsInFile({ quantity: 'other', ...column });
  return sure === undefined || fitsQuantity(sure.unit, named) ? named : 'other';
}

const PHASED: ReadonlySet<QuantityKind> = new Set(['voltage', 'current', 'power', 'energy', 'clock']);

/** `volt_a` and `current_c` are phases a and c of something: one letter behind a name is a weak unit, and the name outweighs it. */
function isLetter(column: ColumnEvidence): boolean {
  const [sure] = unitsInFile({ quantity: 'other', ...column });
  return !(sure && BY_UNIT[sure.unit.canonical]) && /[_.-][A-Za-z]$/.test(column.name);
}

/** A unit told without knowing the quantity: header in brackets, units line, cells; then what looks like one in the name. */
function statedUnit(column: ColumnEvidence): { readonly spelling: string } | null {
  const [sure] = unitsInFile({ quantity: 'other', ...column });
  if (sure && BY_UNIT[sure.unit.canonical]) return sure;
  const found = headerUnit(column.name, undefined, (spelling) => BY_UNIT[columnUnit(spelling)?.canonical ?? ''] !== undefined);
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
