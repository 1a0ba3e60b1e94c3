/** Every plot: those that notes ask for, and those that runs' pages have of their own. */

import type { Pictures } from '../../../plots/draw.ts';
import type { AttemptsSubject } from '../../../plots/drawing/drawn.ts';
import type { Problem } from '../../../problem.ts';
import type { Register } from '../../../register/register.ts';
import type { PlotRequest } from '../../../register/requests.ts';
import { fault } from '../../store/momentary-problems.ts';
import type { Store } from '../../store/store.ts';
import type { AttemptsOutcome } from '../attempts.ts';
import type { ComparisonOutcome } from '../comparisons.ts';
import type { Notes } from '../notes/notes.ts';
import type { Pool } from '../pool.ts';
import type { Runs } from '../runs/runs.ts';
import { attemptsPlot } from './attempts-plot.ts';
import { picturedPlots } from './pictured-plots.ts';
import { type ComparedTask, type PlotResult, plotTask } from './plot-task.ts';
import { runPlots } from './run-plots.ts';

export interface Plots {
  /** By `notes/<slug>`, `runs/<id>` or `attempts/<id>`, in the order of their requests. A plot that could not be drawn is null. */
  readonly results: ReadonlyMap<string, readonly (PlotResult | null)[]>;
  readonly problems: readonly Problem[];
}

interface Options {
  readonly store: Store;
  readonly pool: Pool;
  readonly code: string;
  readonly register: Register;
  readonly runs: Runs;
  readonly comparisons: ReadonlyMap<string, ComparisonOutcome>;
  readonly attempts: ReadonlyMap<string, AttemptsOutcome>;
  readonly notes: Notes;
}

/** Draws what is not in the store yet. */
export async function drawPlots(options: Options): Promise<Plots> {
  const requests = new Map<string, readonly PlotRequest[]>();
  for (const { run, result } of options.runs.outcomes.values()) {
    if (result.derived !== null) requests.set(`runs/${run.id}`, runPlots(run, result.derived));
  }
  for (const outcome of options.attempts.values()) {
    if (outcome.ladder !== null) requests.set(`attempts/${outcome.attempts.id}`, [attemptsPlot(outcome.attempts)]);
  }
  for (const { note, written } of options.notes.outcomes) requests.set(`${note.kind}s/${note.id}`, written.plots);

  const pictured = picturedPlots(options.notes.outcomes);
  // A reader of a run's or device's page takes the SVG; what notes show is passed on, and feeds show it as a picture.
  const pictures = (page: string, request: PlotRequest): Pictures => ({
    png: /^(?:notes|scripts)\//.test(page),
    pictured: pictured.has(request),
  });
  const problems: Problem[] = [];
  const drawn = [...requests].map(async ([page, asked]) => {
    const results = await Promise.all(asked.map((request) => drawPlot(options, request, pictures(page, request), problems)));
    return [page, results] as const;
  });
  return { results: new Map(await Promise.all(drawn)), problems };
}

async function drawPlot(
  options: Options,
  request: PlotRequest,
  pictures: Pictures,
  problems: Problem[],
): Promise<PlotResult | null> {
  const outcomes = request.runs.map(({ run }) => options.runs.outcomes.get(run)!);
  if (outcomes.some(({ result }) => result.derived === null)) return null;
  const attempts = (request.attempts ?? []).flatMap(({ id }) => attemptsSubject(options, id));
  if (attempts.length < (request.attempts ?? []).length) return null;
  const compared = request.comparison === undefined ? null : comparedTask(options, request.comparison);
  if (compared === undefined) return null;
  const task = plotTask(
    options.code,
    request,
    outcomes.map(({ run, task }) => ({ title: run.title, run: task })),
    attempts,
    compared,
    pictures,
  );
  try {
    const result = await options.pool.run(options.store, task);
    problems.push(...result.problems.map((problem) => ({ ...problem, place: request.place })));
    return result;
  } catch (thrown) {
    problems.push(fault(request.place, 'this plot could not be drawn', thrown));
    return null;
  }
}

function attemptsSubject({ attempts, register }: Options, id: string): AttemptsSubject[] {
  const { ladder, attempts: named } = attempts.get(id)!;
  const ratedClock = register.devices.get(named.device)?.ratedClock;
  return ladder === null ? [] : [{ ladder, ...(ratedClock && { ratedClock }) }];
}

/** Runs that the note names look as in its other plots, others follow them; undefined where a log could not be used: that run's problems say why. */
function comparedTask({ comparisons }: Options, { id, slots }: NonNullable<PlotRequest['comparison']>): ComparedTask | undefined {
  const { comparison, figures, key } = comparisons.get(id)!;
  if (figures === null) return undefined;
  let next = Object.keys(slots).length;
  const runs = [...comparison.settings].map(([alias, [run]]) => ({ alias, slot: slots[run!] ?? next++ }));
  return { key, subject: { reference: comparison.reference, runs, figures } };
}
