/** Page models and files beside them, from everything computed. */
import type { CheckTable } from '../../figures/checks/results.ts';
import type { Register } from '../../register/register.ts';
import { formerIdsOf } from '../../register/sections/former-addresses.ts';
import { type ArchiveInputs, type Archives, archivesOf } from '../archive/site-archives.ts';
import { type AllGathered, recordOf } from '../comparison/compute-gathered.ts';
import { publishedComparison } from '../comparison/published-comparison.ts';
import { deadLinks, type Linking } from '../contents/dead-links.ts';
import { publishedDevice, triedOf } from '../contents/device-figures.ts';
import type { ComputedAttempts, ComputedComparison, ComputedNote, ComputedRun, Parts } from '../contents/site-contents.ts';
import { attemptsPath, comparisonPath } from '../contents/site-contents.ts';
import { offeredFiles, publishedData } from '../data/published-data.ts';
import { verifyPart } from '../data/verify-part.ts';
import { pageDates } from '../discovery/dates.ts';
import { finding } from '../discovery/discovery.ts';
import { accuracyModel } from '../pages/accuracy.ts';
import { compareModel, comparePath } from '../pages/compare.ts';
import { correctionsText, feedModel } from '../pages/corrections.ts';
import { deviceModel } from '../pages/device.ts';
import { homeModel } from '../pages/home.ts';
import { ledgerModel } from '../pages/ledger.ts';
import { methodModel } from '../pages/method.ts';
import { noteModel, notePath } from '../pages/note.ts';
import { notesFeedModel } from '../pages/notes-feed.ts';
import { citationFiles } from '../pages/references.ts';
import { runModel } from '../pages/run.ts';
import { prompterModel, scriptFiles, scriptModel } from '../pages/script.ts';
import type { Protected } from '../published-state/protect.ts';
import { movedFiles, movedPages } from '../published-state/redirects.ts';
import { redirectFiles } from '../published-state/state-files.ts';
import { copyRow } from '../record-copies/copy-page.ts';
import { copyFiles, copyPages } from '../record-copies/copy-pages.ts';
import type { PrintedCopies } from '../record-copies/print-copies.ts';
import {
  type ComparisonModel,
  type FeedModel,
  type Feeds,
  type Manifest,
  MISSING_IN_DEV,
  type PageModel,
  type Scope,
} from '../results.ts';
import type { AttemptsOutcome } from '../steps/attempts.ts';
import type { ComparisonOutcome } from '../steps/comparisons.ts';
import type { NoteOutcome } from '../steps/notes/notes.ts';
import type { Scripts } from '../steps/notes/scripts.ts';
import { plotFiles } from '../steps/plots/plot-files.ts';
import type { Plots } from '../steps/plots/plots.ts';
import type { RunOutcome, Runs } from '../steps/runs/runs.ts';
import type { AllSeries } from '../steps/series/series.ts';
import { storedSeries } from '../steps/series/series-step.ts';
import { jsonText, publishLedger } from '../store/json-text.ts';
import { openMemory } from '../store/memo.ts';
import type { Store } from '../store/store.ts';
import { reach } from './reach.ts';

interface Options {
  readonly store: Store;
  readonly register: Register;
  readonly runs: Runs;
  readonly comparisons: ReadonlyMap<string, ComparisonOutcome>;
  readonly attempts: ReadonlyMap<string, AttemptsOutcome>;
  readonly held: Protected;
  readonly scripts: Scripts;
  readonly plots: Plots;
  readonly series: AllSeries;
  readonly gathered: AllGathered;
  readonly copies: PrintedCopies;
  readonly scope: Scope;
  /** HTML of the authors' own words, by file. */
  readonly prose: ReadonlyMap<string, string>;
  /** Published values beside ours. */
  readonly accuracy: readonly CheckTable[];
  /** What archives are made of besides. */
  readonly archived: ArchiveInputs;
}

type Files = Manifest['files'][number][];

