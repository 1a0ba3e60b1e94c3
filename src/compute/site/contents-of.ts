/** What the steps gave, as far as the scope shows it, for those who build pages from it. */
import type { Register } from '../../register/register.ts';
import { type AllGathered, recordOf } from '../comparison/compute-gathered.ts';
import type { ComputedAttempts, ComputedComparison, ComputedNote, ComputedRun, SiteContents } from '../contents/site-contents.ts';
import { offeredData } from '../data/offered-data.ts';
import type { SiteFacts } from '../project/site-facts.ts';
import type { Protected } from '../published-state/protect.ts';
import type { Scope } from '../results.ts';
import type { AttemptsOutcome } from '../steps/attempts.ts';
import type { ComparisonOutcome } from '../steps/comparisons.ts';
import type { NoteOutcome } from '../steps/notes/notes.ts';
import type { Scripts } from '../steps/notes/scripts.ts';
import type { Pictures } from '../steps/pictures/pictures.ts';
import type { Plots } from '../steps/plots/plots.ts';
import type { RunOutcome, Runs } from '../steps/runs/runs.ts';
import type { AllSeries } from '../steps/series/series.ts';
import { storedSeries } from '../steps/series/series-step.ts';
import { siteMemo } from '../store/memo.ts';
import type { Store } from '../store/store.ts';
import { reach } from './reach.ts';

export interface Computed {
  readonly store: Store;
  /** Digest of all code of stage 1. */
  readonly code: string;
  readonly register: Register;
  readonly runs: Runs;
  readonly comparisons: ReadonlyMap<string, ComparisonOutcome>;
  readonly attempts: ReadonlyMap<string, AttemptsOutcome>;
  readonly held: Protected;
  readonly scripts: Scripts;
  readonly plots: Plots;
  readonly pictures: Pictures;
  readonly series: AllSeries;
  readonly gathered: AllGathered;
  readonly scope: Scope;
  /** HTML of the authors' own words, by file. */
  readonly prose: ReadonlyMap<string, string>;
  /** The page about the publication. */
  readonly about: SiteContents['about'];
  readonly site: SiteFacts;
  readonly shares: SiteContents['shares'];
}

/** Runs, comparisons and attempts that a shown note reaches, and the notes of which all can be used. */
export function contentsOf(options: Computed): SiteContents {
  const { register, runs, comparisons, attempts, held, scripts, plots, pictures, gathered, scope, prose } = options;
  const memo = siteMemo(options.store, options.code);
  const reached = reach(scope, held.notes.outcomes, runs.outcomes.keys(), comparisons.keys(), attempts.keys());
  const computed = [...runs.outcomes.values()]
    .filter(({ run }) => reached.runs.has(run.id))
    .flatMap((outcome) => computedRun(outcome, options));
  const usable = new Map(computed.map((run) => [run.run.id, run]));
  const side = [...comparisons].flatMap(([id, { comparison, figures }]): [string, ComputedComparison][] => {
    const made = gathered.results.get(id);
    if (figures === null || made === undefined || !reached.comparisons.has(id)) return [];
    return [[id, { comparison, figures, ...made, gathered: recordOf(options.store, made.record) }]];
  });
  const tried = [...attempts].flatMap(([id, outcome]): [string, ComputedAttempts][] =>
    reached.attempts.has(id) ? computedAttempts(outcome, plots).map((computed) => [id, computed]) : [],
  );
  const readable = new Map(tried);
  const whole = reached.notes.filter(
    ({ reaches, note }) =>
      reaches.every((id) => usable.has(id)) && [...(note.attempts?.values() ?? [])].every((id) => readable.has(id)),
  );
  return {
    register,
    runs: usable,
    comparisons: new Map(side),
    attempts: readable,
    notes: whole.map((outcome) => computedNote(outcome, plots, pictures, scripts)),
    data: offeredData(memo, { register, runs: usable, attempts: readable }),
    memo,
    prose,
    published: publishedIds(held.notes.outcomes, runs, attempts),
    corrections: held.corrections,
    redrawn: held.redrawn,
    about: options.about,
    site: options.site,
    shares: options.shares,
  };
}

/** Runs and devices that the published site shows, whatever the scope. */
function publishedIds(notes: readonly NoteOutcome[], runs: Runs, attempts: Computed['attempts']): SiteContents['published'] {
  const reached = reach('site', notes, [], [], []);
  const devices = [
    ...[...reached.runs].map((id) => runs.outcomes.get(id)!.run.device),
    ...[...reached.attempts].map((id) => attempts.get(id)!.attempts.device),
  ];
  return { runs: reached.runs, devices: new Set(devices), comparisons: reached.comparisons };
}

function computedAttempts({ ladder, form, ...outcome }: AttemptsOutcome, plots: Plots): ComputedAttempts[] {
  if (ladder === null || form === null) return [];
  const { attempts, figures, sha256, bytes } = outcome;
  return [{ attempts, ladder, form, figures, sha256, bytes, plot: plots.results.get(`attempts/${attempts.id}`)?.[0] ?? null }];
}

function computedRun({ run, task, result }: RunOutcome, { store, plots, series }: Computed): ComputedRun[] {
  const made = series.results.get(run.id);
  if (result.derived === null || result.summary === null || result.data === null || made === undefined) return [];
  const drawn = plots.results.get(`runs/${run.id}`) ?? [];
  return [
    {
      run,
      key: task.key,
      derived: result.derived,
      summary: result.summary,
      data: result.data,
      tables: result.tables,
      plots: drawn.filter((plot) => plot !== null),
      seriesText: made.text,
      series: () => storedSeries(store, made),
      ambient: made.ambient,
    },
  ];
}

function computedNote({ note, written, reaches }: NoteOutcome, plots: Plots, pictures: Pictures, scripts: Scripts): ComputedNote {
  const plan = note.kind === 'script' ? scripts.plans.get(note.id) : undefined;
  const drawn = plots.results.get(`${note.kind}s/${note.id}`) ?? [];
  const shown = (written.pictures ?? []).map(({ path, beside }) => {
    const made = pictures.made.get(path);
    return made ? { ...made, path, beside } : null;
  });
  return { note, written, reaches, plots: drawn, pictures: shown, ...(plan && { plan }) };
}
