/** Which unit a column is in: declared, or said by header, units line or cells; never by the range of its values. */
import { type ReadingKind, readUnit, type Unit } from '../../quantities/units.ts';
import { headerUnit, unitSpelling } from '../cells/header-units.ts';
import type { QuantityKind } from '../log.ts';

/** Canonical units that a quantity can have; null = any. */
const CANONICAL: Readonly<Record<QuantityKind, readonly string[] | null>> = {
  temperature: ['°C'],
  ambient: ['°C'],
  clock: ['Hz'],
  current: ['A'],
  voltage: ['V'],
  power: ['W'],
  energy: ['J'],
  throttle_flag: ['1'],
  fan: ['rpm', 'Hz', '1'],
  sound_level: ['dB'],
  utilisation: ['1'],
  charge_level: ['1'],
  other: null,
};

/** Where a unit was found. */
export type UnitOrigin = 'declared' | 'header' | 'units-line' | 'cells' | 'name';

export interface FoundUnit {
  readonly unit: Unit;
  readonly origin: UnitOrigin;
  /** As the author or the file has it. */
  readonly spelling: string;
  /** How it was told, for the reader. */
  readonly how: string;
}

/** What a column offers as evidence of its unit. */
export interface UnitEvidence {
  readonly quantity: QuantityKind;
  /** Name as in the header, without the key's numbering. */
  readonly name: string;
  readonly unitsLine?: string;
  /** What follows the numbers in most cells. */
  readonly suffix?: string;
}

function readingKind(quantity: QuantityKind): ReadingKind | undefined {
  return quantity === 'temperature' || quantity === 'ambient' ? 'temperature' : undefined;
}

/** Whether a quantity can be given in a unit. */
export function fitsQuantity(unit: Unit, quantity: QuantityKind): boolean {
  const allowed = CANONICAL[quantity];
  return allowed === null || allowed.includes(unit.canonical);
}

/** Canonical units of a quantity, for messages. */
export function canonicalUnits(quantity: QuantityKind): readonly string[] {
  return CANONICAL[quantity] ?? [];
}

/** Reads a unit as written in header, cell or front matter. */
export function readSpelling(text: string, quantity: QuantityKind): Unit | undefined {
  const kind = readingKind(quantity);
  const spelling = unitSpelling(text, kind);
  return spelling === undefined ? undefined : readUnit(spelling, kind);
}

/** Units that the file states for a column, the surest first. One that a quantity cannot have is kept when it is sure: that is a conflict. */
export function unitsInFile(evidence: UnitEvidence): FoundUnit[] {
  const { quantity } = evidence;
  const found: FoundUnit[] = [];
  const kind = readingKind(quantity);
  const fits = (spelling: string) => {
    const unit = readUnit(spelling, kind);
    return unit !== undefined && quantity !== 'other' && fitsQuantity(unit, quantity);
  };
  const inHeader = headerUnit(evidence.name, kind, fits);
  const add = (text: string, origin: UnitOrigin, how: string) => {
    const unit = readSpelling(text, quantity);
    if (unit && (fitsQuantity(unit, quantity) || isElectricalOrThermal(unit))) found.push({ unit, origin, spelling: text, how });
  };
  if (inHeader?.sure) add(inHeader.spelling, 'header', `${inHeader.form} in the header`);
  if (evidence.unitsLine !== undefined)
    add(evidence.unitsLine.replace(/^[[(]\s*|\s*[\])]$/g, ''), 'units-line', 'in the line of units');
  if (evidence.suffix !== undefined) add(evidence.suffix, 'cells', 'in the cells');
  if (inHeader && !inHeader.sure) add(inHeader.spelling, 'name', `${inHeader.form} of the name`);
  return found;
}

/** Units that are no words: `(min)`, `(in)` and `(1)` in a name are more often not units. */
function isElectricalOrThermal(unit: Unit): boolean {
  return ['°C', 'Hz', 'A', 'V', 'W', 'J'].includes(unit.canonical);
}

/** Whether two units turn readings into the same values. */
export function sameUnit(a: Unit, b: Unit): boolean {
  return a.canonical === b.canonical && a.factor === b.factor && a.offset === b.offset;
}