/** Builds and stores the model of every page of the scope, and the files beside them. */
export function assemble(options: Options): Pick<Manifest, 'pages' | 'files' | 'gathered' | 'feed' | 'problems' | 'entries'> {
  const parts = partsOf(options);
  const archives = archivesOf(options.store, parts, options.archived);
  const models: [path: string, model: PageModel][] = [
    ['', homeModel(parts)],
    ...parts.notes.flatMap((note) => notePages(parts, note, archives)),
    ...[...parts.runs.values()].map((run): [string, PageModel] => [`runs/${run.run.id}/`, runModel(parts, run)]),
    ...devicesOf(parts).map((device): [string, PageModel] => [`devices/${device.id}/`, deviceModel(parts, device)]),
    ...[...parts.comparisons.values()].map((computed) => comparisonPage(parts, computed, options.copies)),
    ...copyPages(options.store, options.copies, parts),
    ['compare/', compareModel(parts)],
    ['method/', methodModel(options.accuracy)],
    ['method/accuracy/', accuracyModel(options.accuracy)],
    // Astro's dev server keeps /404 to itself; dev sends missing addresses here instead (print/dev.ts).
    [options.scope === 'all' ? MISSING_IN_DEV : '404', { kind: 'not-found' }],
  ];
  const found = finding(parts, models);
  models.push(...found.pages);
  const files = [...filesOf(options.store, parts), ...copyFiles(options.store, options.copies)];
  files.push(...[...archives.of.values()].map(({ path, sha256 }) => ({ path, blob: sha256 })));
  files.push(...found.files.map(([path, text]) => ({ path, blob: options.store.keep(text) })));
  const verify = verifyPart(options.store, parts.data, models, files, (subject) => pageOfData(parts, subject));
  models.push(verify.page);
  files.push(verify.file);
  const dates = pageDates(models);
  const pages = models.map(([path, model]) => ({
    kind: model.kind,
    path,
    blob: options.store.keep(JSON.stringify(model)),
    ...(dates.has(path) && { date: dates.get(path)! }),
  }));
  const titles = new Map(parts.notes.map((note) => [notePath(note), note.note.title]));
  const redirects = redirectFiles(options.store, options.held.redirects, files, (page) => titles.get(page) ?? page);
  const feed = feedModel(parts);
  const shown = new Set(pages.map(({ path }) => path));
  const moved = movedFiles(
    options.store,
    movedPages(options.register, (page) => shown.has(page)),
    files,
  );
  const all = [...files, ...redirects, ...moved];
  return {
    pages,
    files: all,
    problems: deadLinks(
      [...parts.notes, ...notShown(options, parts)],
      { pages, files: all },
      options.archived.origins.flatMap(({ links }) => links),
    ),
    gathered: Object.fromEntries([...parts.comparisons].map(([id, { record }]) => [id, record])),
    feed: feed === null ? null : options.store.keep(JSON.stringify(feedsOf(parts, feed))),
    entries: [...archives.keys, ...parts.memory.keys],
  };
}

function feedsOf(parts: Parts, corrections: FeedModel): Feeds {
  return { corrections, notes: notesFeedModel(parts, corrections.updated) };
}

/** Drafts and what is held back, which a site does not show: their links are judged too, so that their publication surprises nobody. */
function notShown({ held, runs, attempts }: Options, parts: Parts): Linking[] {
  const shown = new Set(parts.notes.map(({ note }) => note.file));
  const others = held.notes.outcomes.filter(({ note }) => note.status !== 'published' && !shown.has(note.file));
  return others.map(({ note, written, reaches }) => {
    const tried = [...(note.attempts?.values() ?? [])].map((id) => attempts.get(id)!.attempts.device);
    const devices = [...reaches.map((id) => runs.outcomes.get(id)!.run.device), ...tried].map((id) => `devices/${id}/`);
    const comparisons = [...note.comparisons.values()].map((id) => comparisonPath(id));
    return {
      note,
      written,
      brings: [`${note.kind}s/${note.id}/`, ...reaches.map((id) => `runs/${id}/`), ...devices, ...comparisons],
    };
  });
}

/** The pages of a note or script. */
function notePages(parts: Parts, computed: ComputedNote, archives: Archives): [string, PageModel][] {
  const path = notePath(computed);
  const ledger: [string, PageModel] = [`${path}ledger/`, ledgerModel(parts, computed)];
  if (computed.note.kind === 'note') return [[path, noteModel(parts, computed, archives.of.get(path) ?? null)], ledger];
  return [[path, scriptModel(parts, computed)], [`${path}prompter/`, prompterModel(parts, computed)], ledger];
}

