/** The figures of every comparison, from the store or derived from its runs'. */

import { compare } from '../../figures/comparison/compare.ts';
import type { ComparedRun } from '../../figures/comparison/compared.ts';
import type { FigureMap } from '../../figures/figure.ts';
import type { Problem } from '../../problem.ts';
import type { Comparison, Register } from '../../register/register.ts';
import { repeatKey } from '../../register/resolved/check-settings.ts';
import { reachedRuns } from '../../register/resolved/reached-runs.ts';
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

/** By comparison id, in the register's order. The key covers the code, the settings and the keys of their runs. */
export function computeComparisons({ store, code, register, runs }: Options): ReadonlyMap<string, ComparisonOutcome> {
  const outcomes = [...register.comparisons.values()].map((comparison): [string, ComparisonOutcome] => {
    const outcomeOf = (id: string) => runs.outcomes.get(id)!;
    const keyOf = (id: string) => outcomeOf(id).task.key;
    const settings = [...comparison.settings].map(([alias, ids]) => [alias, ids.map(keyOf)]);
    const repeats = comparison.repeats.map((id) => [keyOf(id), repeatKey(outcomeOf(id).run)]);
    const key = digestOf(['comparison', code, comparison.id, comparison.reference, settings, repeats]);
    const before = stored<FigureMap>(store, key);
    if (before !== undefined) return [comparison.id, { comparison, key, figures: before, problems: [] }];
    const outcome = tried(comparison, outcomeOf);
    if (outcome.figures !== null) store.set(key, outcome.figures);
    return [comparison.id, { comparison, key, ...outcome }];
  });
  return new Map(outcomes);
}

type OutcomeOf = (id: string) => RunOutcome;

/** A fault of our own code must not take the other results with it. */
function tried(comparison: Comparison, outcomeOf: OutcomeOf): Pick<ComparisonOutcome, 'figures' | 'problems'> {
  try {
    return { figures: derived(comparison, outcomeOf), problems: [] };
  } catch (thrown) {
    const what = 'this comparison made Soakproof itself fail';
    return { figures: null, problems: [fault(comparison.placeOf('runs'), what, thrown, ' with the tables of scores')] };
  }
}

function derived(comparison: Comparison, outcomeOf: OutcomeOf): FigureMap | null {
  const { id, reference, repeats } = comparison;
  if (reachedRuns(comparison).some((run) => outcomeOf(run).result.derived === null)) return null;
  const settings = [...comparison.settings].map(([alias, ids]) => ({
    alias,
    runs: ids.map((run) => comparedRun(alias, outcomeOf(run))),
  }));
  const alike = Map.groupBy(repeats, (run) => repeatKey(outcomeOf(run).run));
  return compare({
    id,
    reference: settings.find(({ alias }) => alias === reference)!,
    others: settings.filter(({ alias }) => alias !== reference),
    repeats: [...alike.values()].map((ids) => ids.map((run) => comparedRun(run, outcomeOf(run)))),
  });
}

function comparedRun(alias: string, { run, result }: RunOutcome): ComparedRun {
  const clock = run.context.setting.clock;
  return {
    alias,
    run: run.id,
    device: run.device,
    specimen: run.specimen,
    ...(clock?.unit === 'Hz' ? { clockSetting: clock.value } : {}),
    figures: result.derived!.figures,
  };
}
