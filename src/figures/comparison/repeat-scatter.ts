/** Repeats of one test in two runs scatter about alike: a run with few of them learns from those of the others. */
import type { Part } from '../../quantities/quantity.ts';
import { type Figure, isPresent, type PresentFigure } from '../figure.ts';
import { quantityOf } from '../sources.ts';
import { type BetweenRuns, isOwn } from './between-runs.ts';
import type { ComparedRun, ComparedSetting } from './compared.ts';

interface Scored {
  readonly run: string;
  readonly figure: PresentFigure;
  readonly n: number;
  /** Sample standard deviation of the repeats as a share of their mean. */
  readonly spread: number;
}

/**
 * Scores whose repeats scatter less than those of all compared runs together, each with the pooled scatter in its place: two repeats
 * that happen to agree say little, and the interval of their ratio to ten others held in 89 of 100 cases. The spread of a run's own repeats stays
 * where it is the larger one, so that a test that really scatters more in one setting is not made to look steady. Only where the spread
 * between runs is unknown: where it is known it takes the place of both.
 */
export function repeatScatter(
  comparison: string,
  settings: readonly ComparedSetting[],
  spreads: ReadonlyMap<string, BetweenRuns>,
): ReadonlyMap<Figure, Figure> {
  const runs = settings.flatMap((setting) => setting.runs);
  const addresses = [...spreads]
    .filter(([address, { dof }]) => address.startsWith('score.') && dof === 0)
    .map(([address]) => address);
  return new Map(addresses.flatMap((address) => pooledAt(comparison, address, runs)));
}

function pooledAt(comparison: string, address: string, runs: readonly ComparedRun[]): [Figure, Figure][] {
  const scored = runs.flatMap((run) => scoredIn(run, address));
  const dof = scored.reduce((sum, { n }) => sum + n - 1, 0);
  const pooled = Math.sqrt(scored.reduce((sum, { n, spread }) => sum + (n - 1) * spread * spread, 0) / dof);
  return scored.flatMap(({ run, figure, n, spread }, place): [Figure, Figure][] => {
    const { value, unit, parts, step = 0, repeatabilityOnly } = figure.quantity;
    if (parts === null || spread >= pooled) return [];
    const id = `comparison:${comparison}/${address}/repeats/${place + 1}`;
    const part: Part = {
      source: { id, title: `scatter of the repeats of ${String(figure.of?.title)}, pooled over the runs`, dof },
      share: (pooled * value) / Math.sqrt(n),
    };
    const others = parts.filter(({ source }) => !isOwn(source.id, run));
    return [[figure, { ...figure, quantity: quantityOf(value, unit, [...others, part], { stated: !repeatabilityOnly, step }) }]];
  });
}

function scoredIn({ run, figures }: ComparedRun, address: string): Scored[] {
  const figure = figures.get(address);
  if (!figure || !isPresent(figure) || !(figure.quantity.value > 0)) return [];
  const { n, spread } = figure.of ?? {};
  if (typeof n !== 'number' || typeof spread !== 'number' || n < 2) return [];
  return [{ run, figure, n, spread: spread / figure.quantity.value }];
}
