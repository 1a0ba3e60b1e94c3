/** The figures of every comparison, from the store or derived from its runs'. */
import { compare } from '../../figures/comparison/compare.ts';
import type { ComparedRun } from '../../figures/comparison/compared.ts';
import type { FigureMap } from '../../figures/figure.ts';
import type { Problem } from '../../problem.ts';
import type { Comparison, Register } from '../../register/register.ts';
import { digestOf } from '../store/digest.ts';
import { stored } from '../store/memo.ts';
import { fault } from '../store/momentary-problems.ts';
import type { Store } from '../store/store.ts';
import type { RunOutcome, Runs } from './runs/runs.ts';

export interface ComparisonOutcome {
  readonly comparison: Comparison;
  readonly key: string;
  /** Null where a log of its runs could not be used: that run's problems then say why. */
  readonly figures: FigureMap | null;
  readonly problems: readonly Problem[];
}

interface Options {
  readonly store: Store;
  readonly code: string;
  readonly register: Register;
  readonly runs: Runs;
}

/** By comparison id, in the register's order. The key covers the code, the aliases and the keys of the runs. */
export function computeComparisons({ store, code, register, runs }: Options): ReadonlyMap<string, ComparisonOutcome> {
  const outcomes = [...register.comparisons.values()].map((comparison): [string, ComparisonOutcome] => {
    const named = [...comparison.runs].map(([alias, id]) => ({ alias, outcome: runs.outcomes.get(id)! }));
    const keys = named.map(({ alias, outcome }) => [alias, outcome.task.key]);
    const key = digestOf(['comparison', code, comparison.id, comparison.reference, keys]);
    const before = stored<FigureMap>(store, key);
    if (before !== undefined) return [comparison.id, { comparison, key, figures: before, problems: [] }];
    const outcome = tried(comparison, named);
    if (outcome.figures !== null) store.set(key, outcome.figures);
    return [comparison.id, { comparison, key, ...outcome }];
  });
  return new Map(outcomes);
}

type Named = readonly { readonly alias: string; readonly outcome: RunOutcome }[];

/** A fault of our own code must not take the other results with it. */
function tried(comparison: Comparison, named: Named): Pick<ComparisonOutcome, 'figures' | 'problems'> {
  try {
    return { figures: derived(comparison, named), problems: [] };
  } catch (thrown) {
    const what = 'this comparison made Soakproof itself fail';
    return { figures: null, problems: [fault(comparison.placeOf('runs'), what, thrown, ' with the tables of scores')] };
  }
}

function derived({ id, reference }: Comparison, named: Named): FigureMap | null {
  const runs = named.map(({ alias, outcome }) => comparedRun(alias, outcome));
  const base = runs.find((run) => run?.alias === reference);
  const others = runs.filter((run): run is ComparedRun => run !== null && run !== base);
  if (!base || others.length + 1 < runs.length) return null;
  return compare({ id, reference: base, others });
}

function comparedRun(alias: string, { run, result }: RunOutcome): ComparedRun | null {
  if (result.derived === null) return null;
  const clock = run.context.setting.clock;
  return {
    alias,
    run: run.id,
    device: run.device,
    specimen: run.specimen,
    ...(clock?.unit === 'Hz' ? { clockSetting: clock.value } : {}),
    figures: result.derived.figures,
  };
}
