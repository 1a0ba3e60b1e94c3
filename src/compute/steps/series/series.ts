/** The series of every run, from the store or from worker threads. */
import type { Problem } from '../../../problem.ts';
import { fault } from '../../store/momentary-problems.ts';
import type { Store } from '../../store/store.ts';
import type { Pool } from '../pool.ts';
import type { RunOutcome, Runs } from '../runs/runs.ts';
import { type SeriesResult, seriesTask } from './series-step.ts';

export interface AllSeries {
  /** By run id; a run whose log could not be used has none. */
  readonly results: ReadonlyMap<string, SeriesResult>;
  readonly problems: readonly Problem[];
}

interface Options {
  readonly store: Store;
  readonly pool: Pool;
  readonly code: string;
  readonly runs: Runs;
}

/** Makes what is not in the store yet. */
export async function computeSeries({ store, pool, code, runs }: Options): Promise<AllSeries> {
  const results = new Map<string, SeriesResult>();
  const problems: Problem[] = [];
  const one = async ({ run, task, result }: RunOutcome) => {
    if (result.derived === null) return;
    try {
      results.set(run.id, await pool.run(store, seriesTask(code, task)));
    } catch (thrown) {
      problems.push(fault(run.placeOf('log'), 'the series of this run made Soakproof itself fail', thrown, ' with the log'));
    }
  };
  await Promise.all([...runs.outcomes.values()].map(one));
  return { results, problems };
}