/** Whatever it compares is in the site: its runs and their devices. */
function comparisonPage(parts: Parts, { comparison, own }: ComputedComparison, { copies }: PrintedCopies): [string, PageModel] {
  const status = parts.published.comparisons.has(comparison.id) ? 'published' : 'held back';
  const model: ComparisonModel = {
    ...own,
    marks: { ...own.marks, status },
    body: parts.prose.get(comparison.file) ?? '',
    notes: parts.notes
      .filter(({ note }) => [...note.comparisons.values()].includes(comparison.id))
      .map((computed) => ({ title: computed.note.title, path: notePath(computed) })),
    copies: copies.filter((copy) => [comparison.id, ...formerIdsOf(comparison)].includes(copy.comparison)).map(copyRow),
    compare: comparePath([...comparison.runs.values()], comparison.runs.get(comparison.reference)),
  };
  return [comparisonPath(comparison.id), model];
}

/** Attempts stand on the page of their device. */
function pageOfData({ attempts }: Parts, subject: string): string {
  const tried = attempts.get(subject.replace(/^attempts\//, ''));
  return tried && subject.startsWith('attempts/') ? attemptsPath(tried.attempts) : `${subject}/`;
}

function partsOf(options: Options): Parts {
  const { register, runs, comparisons, attempts, held, scripts, plots, gathered, scope, prose } = options;
  const memory = openMemory(options.store, options.archived.code);
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
    notes: whole.map((outcome) => computedNote(outcome, plots, scripts)),
    data: publishedData({ store: options.store, memory }, { register, runs: usable, attempts: readable }),
    memory,
    prose,
    published: publishedIds(held.notes.outcomes, runs, attempts),
    corrections: held.corrections,
    site: options.archived.site,
  };
}

/** Runs and devices that the published site shows, whatever the scope. */
function publishedIds(notes: readonly NoteOutcome[], runs: Runs, attempts: Options['attempts']): Parts['published'] {
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

function computedRun({ run, task, result }: RunOutcome, { store, plots, series }: Options): ComputedRun[] {
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

function computedNote({ note, written, reaches }: NoteOutcome, plots: Plots, scripts: Scripts): ComputedNote {
  const plan = note.kind === 'script' ? scripts.plans.get(note.id) : undefined;
  const drawn = plots.results.get(`${note.kind}s/${note.id}`) ?? [];
  return { note, written, reaches, plots: drawn, ...(plan && { plan }) };
}

function devicesOf(parts: Parts) {
  const tried = [...parts.attempts.values()].map(({ attempts }) => attempts.device);
  const ids = new Set([...[...parts.runs.values()].map(({ run }) => run.device), ...tried]);
  return [...parts.register.devices.values()].filter(({ id }) => ids.has(id));
}

function filesOf(store: Store, parts: Parts): Files {
  const files: Files = offeredFiles(parts.data);
  for (const computed of parts.runs.values()) {
    const { run } = computed;
    files.push({ path: `runs/${run.id}/series.json`, blob: computed.seriesText });
    files.push(...plotFiles(`runs/${run.id}/`, computed.plots));
  }
  for (const { id } of devicesOf(parts)) {
    files.push({ path: `devices/${id}/figures.json`, blob: store.keep(jsonText(publishedDevice(parts, id))) });
    const drawn = triedOf(parts, id).map(({ plot }) => plot);
    files.push(...plotFiles(`devices/${id}/`, drawn));
  }
  for (const computed of parts.comparisons.values()) {
    const path = comparisonPath(computed.comparison.id);
    files.push({ path: `${path}figures.json`, blob: store.keep(jsonText(publishedComparison(computed))) });
    files.push(...plotFiles(path, computed.plots));
  }
  for (const computed of parts.notes) {
    for (const [path, text] of citationFiles(parts, computed)) files.push({ path, blob: store.keep(text) });
    for (const [path, text] of correctionsText(parts, computed)) files.push({ path, blob: store.keep(text) });
    files.push({ path: `${notePath(computed)}ledger.json`, blob: store.keep(jsonText(publishLedger(computed.written))) });
    files.push(...plotFiles(notePath(computed), computed.plots));
    for (const [path, text] of scriptFiles(parts, computed)) files.push({ path, blob: store.keep(text) });
  }
  return files;
}
