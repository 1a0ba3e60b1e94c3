/**
 * Stage 1, whole:
 *
 *   content/** ─► register ─► Register ─┐
 *   data/** ─► intake ─► Log ─► figures ─► RunFigures ─┬─► words ─► Written (HTML, ledger) ─┐
 *                                        ├─► plots ─► Drawn (SVG, PNG, CSV) ────────────────┤
 *                                        └─► series ─► Gathered (a comparison), its plots ──┤
 *   content/record-copies/** ─► record copies, their plots ─────────────────────────────────┤
 *   content/published/** ─► published states ─► corrections, redirects, problems ───────────┴─► page models, files, Manifest
 *
 * Runs and plots go to worker threads; every result is stored by a key that covers all it depends on, problems included.
 */
import { compareProblems, compareText, type Problem } from '../problem.ts';
import { readRegister } from '../register/read.ts';
import { archivedPictures, readOrigins } from '../register/sealed/archive-origins.ts';
import { computeGathered } from './comparison/compute-gathered.ts';
import { withLicences } from './project/licences.ts';
import { recordingLookups, writeManifest } from './project/manifest.ts';
import { dataFiles, type Project } from './project/read-project.ts';
import { siteFacts } from './project/site-facts.ts';
import { protect, recordedWords } from './published-state/protect.ts';
import { readStates } from './published-state/read-states.ts';
import { sourcesOf } from './published-state/sources.ts';
import { namedCopies } from './record-copies/copy.ts';
import { printCopies } from './record-copies/print-copies.ts';
import { MANIFEST_FORMAT, type Manifest, type Scope } from './results.ts';
import { drawShares } from './site/shares.ts';
import { assemble } from './site/site.ts';
import { computeAbout } from './steps/about.ts';
import { computeAccuracy } from './steps/accuracy.ts';
import { computeAttempts } from './steps/attempts.ts';
import { computeComparisons } from './steps/comparisons.ts';
import { computeNotes } from './steps/notes/notes.ts';
import { computeProse } from './steps/notes/prose.ts';
import { computeScripts } from './steps/notes/scripts.ts';
import { computePictures } from './steps/pictures/pictures.ts';
import { drawPlots } from './steps/plots/plots.ts';
import { openPool } from './steps/pool.ts';
import { computeRuns } from './steps/runs/runs.ts';
import { computeSeries } from './steps/series/series.ts';
import type { CodeDigests } from './store/code.ts';
import { recording } from './store/memo.ts';
import type { Store } from './store/store.ts';

/** How many of how many pictures are done. */
export type Progress = (done: number, of: number) => void;

/** What the front door has read and opened before it knew that there is work to do. */
export interface Ground {
  readonly root: string;
  readonly scope: Scope;
  readonly code: CodeDigests;
  readonly store: Store;
  readonly project: Project;
  /** Digest of the project's content. */
  readonly content: string;
  /** Told while pictures are made, which takes a second each. */
  readonly progress?: Progress;
}

/** Runs the chain and writes the manifest. Throws only on faults of the disk; what is wrong with the author's files is in `problems`. */
export async function chain({ root, scope, code, store: whole, project, content, progress }: Ground): Promise<Manifest> {
  const store = recording(whole);
  const { data, looked } = recordingLookups(dataFiles(root));
  const pool = openPool(root);
  try {
    const { facts: site, problems: siteProblems } = await siteFacts(root, store, project.config);
    const about = computeAbout(site, project);
    const archives = readOrigins(project.archives);
    const { register: stated, problems: registerProblems } = readRegister(about.others, data);
    const register = withLicences(stated, site.licence);
    const runs = await computeRuns({ root, store, pool, code: code.run, register });
    const comparisons = computeComparisons({ store, code: code.comparisons, register, runs });
    const attempts = computeAttempts({ store, root, code: code.attempts, register });
    const published = readStates(project.published);
    const recorded = recordedWords(register, published.states);
    const notes = computeNotes({ store, code: code.words, register, runs, comparisons, attempts, recorded });
    const plots = await drawPlots({ store, pool, code: code.plots, register, runs, comparisons, attempts, notes });
    const pictures = await computePictures({
      ...{ root, store, code: code.pictures, data, notes },
      archived: archivedPictures(archives.origins),
      ...(progress && { progress }),
    });
    const series = await computeSeries({ store, pool, code: code.series, runs });
    const gathered = await computeGathered({ store, pool, code, register, runs, series, comparisons });
    const copies = await printCopies({ store, pool, code }, project.copies);
    const sources = sourcesOf({ register, runs, attempts, content: project.content, code: code.figures });
    const held = protect({
      register,
      content: project.content,
      published,
      notes,
      plots,
      pictures,
      copies: namedCopies(project.copies),
      scripts: computeScripts(root, notes),
      sources,
    });
    const scripts = computeScripts(root, held.notes);
    const shares = await drawShares({
      store,
      pool,
      code: code.shares,
      site,
      register,
      runs,
      notes: held.notes,
      plots,
      gathered,
      copies,
    });
    // Idle threads would hold what they have loaded while archives are packed.
    await pool.close();
    const accuracy = computeAccuracy(store, code.accuracy);
    const prose = computeProse(register);
    const assembled = assemble({
      store,
      register,
      runs,
      comparisons,
      attempts,
      held,
      scripts,
      plots,
      pictures,
      series,
      gathered,
      copies,
      scope,
      code: code.all,
      site,
      shares,
      prose: prose.html,
      about: about.page,
      accuracy,
      archived: { project, states: published.states, origins: archives.origins, code: code.all },
    });
    const tried = [...attempts.values()];
    const digests = new Map([
      ...runs.logs,
      ...scripts.files,
      ...pictures.files,
      ...tried.map(({ attempts: { table }, sha256 }) => [table, sha256] as const),
    ]);
    const problems = [
      ...project.problems,
      ...siteProblems,
      ...about.problems,
      ...registerProblems,
      ...prose.problems,
      ...runs.problems,
      ...tried.flatMap((outcome) => outcome.problems),
      ...[...comparisons.values()].flatMap((outcome) => outcome.problems),
      ...held.notes.problems,
      ...held.problems,
      ...scripts.problems,
      ...plots.problems,
      ...pictures.problems,
      ...series.problems,
      ...gathered.problems,
      ...copies.problems,
      ...archives.problems,
      ...assembled.problems,
    ];
    const manifest: Manifest = {
      format: MANIFEST_FORMAT,
      scope,
      inputs: { code: code.all, content, data: lookedUp(looked, digests) },
      ...assembled,
      present: store.keep(JSON.stringify(held.present)),
      problems: eachOnce(problems.sort(compareProblems)),
      ...store.used(),
    };
    writeManifest(root, manifest);
    return manifest;
  } finally {
    await pool.close();
  }
}

/** Runs that share a table share what is wrong with it. */
function eachOnce(sorted: readonly Problem[]): Problem[] {
  return sorted.filter((problem, at) => at === 0 || compareProblems(problem, sorted[at - 1]!) !== 0);
}

function lookedUp(looked: ReadonlyMap<string, string>, logs: ReadonlyMap<string, string>): Manifest['inputs']['data'] {
  return [...looked]
    .sort(([a], [b]) => compareText(a, b))
    .map(([path, kind]) => ({ path, kind, ...(logs.has(path) && { sha256: logs.get(path)! }) }));
}
