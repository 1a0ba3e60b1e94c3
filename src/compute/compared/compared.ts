/** Every comparison gathered, with the plots of its page drawn: from the store or by worker threads. */
import { error, type Problem } from '../../problem.ts';
import type { Register } from '../../register/register.ts';
import type { ComparisonOutcome } from '../comparisons.ts';
import { digestOf } from '../digest.ts';
import { type PlotResult, plotBlobs } from '../plot-task.ts';
import type { Pool } from '../pool.ts';
import type { Runs } from '../runs.ts';
import type { AllSeries } from '../series.ts';
import type { Store } from '../store.ts';
import { type GatherableRun, gather } from './gather.ts';
import type { Gathered } from './gathered.ts';
import { COMPARED_PLOTS, type ComparedPlotResult, type ComparedPlotTask, comparedPlotTask } from './plot-task.ts';

/** What the page of a comparison is made from. */
export interface GatheredComparison {
  readonly gathered: Gathered;
  readonly plots: readonly PlotResult[];
  /** Why other plots are not drawn, in sentences. */
  readonly undrawn: readonly string[];
}

export interface AllGathered {
  /** By comparison id; one with a run that could not be read has none. */
  readonly results: ReadonlyMap<string, GatheredComparison>;
  /** Of all of them. */
  readonly plots: readonly (readonly PlotResult[])[];
  readonly keys: readonly string[];
  readonly problems: readonly Problem[];
}

interface Options {
  readonly store: Store;
  readonly pool: Pool;
  readonly code: string;
  readonly register: Register;
  readonly runs: Runs;
  readonly series: AllSeries;
  readonly comparisons: ReadonlyMap<string, ComparisonOutcome>;
}

/** Gathers all comparisons of the register and draws what is not in the store yet. */
export async function computeGathered(options: Options): Promise<AllGathered> {
  const runs = gatherable(options);
  const results = new Map<string, GatheredComparison>();
  const keys: string[] = [];
  const problems: Problem[] = [];
  const one = async ({ comparison, figures }: ComparisonOutcome) => {
    const gathered = figures && gather({ register: options.register, comparison, figures, runs });
    if (gathered === null) return;
    try {
      const drawn = await drawCompared(options, gathered);
      results.set(comparison.id, { gathered, plots: drawn.plots, undrawn: drawn.undrawn });
      keys.push(...drawn.keys);
    } catch (thrown) {
      const found = `the plots of this comparison could not be drawn: ${thrown instanceof Error ? thrown.message : String(thrown)}`;
      const remedy = 'this is a fault of the program, not of your files: please report it';
      problems.push(error('fault', comparison.placeOf('runs'), found, { remedy }));
    }
  };
  await Promise.all([...options.comparisons.values()].map(one));
  return { results, plots: [...results.values()].map(({ plots }) => plots), keys, problems };
}

/** The plots of anything gathered, also of a record copy. Throws where one cannot be drawn. */
export async function drawCompared(
  { store, pool, code }: Pick<Options, 'store' | 'pool' | 'code'>,
  gathered: Gathered,
): Promise<Omit<GatheredComparison, 'gathered'> & { readonly keys: readonly string[] }> {
  const digest = digestOf(gathered);
  const tasks = COMPARED_PLOTS.map((id) => comparedPlotTask(code, id, gathered, digest));
  const drawn = await Promise.all(tasks.map(async (task) => stored(store, task) ?? (await pool.run(task))));
  return {
    plots: drawn.flatMap(({ plot }) => (plot === null ? [] : [plot])),
    undrawn: [...new Set(drawn.flatMap(({ why }) => (why === '' ? [] : [why])))],
    keys: tasks.map(({ key }) => key),
  };
}

/** A stored plot counts only with its drawings and downloads. */
function stored(store: Store, task: ComparedPlotTask): ComparedPlotResult | undefined {
  const result = store.get(task.key) as ComparedPlotResult | undefined;
  return result?.plot == null || plotBlobs(result.plot).every((blob) => store.has(blob)) ? result : undefined;
}

function gatherable({ runs, series }: Options): ReadonlyMap<string, GatherableRun> {
  const entries = [...runs.outcomes.values()].flatMap(({ run, result }): [string, GatherableRun][] => {
    const { derived, summary, tables } = result;
    const made = series.results.get(run.id);
    if (derived === null || summary === null || made === undefined) return [];
    return [[run.id, { run, derived, summary, tables, series: made.series, ambient: made.ambient }]];
  });
  return new Map(entries);
}
