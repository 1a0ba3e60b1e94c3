/** How often the 95 % intervals of the figures hold the truth. */
import { type Figure, isPresent, type PresentFigure } from '../../src/figures/figure.ts';
import { interval95 } from '../../src/quantities/uncertainty.ts';
import { type Errors, plan } from './plan.ts';
import { type Known, soakOf } from './soak.ts';
import { TRUTHS } from './truths.ts';

export interface Held {
  /** Intervals that held the truth, of all the figures that were present. */
  held: number;
  of: number;
}
export type Tally = Record<string, Held>;

/** Figures of several temperature channels count for each. */
const CHANNELS = [
  ['', 'die'],
  ['.board', 'board'],
] as const;

/** Counts over the runs with these seeds. */
export function tally(seeds: readonly number[], errors: Errors): Tally {
  const counts: Tally = Object.fromEntries(Object.keys(TRUTHS).map((name) => [name, { held: 0, of: 0 }]));
  for (const seed of seeds) {
    const { known, figures } = soakOf(plan(seed, errors));
    for (const [name, { held, of }] of Object.entries(oneRun(known, figures))) {
      counts[name]!.held += held;
      counts[name]!.of += of;
    }
  }
  return counts;
}

function oneRun(known: Known, figures: ReadonlyMap<string, Figure>): Tally {
  const counts: Tally = {};
  for (const [name, truth] of Object.entries(TRUTHS)) {
    const found = CHANNELS.flatMap(([suffix, part]) => {
      const figure = figures.get(name + suffix);
      const value = truth.of(known, part);
      return figure && isPresent(figure) && value !== null ? [holds(figure, value)] : [];
    });
    counts[name] = { held: found.filter(Boolean).length, of: found.length };
  }
  return counts;
}

/** Whether the figure's 95 % interval holds the truth, rounding of the last digits aside. */
export function holds({ quantity, interval }: PresentFigure, truth: number): boolean {
  const [low, high] = interval ?? interval95(quantity)!;
  const slack = 1e-9 * Math.abs(truth);
  return low - slack <= truth && truth <= high + slack;
}

/** The sum of two counts. */
export function joined(a: Tally, b: Tally): Tally {
  const names = [...new Set([...Object.keys(a), ...Object.keys(b)])];
  const count = (tally: Tally, name: string, key: keyof Held) => tally[name]?.[key] ?? 0;
  return Object.fromEntries(
    names.map((name) => [
      name,
      { held: count(a, name, 'held') + count(b, name, 'held'), of: count(a, name, 'of') + count(b, name, 'of') },
    ]),
  );
}
