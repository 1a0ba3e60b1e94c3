/** Scores by test: each run's speedup in each test, with its 95 % interval, on an axis where equal distances are equal factors. */
import { type Figure, isPresent } from '../../figures/figure.ts';
import { compareText } from '../../problem.ts';
import { type ComparedRun, figureAt, type PlottedComparison, plottedComparison } from '../data/plotted-comparison.ts';
import type { ComparedSubject } from '../drawing/drawn.ts';
import type { Plan, Undrawn } from '../drawing/plan.ts';
import { layOutScores } from './layout.ts';
import { scoresAlt, scoresCsv, scoresMethod, scoresTable, scoresTitle } from './words.ts';

export interface Score extends ComparedRun {
  /** Its `speedup`. */
  readonly figure: Figure;
}

/** One row: a test, or all of them together. */
export interface ScoreRow {
  /** Null for the geometric mean over all tests. */
  readonly test: string | null;
  readonly title: string;
  readonly scores: readonly Score[];
}

export interface Scores {
  readonly reference: ComparedRun;
  /** All tests together, then each, from the largest gain to the smallest. */
  readonly rows: readonly ScoreRow[];
}

/** Plans the speedups of all runs against the reference, test by test. */
export function planScores(subject: ComparedSubject, title?: string): Plan | Undrawn {
  const compared = plottedComparison(subject);
  const tests = testsOf(compared).map((test) => rowOf(compared, test.title, test.id));
  const all = rowOf(compared, 'All tests (geometric mean)', null);
  const rows = [...(tests.length > 1 ? [all] : []), ...ordered(tests)];
  if (!rows.some(hasScore)) return { why: whyNot(all) };
  const scores: Scores = { reference: compared.reference, rows };
  return {
    title: title ?? scoresTitle(scores),
    alt: scoresAlt(scores),
    method: scoresMethod(scores),
    csv: scoresCsv(scores),
    table: scoresTable(scores),
    layOut: (size) => layOutScores(scores, size),
    shown: compared.others.map(({ alias, k }) => ({ name: alias, k })),
  };
}

/** The tests that figures of the comparison are of, also those of which every figure is absent. */
function testsOf({ figures }: PlottedComparison): { readonly id: string; readonly title: string }[] {
  const titles = new Map<string, string>();
  for (const [address, { of }] of figures) {
    if (address.startsWith('speedup.') && typeof of?.test === 'string') titles.set(of.test, String(of.title ?? of.test));
  }
  return [...titles].map(([id, title]) => ({ id, title }));
}

function rowOf(compared: PlottedComparison, title: string, test: string | null): ScoreRow {
  const scores = compared.others.map((run) => {
    const address = ['speedup', run.alias, ...(test === null ? [] : [test])].join('.');
    return { ...run, figure: figureAt(compared, address) };
  });
  return { test, title, scores };
}

/** From the largest mean gain to the smallest, so that a reader sees what scales; tests without a figure last. */
function ordered(rows: readonly ScoreRow[]): ScoreRow[] {
  const gain = ({ scores }: ScoreRow) => {
    const logs = scores.flatMap(({ figure }) => (isPresent(figure) ? [Math.log(figure.quantity.value)] : []));
    return logs.length === 0 ? Number.NEGATIVE_INFINITY : logs.reduce((sum, log) => sum + log, 0) / logs.length;
  };
  const gains = new Map(rows.map((row) => [row, gain(row)]));
  return [...rows].sort((a, b) => {
    const [one, other] = [gains.get(a)!, gains.get(b)!];
    return one === other ? compareText(a.test!, b.test!) : other - one;
  });
}

function hasScore({ scores }: ScoreRow): boolean {
  return scores.some(({ figure }) => isPresent(figure));
}

function whyNot({ scores: [first] }: ScoreRow): string {
  if (!first) return 'The comparison has one run alone.';
  return isPresent(first.figure) ? '' : first.figure.why;
}
