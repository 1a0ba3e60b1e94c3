/** How often the 95 % intervals of figures hold the truth: the table that `npm run accuracy -- --coverage` makes, and what it says. */
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

const EXTREME =
  'The interval makes room for what may have happened between two readings and for what noise lifts the largest of many; mostly less than that happened.';
const COUNTED = 'The interval reaches over the whole step of the log in which a change fell, so that it seldom misses.';

const GOVERNED =
  'Under a governor the clock steps down and then swings in cycles of minutes. Half a cycle later it is off to the other side, which would make its mean better known; the interval takes no credit for that (the sum of autocorrelations ends where it first falls to zero), so that it is wider than need be.';

/** Why a figure's intervals hold the truth more or less often than the band allows (k = 2), for readers. */
export const WHY: Readonly<Record<string, string>> = {
  peak_temperature: EXTREME,
  throttle_headroom: EXTREME,
  lowest_clock: EXTREME,
  peak_power: EXTREME,
  held_at_limit:
    'Readings within twice their scatter of the threshold may belong to either side, and the interval has room for all of them.',
  mean_clock: GOVERNED,
  clock_delta: GOVERNED,
  rise_delta:
    'Errors of the instruments cancel, so that the scatter of two means is left; few independent readings tell how large it is, and the interval is made wide for that.',
  time_below_setting: COUNTED,
  time_to_throttle: COUNTED,
  throttle_events:
    'A count of what the log shows. A governor that keeps its flag up for seconds was never missed; one that is quicker than the log would be.',
};

const LIMITED =
  'Where several errors within limits meet, all but the largest are taken as normal, so that the interval holds the truth more often.';

/** Why a row lies outside the band, in sentences; '' where it does not. */
export function whyOutside(name: string): string {
  const row = COVERAGE.figures[name];
  const limited = row && inBand(row.expanded) && row.limits.held / row.limits.of > BAND[1];
  return WHY[name] ?? (limited ? LIMITED : '');
}
