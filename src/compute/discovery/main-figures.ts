/** The figures by which runs are told apart in a list. */
import { definitionOf, figuresIn } from '../../figures/catalogue.ts';
import { isPresent } from '../../figures/figure.ts';
import { printQuantity } from '../../quantities/print.ts';
import type { ComputedRun } from '../contents/site-contents.ts';
import type { RunsCell, RunsColumn } from '../models/discovery.ts';

/** One main figure of every run: its ranks for sorting, and what each run's cell prints. */
export interface MainFigure {
  readonly column: RunsColumn;
  /** Parallel to the runs. */
  readonly cells: readonly RunsCell[];
}

/** The main figures that at least one of the runs has. */
export function mainFigures(runs: readonly ComputedRun[]): MainFigure[] {
  return figuresIn('runs')
    .filter((name) => runs.some((run) => canonicalValue(run, name) !== null))
    .map((name) => {
      const places = new Set(runs.map((run) => placeOf(run, name)).filter((place) => place !== ''));
      return {
        column: { name, label: definitionOf(name)!.label, ranks: ranksOf(runs.map((run) => canonicalValue(run, name))) },
        cells: runs.map((run) => cellOf(run, name, places.size > 1)),
      };
    });
}

/** Rank of each number, lowest 0 and without gaps; equal numbers have equal ranks, null has none. */
export function ranksOf(values: readonly (number | null)[]): (number | null)[] {
  const known = values.filter((value) => value !== null);
  const distinct = [...new Set(known)].sort((a, b) => a - b);
  const rank = new Map(distinct.map((value, index) => [value, index]));
  return values.map((value) => (value === null ? null : rank.get(value)!));
}

/** A figure that only a log gives. */
const NO_LOG = 'no log';

function cellOf({ derived, run }: ComputedRun, name: string, withPlace: boolean): RunsCell {
  const figure = derived.figures.get(name);
  if (figure === undefined) return { shown: '', detail: 'not measured' };
  if (!isPresent(figure)) return { shown: '', detail: run.logs.length === 0 ? NO_LOG : figure.absent.replaceAll('-', ' ') };
  return { shown: printQuantity(figure.quantity).text, detail: withPlace ? String(figure.of?.at ?? '') : '' };
}

function placeOf({ derived }: ComputedRun, name: string): string {
  const figure = derived.figures.get(name);
  return figure !== undefined && isPresent(figure) ? String(figure.of?.at ?? '') : '';
}

/** In the canonical unit. */
function canonicalValue({ derived }: ComputedRun, name: string): number | null {
  const figure = derived.figures.get(name);
  return figure !== undefined && isPresent(figure) ? figure.quantity.value : null;
}
