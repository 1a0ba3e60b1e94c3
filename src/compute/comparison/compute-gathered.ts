/** Every comparison gathered and printed, with the plots of its page: from the store, or made anew, the plots by worker threads. */
import type { Problem } from '../../problem.ts';
import type { Register } from '../../register/register.ts';
import { reachedRuns } from '../../register/resolved/reached-runs.ts';
import { comparisonPath } from '../contents/site-contents.ts';
import type { Gathered } from '../models/gathered.ts';
import type { ComparisonModel } from '../results.ts';
import type { ComparisonOutcome } from '../steps/comparisons.ts';
import { COMPARED_PLOTS, type ComparedPlotId, comparedPlotTask } from '../steps/plots/comparison-plot-task.ts';
import type { PlotResult } from '../steps/plots/plot-task.ts';
import type { Pool } from '../steps/pool.ts';
import type { Runs } from '../steps/runs/runs.ts';
import type { AllSeries } from '../steps/series/series.ts';
import { storedSeries } from '../steps/series/series-step.ts';
import { canonicalText } from '../store/canonical-json.ts';
import { digestOf } from '../store/digest.ts';
import { memoAsync } from '../store/memo.ts';
import { fault } from '../store/momentary-problems.ts';
import type { Store } from '../store/store.ts';
import { comparisonModel } from './comparison-page.ts';
import { type GatherableRun, gather } from './gather.ts';

/** What the page of a comparison is made from. */
export interface GatheredComparison {
  /** Blob of what was gathered, as canonical JSON. */
  readonly record: string;
  /** Its page, but for what hangs on the rest of the site: body, marks, notes, copies. */
  readonly own: ComparisonModel;
  readonly plots: readonly PlotResult[];
}

export interface AllGathered {
  /** By comparison id; one with a run that could not be read has none. */
  readonly results: ReadonlyMap<string, GatheredComparison>;
  readonly problems: readonly Problem[];
}

interface Options {
  readonly store: Store;
  readonly pool: Pool;
  /** Digests of all code, and of what draws comparisons. */
  readonly code: { readonly all: string; readonly compared: string };
  readonly register: Register;
  readonly runs: Runs;
  readonly series: AllSeries;
  readonly comparisons: ReadonlyMap<string, ComparisonOutcome>;
}

/** Gathers all comparisons of the register and draws what is not in the store yet. */
export async function computeGathered(options: Options): Promise<AllGathered> {
  const results = new Map<string, GatheredComparison>();
  const problems: Problem[] = [];
  const one = async (outcome: ComparisonOutcome) => {
    const { comparison } = outcome;
    try {
      const make = (store: Store) => made({ ...options, store }, outcome);
      const result = await memoAsync(options.store, keyOf(options, outcome), make, (each) => each !== null);
      if (result !== null) results.set(comparison.id, result);
    } catch (thrown) {
      problems.push(fault(comparison.placeOf('runs'), 'the page of this comparison could not be made', thrown));
    }
  };
  await Promise.all([...options.comparisons.values()].map(one));
  return { results, problems };
}

/** Covers all code, the figures, and what the author says of the comparison, its runs, their devices and instruments. */
function keyOf({ code, register, runs }: Options, { comparison, key }: ComparisonOutcome): string {
  const said = reachedRuns(comparison).map((id) => {
    const { run, task } = runs.outcomes.get(id)!;
    const instruments = run.instruments.map((instrument) => register.instruments.get(instrument));
    return [task.key, run, register.devices.get(run.device), instruments];
  });
  const quoted = (comparison.quoted ?? []).map((id) => {
    const { figures, ...stated } = register.quoted.get(id)!;
    return [stated, [...figures]];
  });
  return digestOf(['gathered', code.all, key, comparison, said, quoted]);
}

/** Null where a log of its runs could not be used. */
async function made(options: Options, { comparison, figures }: ComparisonOutcome): Promise<GatheredComparison | null> {
  const { store, register } = options;
  const gathered = figures && gather({ register, comparison, figures, runs: gatherable(options, reachedRuns(comparison)) });
  if (gathered === null) return null;
  const drawn = await drawCompared({ ...options, code: options.code.compared }, gathered);
  const alone = { body: '', status: 'published', notes: [], copies: [], has: () => true } as const;
  return {
    record: store.keep(canonicalText(gathered)),
    own: comparisonModel(gathered, drawn, { path: comparisonPath(comparison.id), ...alone }),
    plots: drawn.plots,
  };
}

/** What was gathered of a comparison, from the store; one object however often it is asked for. */
export function recordOf(store: Store, record: string): () => Gathered {
  let read: Gathered | undefined;
  return () => {
    read ??= JSON.parse(new TextDecoder().decode(store.bytes(record))) as Gathered;
    return read;
  };
}

/** The plots of anything gathered, also of a record copy. Throws where one cannot be drawn. */
export async function drawCompared(
  { store, pool, code }: Pick<Options, 'store' | 'pool'> & { readonly code: string },
  gathered: Gathered,
): Promise<{
  readonly plots: readonly PlotResult[];
  /** Why other plots are not drawn, in sentences. */
  readonly undrawn: readonly string[];
}> {
  const digest = digestOf(gathered);
  const draw = (id: ComparedPlotId, pictured: boolean) => pool.run(store, comparedPlotTask(code, id, gathered, digest, pictured));
  const drawn = await Promise.all(COMPARED_PLOTS.map((id, at) => draw(id, at === 0)));
  // The first of the page is pictured, and mostly that is the first there is.
  const lead = drawn.findIndex(({ plot }) => plot !== null);
  if (lead > 0) drawn[lead] = await draw(COMPARED_PLOTS[lead]!, true);
  return {
    plots: drawn.flatMap(({ plot }) => (plot === null ? [] : [plot])),
    undrawn: [...new Set(drawn.flatMap(({ why }) => (why === '' ? [] : [why])))],
  };
}

function gatherable({ store, runs, series }: Options, ids: readonly string[]): ReadonlyMap<string, GatherableRun> {
  const entries = ids.flatMap((id): [string, GatherableRun][] => {
    const { run, result } = runs.outcomes.get(id)!;
    const { derived, summary, tables } = result;
    const drawn = series.results.get(id);
    if (derived === null || summary === null || drawn === undefined) return [];
    return [[id, { run, derived, summary, tables, series: () => storedSeries(store, drawn), ambient: drawn.ambient }]];
  });
  return new Map(entries);
}
