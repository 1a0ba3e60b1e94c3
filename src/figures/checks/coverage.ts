/** How often the 95 % intervals of figures hold the truth: the table that `npm run accuracy -- --coverage` makes, and what it says. */
import { definitionOf } from '../catalogue.ts';
import table from './coverage.json' with { type: 'json' };

/** Intervals that held the truth, of all that there were. */
export interface Held {
  readonly held: number;
  readonly of: number;
}

export interface CoverageRow {
  /** How its interval is made: extremes, times and counts otherwise than means and fits. */
  readonly kind: string;
  /** What the interval was asked to hold, in words. */
  readonly truth: string;
  /** Instruments whose errors lie anywhere within stated limits. */
  readonly limits: Held;
  /** Instruments whose errors are normal, stated as expanded uncertainties (k = 2). */
  readonly expanded: Held;
}

export interface CoverageTable {
  /** Simulated runs of each kind of instrument. */
  readonly runs: number;
  /** Seed of the first run; each next one has the next seed. */
  readonly seed: number;
  readonly figures: Readonly<Record<string, CoverageRow>>;
}

export const COVERAGE: CoverageTable = table;

/** What an interval of 95 % may differ from 95 %. */
export const BAND = [0.93, 0.97] as const;

/** The share in per cent with one decimal, or a dash where no figure was present. */
export function shareOf({ held, of }: Held): string {
  return of === 0 ? '–' : `${((100 * held) / of).toFixed(1)} %`;
}

/** Whether a share lies in the band. */
export function inBand({ held, of }: Held): boolean {
  return of > 0 && held / of >= BAND[0] && held / of <= BAND[1];
}

/** Below the band: the interval promises too much. */
export function tooNarrow({ held, of }: Held): boolean {
  return of > 0 && held / of < BAND[0];
}

const LIMITED =
  'Where several errors within limits meet, all but the largest are taken as normal, so that the interval holds the truth more often.';

/** Why a row lies outside the band, in sentences; '' where it does not. */
export function whyOutside(name: string): string {
  const row = COVERAGE.figures[name];
  const limited = row && inBand(row.expanded) && row.limits.held / row.limits.of > BAND[1];
  return definitionOf(name)?.outside ?? (limited ? LIMITED : '');
}
