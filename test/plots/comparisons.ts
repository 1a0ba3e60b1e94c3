/** Invented comparisons for the tests of plots, by the project's own comparison of runs. */
import type { Figure } from '../../src/figures/figure.ts';
import type { ComparedSubject } from '../../src/plots/drawing/drawn.ts';
import { compareRuns, figure, part, type Sketch } from '../figures/comparison/runs.ts';

/** The first run is the reference. */
export function comparison(runs: Readonly<Record<string, Sketch>>): ComparedSubject {
  const names = Object.keys(runs);
  return { reference: names[0]!, runs: names.map((alias) => ({ alias })), figures: compareRuns(runs) };
}

/** Load power and rise at steady state with standard uncertainties of their own. */
export function spent(watts: number | null, kelvin: number | null, u = 0.1): Readonly<Record<string, Figure>> {
  const power = { value: watts ?? 0, unit: 'W', parts: [part(`power ${watts}`, u)] };
  const rise = { value: kelvin ?? 0, unit: 'K', parts: [part(`rise ${kelvin}`, u)] };
  return {
    ...(watts === null ? {} : { load_power: figure('load_power', power, { at: 'board input' }) }),
    ...(kelvin === null ? {} : { temperature_rise: figure('temperature_rise', rise) }),
  };
}

/** Runs of one test whose clocks and scores are multiples of the first run's; scores with a standard uncertainty of 1 %. */
export function steps(ratios: Readonly<Record<string, readonly [clock: number, speed: number]>>): ComparedSubject {
  const sketch = ([clock, speed]: readonly [number, number]): Sketch => ({
    clock: 2e9 * clock,
    setting: 2e9 * clock,
    scores: { mix: [100 * speed, speed, null] },
  });
  return comparison(Object.fromEntries(Object.entries(ratios).map(([alias, each]) => [alias, sketch(each)])));
}
