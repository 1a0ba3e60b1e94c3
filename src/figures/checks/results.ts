/** The checks, carried out: plain values for the command and the pages. */

import { agrees, type Check, type CheckedValue, digitsReached, digitsRequired } from './check.ts';
import { CHECKS } from './checks.ts';

export interface CheckRow {
  readonly what: string;
  readonly published: string;
  /** To 15 significant digits. */
  readonly ours: string;
  /** Agreeing digits, to one decimal. */
  readonly reached: string;
  readonly required: string;
  readonly demand: string;
  readonly agrees: boolean;
}

export interface CheckTable {
  readonly id: string;
  readonly title: string;
  readonly source: string;
  /** The fewest digits that any row reached. */
  readonly fewest: string;
  readonly rows: readonly CheckRow[];
}

/** Carries out every check; a fifth of a second. */
export function checkTables(): readonly CheckTable[] {
  return CHECKS.map(tableOf);
}

function tableOf({ id, title, source, compare }: Check): CheckTable {
  const compared = compare();
  const fewest = Math.min(...compared.map(digitsReached));
  return { id, title, source, fewest: fewest.toFixed(1), rows: compared.map(rowOf) };
}

function rowOf(compared: CheckedValue): CheckRow {
  const { what, printed, ours, demand } = compared;
  return {
    what,
    published: printed,
    ours: String(Number(ours.toPrecision(15))),
    reached: digitsReached(compared).toFixed(1),
    required: digitsRequired(compared).toFixed(1),
    demand,
    agrees: agrees(compared),
  };
}
