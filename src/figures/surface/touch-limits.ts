/**
 * Touch temperature limits of class TS1 of IEC 62368-1 (Table 38 of the 2014 and later editions), °C, as measured at an ambient
 * of 25 °C. Metal and plastic as several public sources restate the table;
 * glass and wood from memory.
 */
import type { MaterialClass } from './material.ts';

export const CONTACTS = ['held', 'held briefly', 'touched briefly', 'not touched'] as const;
export type Contact = (typeof CONTACTS)[number];

export const REFERENCE_AMBIENT = 25;

/** How long each contact lasts, for readers. */
export const CONTACT_TIMES: Readonly<Record<Contact, string>> = {
  held: 'over 1 min',
  'held briefly': '10 s to 1 min',
  'touched briefly': '1 s to 10 s',
  'not touched': 'under 1 s',
};

const LIMITS: Readonly<Record<Contact, Readonly<Record<MaterialClass, number>>>> = {
  held: { metal: 48, glass: 48, plastic: 48, wood: 48 },
  'held briefly': { metal: 51, glass: 56, plastic: 60, wood: 60 },
  'touched briefly': { metal: 60, glass: 71, plastic: 77, wood: 107 },
  'not touched': { metal: 70, glass: 85, plastic: 94, wood: 140 },
};

export interface TouchLimit {
  /** °C */
  readonly limit: number;
  readonly material: MaterialClass;
  /** True for the columns that were not seen in a source. */
  readonly fromMemory: boolean;
}

/** The limit of a contact and of the materials of a part: of several the lowest. Undefined without a material that the table has. */
export function touchLimit(contact: Contact, materials: readonly MaterialClass[]): TouchLimit | undefined {
  const limits = materials.map((material) => ({
    limit: LIMITS[contact][material],
    material,
    fromMemory: material === 'glass' || material === 'wood',
  }));
  return limits.reduce<TouchLimit | undefined>(
    (low, each) => (low === undefined || each.limit < low.limit ? each : low),
    undefined,
  );
}

/** Longest contact that the table has a row for, s. */
const LONGEST = 8 * 3600;

/** The contact that a time falls under; a time on the border between two rows is of the longer one. Undefined beyond 8 h. */
export function contactOfTime(seconds: number): Contact | undefined {
  if (seconds > LONGEST) return undefined;
  if (seconds > 60) return 'held';
  if (seconds >= 10) return 'held briefly';
  return seconds >= 1 ? 'touched briefly' : 'not touched';
}
