/** How often the 95 % intervals of the figures hold the truth. */
import { type Asked, count, emptyTally, type Tally } from './asked.ts';
import { BENCH_TRUTHS, tallyBenches } from './bench-truths.ts';
import { heldAt } from './holds.ts';
import { PAIRS, type Soaked, tallyPair } from './pairs.ts';
import { type Errors, pairOf, plan } from './plan.ts';
import { REPEATED, tallyRepeats } from './repeated.ts';
import { soakOf } from './soak.ts';
import { SPOTS, tallySpots } from './spots.ts';
import { TRUTHS } from './truths.ts';

/** All figures that are asked, in the order of the table. */
export const ASKED: Readonly<Record<string, Asked>> = { ...TRUTHS, ...BENCH_TRUTHS, ...PAIRS, ...SPOTS, ...REPEATED };

/** Figures of several temperature channels count for each. */
const CHANNELS = [
  ['', 'die'],
  ['.board', 'board'],
] as const;

/** Counts over the runs with these seeds, in ascending order; runs of one pair that are both among them are compared. */
export function tally(seeds: readonly number[], errors: Errors): Tally {
  return [soaks(seeds, errors), tallyBenches(seeds, errors), tallySpots(seeds, errors), tallyRepeats(seeds)].reduce(joined);
}

function soaks(seeds: readonly number[], errors: Errors): Tally {
  let counts = emptyTally(Object.keys({ ...TRUTHS, ...PAIRS }));
  let before: Soaked | null = null;
  for (const seed of seeds) {
    const soaked = { seed, ...soakOf(plan(seed, errors)) };
    counts = joined(counts, oneRun(soaked));
    if (before && pairOf(before.seed) === pairOf(seed)) counts = joined(counts, tallyPair(before, soaked));
    before = soaked;
  }
  return counts;
}

function oneRun({ known, figures }: Soaked): Tally {
  const counts = emptyTally(Object.keys(TRUTHS));
  for (const [name, truth] of Object.entries(TRUTHS))
    for (const [suffix, part] of CHANNELS) count(counts, name, heldAt(figures, name + suffix, truth.of(known, part)));
  return counts;
}

/** The sum of two counts. */
export function joined(a: Tally, b: Tally): Tally {
  const names = [...new Set([...Object.keys(a), ...Object.keys(b)])];
  const sum = (name: string, key: 'held' | 'of') => (a[name]?.[key] ?? 0) + (b[name]?.[key] ?? 0);
  return Object.fromEntries(names.map((name) => [name, { held: sum(name, 'held'), of: sum(name, 'of') }]));
}
