/** Families of coverage: what `npm run accuracy -- --coverage` found in each, and how it is judged. */
import { BAND } from './coverage.ts';
import table from './families.json' with { type: 'json' };

/** What was counted of one question in one cell. */
export interface FamilyRow {
  readonly cell: string;
  readonly asked: string;
  /** Name in the catalogue; null where no figure was asked, or none was ever there. */
  readonly figure: string | null;
  readonly trials: number;
  /** Of an interval: how often the figure was present, and how often the interval held the truth. */
  readonly present?: number;
  readonly held?: number;
  /** Median half width of the intervals, in `unit`, and how many times that it is which one who knew the noise would give. */
  readonly half?: number;
  readonly unit?: string;
  readonly ratio?: number;
  /** Bounds that absent figures gave, and how many of them were false. */
  readonly bounds?: number;
  readonly falseBounds?: number;
  /** Of a figure that must be absent: how often it was, and for the cause that there is. */
  readonly absent?: number;
  readonly caused?: number;
  /** Pairs of identical runs, and how many of them were told apart. */
  readonly pairs?: number;
  readonly apart?: number;
  /** Of a saying: how often it was said, and in which share it must be at least and may be at most. */
  readonly said?: number;
  readonly atLeast?: number;
  readonly atMost?: number;
  /** Why it lies outside the band, for readers; '' where nothing is to be said. */
  readonly why: string;
  /** No log can know better: the interval may hold less often than 90 %. */
  readonly beyond?: boolean;
}

export interface FamilyTable {
  readonly title: string;
  readonly words: string;
  readonly trials: number;
  readonly rows: readonly FamilyRow[];
}

/** By name, in alphabetical order. */
export const FAMILIES: Readonly<Record<string, FamilyTable>> = table;

/** Nothing that is given may hold less often than this, unless no log can know better. */
const LEAST = 0.9;
const MOST_FALSE_BOUNDS = 0.05;
const MOST_APART = 0.05;
/** What chance adds to a count of `of`: this many standard deviations of a binomial, 1 in 1000 on one side. */
const CHANCE = 3.1;

/** Whether `count` of `of` lies above `most`, or below `least`, by more than chance does. */
function above(count: number, of: number, most: number): boolean {
  return count > of * most + CHANCE * Math.sqrt(of * most * (1 - most)) + 1e-9;
}

function below(count: number, of: number, least: number): boolean {
  return above(of - count, of, 1 - least);
}

/** What is wrong with a row, in words; empty where nothing is. */
export function faultsOf(row: FamilyRow): readonly string[] {
  const { present = 0, held = 0, bounds = 0, falseBounds = 0, pairs = 0, apart = 0, trials, said, absent, caused = 0 } = row;
  const faults: string[] = [];
  if (!row.beyond && below(held, present, LEAST)) faults.push('the interval bluffs');
  if (row.why === '' && below(held, present, BAND[0])) faults.push('the interval is too narrow, and no reason is given');
  if (row.why === '' && above(held, present, BAND[1])) faults.push('the interval is too wide, and no reason is given');
  if (above(falseBounds, bounds, MOST_FALSE_BOUNDS)) faults.push('bounds are false');
  if (!row.beyond && above(apart, pairs, MOST_APART)) faults.push('identical runs are told apart');
  if (absent !== undefined && absent < trials) faults.push('a figure is given that must be absent');
  if (absent !== undefined && caused < absent) faults.push('the reason does not name the cause');
  if (said !== undefined && below(said, trials, row.atLeast ?? 0)) faults.push('it is said too seldom');
  if (said !== undefined && above(said, trials, row.atMost ?? 1)) faults.push('it is said too often');
  return faults;
}
