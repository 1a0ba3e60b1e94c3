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

/** A share that chance brings about more seldom than this is no chance: of a table of some eighty shares, once in six tables. */
const RARE = 0.002;

/**
 * Whether a share lies outside the band, and so far that chance does not account for it. Channels of a run are of one run and the runs of a
 * pair of one bench, so that no more cases count as independent than there are `pairs`.
 */
export function surelyOutside(held: Held, pairs = COVERAGE.runs / 2): boolean {
  if (held.of === 0 || inBand(held)) return false;
  const of = Math.min(held.of, Math.floor(pairs));
  const missed = Math.round(of * (1 - held.held / held.of));
  return Math.min(atMost(missed, of), 1 - atMost(missed - 1, of)) < RARE;
}

/** Probability that at most so many of intervals of 95 % miss: the sum of a binomial. */
function atMost(missed: number, of: number): number {
  let [sum, term] = [0, 0.95 ** of];
  for (let k = 0; k <= missed; k++) {
    sum += term;
    term *= ((of - k) / (k + 1)) * (0.05 / 0.95);
  }
  return sum;
}

const LIMITED =
  'Where several errors within limits meet, all but the largest are taken as normal, so that the interval holds the truth more often.';
const FEW = 'Two runs share a bench, so that few cases are independent: chance alone may take such a count as far from 95 %.';

/** Why a row lies outside the band, in sentences; '' where it does not. */
export function whyOutside(name: string): string {
  const row = COVERAGE.figures[name];
  const own = definitionOf(name)?.outside;
  if (own !== undefined || !row || (inBand(row.expanded) && inBand(row.limits))) return own ?? '';
  if (surelyOutside(row.expanded)) return '';
  if (!surelyOutside(row.limits)) return FEW;
  return row.limits.held / row.limits.of > BAND[1] ? LIMITED : '';
}
