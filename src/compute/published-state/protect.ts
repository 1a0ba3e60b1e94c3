/**
 * Law 13, whole: published words don't change silently.
 *
 *   published states ─┐
 *   present states ───┴─► judgeNote, judgeScript ─► corrections, problems ─► pages, feed, text to paste
 *                     └─► keepAddresses ─► redirects, problems
 */

import { compareText, type Problem, warning } from '../../problem.ts';
import type { ContentFile, Note, Register } from '../../register/register.ts';
import { reachedRuns } from '../../register/resolved/reached-runs.ts';
import type { Correction, PublishedEntry, PublishedState } from '../../register/sealed/published-states.ts';
import { withPlainFront } from '../../words/front-words.ts';
import { broughtPages } from '../contents/brought-pages.ts';
import type { NamedCopy } from '../record-copies/copy.ts';
import type { NoteOutcome, Notes } from '../steps/notes/notes.ts';
import type { Scripts } from '../steps/notes/scripts.ts';
import type { Pictures } from '../steps/pictures/pictures.ts';
import type { PlotResult } from '../steps/plots/plot-task.ts';
import type { Plots } from '../steps/plots/plots.ts';
import { keepAddresses, type Redirect } from './addresses.ts';
import { type ShownCue, shownCues } from './cues.ts';
import { type AskedNumber, judgeNote } from './judge-note.ts';
import { BY_DATA, judgeScript, UNEXPLAINED } from './judge-script.ts';
import { keepIds } from './keep-ids.ts';
import { presentState, stateKey } from './present-state.ts';
import type { States } from './read-states.ts';
import { movedPages } from './redirects.ts';
import type { Sources } from './sources.ts';

/** A note or script as it would go out now. */
export interface PresentNote {
  readonly file: string;
  readonly state: PublishedState;
  /** Corrections that its publication would close. */
  readonly open: readonly Correction[];
  /** What stands against its publication besides the problems of the build. */
  readonly against: readonly Problem[];
  /** Corrections that it asks for: of a script those that have no reason of its author's. */
  readonly asked: readonly AskedNumber[];
  /** Of a script: what is on screen, and when. */
  readonly cues: readonly ShownCue[];
  /** Ids of its plots that are drawn otherwise than when it was published. */
  readonly redrawn: readonly string[];
}

interface Options {
  readonly register: Register;
  /** Files of content/ that the author writes. */
  readonly content: readonly ContentFile[];
  /** What content/published/ holds. */
  readonly published: States;
  readonly notes: Notes;
  readonly plots: Plots;
  readonly pictures: Pictures;
  /** Record copies that have a file. */
  readonly copies: readonly NamedCopy[];
  /** When each script says its numbers. */
  readonly scripts: Scripts;
  readonly sources: Sources;
}

export interface Protected {
  /** As before, but published scripts say what was recorded. */
  readonly notes: Notes;
  /** Of published notes and scripts, by `notes/<slug>`, newest first. */
  readonly corrections: ReadonlyMap<string, readonly Correction[]>;
  readonly redirects: readonly Redirect[];
  /** Ids of plots that are drawn otherwise than when their note or script was published, by `notes/<slug>`. */
  readonly redrawn: ReadonlyMap<string, ReadonlySet<string>>;
  readonly problems: readonly Problem[];
  /** How each note and script of the register would go out now, drafts included. */
  readonly present: readonly PresentNote[];
}

/** Holds every published note and script against its published state. */
export function protect({ register, content, published, notes, plots, pictures, copies, scripts, sources }: Options): Protected {
  const { states, problems: unreadable } = published;
  const judged = notes.outcomes.map((written) => {
    const { note } = written;
    const drawn = plots.results.get(stateKey(note)) ?? [];
    const plan = note.kind === 'script' ? scripts.plans.get(note.id) : undefined;
    const going = presentState(written, drawn, sources, plan, copies, broughtPages(written, register), pictures);
    const speaksFor = { of: `notes/${note.note ?? ''}`, plots: plots.results.get(`notes/${note.note ?? ''}`) ?? [] };
    const { outcome, present } = keepIds({ outcome: written, present: going }, stateOf(note, states));
    return {
      outcome,
      present,
      cues: plan === undefined ? [] : shownCues(plan, { of: stateKey(note), plots: drawn }, speaksFor),
      standing: standingOf(outcome, drawn, present, states),
      ...judge(outcome, present, states, unreadable, sources, register),
    };
  });
  const outcomes = judged.map(({ outcome, recorded }) => recorded ?? outcome);
  const recorded = ['record-copies', new Set(copies.map(({ path }) => path))] as const;
  const standing = new Map([...judged.flatMap((each) => each.standing), recorded]);
  const publishedNotes = outcomes.map(({ note }) => note).filter(({ status }) => status === 'published');
  const whole = [...states.values()].filter(
    ({ of }) => register.notes.has(of) || !content.some(({ path }) => path === `content/${of}.md`),
  );
  const stands = new Set([...standing.values()].flatMap((addresses) => [...addresses]));
  const moved = movedPages(register, (page) => stands.has(page));
  const redrawn = new Map(judged.map(({ present }) => [present.of, redrawnSince(states.get(present.of), present)]));
  const kept = keepAddresses(whole, standing, publishedNotes, new Set(moved.map(({ from }) => from)));
  return {
    notes: { outcomes, problems: outcomes.flatMap(({ written }) => written.problems) },
    corrections: new Map(judged.map(({ present, corrections }) => [present.of, corrections])),
    redirects: kept.redirects,
    redrawn,
    problems: [...unreadable, ...judged.flatMap(({ problems }) => problems), ...kept.problems],
    present: judged.map(({ outcome, present, open, against, asked, cues }) => ({
      file: outcome.note.file,
      state: present,
      open,
      against,
      asked,
      cues,
      redrawn: [...(redrawn.get(present.of) ?? [])],
    })),
  };
}

interface Verdict extends Pick<PresentNote, 'open' | 'against' | 'asked'> {
  /** As readers see them. */
  readonly corrections: readonly Correction[];
  readonly problems: readonly Problem[];
  /** Of a published script: what was recorded. */
  readonly recorded?: NoteOutcome;
}

const NOTHING: Verdict = { open: [], against: [], asked: [], corrections: [], problems: [] };

function judge(
  outcome: NoteOutcome,
  present: PublishedState,
  states: ReadonlyMap<string, PublishedState>,
  unreadable: readonly Problem[],
  sources: Sources,
  register: Register,
): Verdict {
  const { note, written } = outcome;
  const isOut = note.status === 'published';
  const state = stateOf(note, states);
  if (state === undefined) return isOut && unreadable.length === 0 ? { ...NOTHING, problems: [unprotected(note)] } : NOTHING;
  if (note.kind === 'script') {
    const { corrections: open, written: recorded } = judgeScript(
      note,
      written,
      state,
      present,
      dayOf(register),
      insteadIn(written, present),
    );
    const against = [...written.problems.filter((problem) => !recorded.problems.includes(problem)), ...(written.unborne ?? [])];
    const shown = newestFirst([...open, ...state.history]);
    return isOut
      ? {
          open,
          against,
          corrections: shown,
          problems: [],
          asked: open
            .filter(({ reason }) => reason === UNEXPLAINED)
            .map(({ number, was, is, since }) => ({ number, was, now: is, since })),
          recorded: { ...outcome, note: withPlainFront(note, recorded), written: recorded },
        }
      : { ...NOTHING, open };
  }
  const judged = judgeNote(note, state, present, { sources, dateOf: dayOf(register), insteadOf: insteadIn(written, present) });
  const { corrections: open, asked } = judged;
  const problems = judged.problems;
  // What is told with what to write for it is told once.
  const gone = goneAt(written, judged.told);
  const told = { ...written, problems: written.problems.filter((problem) => !isTold(problem, judged.told, gone)) };
  const against = problems.filter(({ severity }) => severity === 'error');
  const shown = newestFirst([...open, ...state.history]);
  if (!isOut) return { ...NOTHING, open, against };
  return { open, against, corrections: shown, problems, asked, recorded: { ...outcome, written: told } };
}

function isTold({ rule, place }: Problem, told: ReadonlySet<string>, gone: ReadonlySet<string>): boolean {
  return (BY_DATA.has(rule) && told.has(at(place))) || gone.has(at(place));
}

/** Where the problems stand of numbers that the data no longer gives, which are told. */
function goneAt({ absent = [] }: NoteOutcome['written'], told: ReadonlySet<string>): Set<string> {
  return new Set(absent.flatMap((each) => (told.has(at(each)) ? (each.at ?? []).map(at) : [])));
}

function at({ line, column }: { readonly line: number; readonly column: number }): string {
  return `${line}:${column}`;
}

/** The words that would be true, by entry of the present state. */
function insteadIn({ entries }: NoteOutcome['written'], present: PublishedState): (entry: PublishedEntry) => string | undefined {
  return (entry) => entries[present.entries.indexOf(entry)]?.instead;
}

function redrawnSince(then: PublishedState | undefined, { plots }: PublishedState): ReadonlySet<string> {
  const before = new Map(then?.plots.map(({ id, sha256 }) => [id, sha256]));
  return new Set(plots.filter(({ id, sha256 }) => before.has(id) && before.get(id) !== sha256).map(({ id }) => id));
}

/** The state of a note, also one under a name that it had before. */
export function stateOf(note: Note, states: ReadonlyMap<string, PublishedState>): PublishedState | undefined {
  const keys = [stateKey(note), ...(note.was ?? []).map(({ address }) => address.replace(/\/$/, ''))];
  return keys.map((key) => states.get(key)).find((state) => state !== undefined);
}

/** What published notes and scripts say, by their key. */
export function recordedWords(
  register: Register,
  states: ReadonlyMap<string, PublishedState>,
): Map<string, readonly PublishedEntry[]> {
  const out = [...register.notes.values()].filter(({ status }) => status === 'published');
  return new Map(out.map((note) => [stateKey(note), stateOf(note, states)?.entries ?? []]));
}

/** The last day of the runs behind a subject. */
function dayOf(register: Register): (subject: string) => string {
  return (subject) => {
    const [kind, id = ''] = subject.split('/');
    const comparison = kind === 'comparisons' ? register.comparisons.get(id) : undefined;
    const runs = comparison ? reachedRuns(comparison) : [id];
    return (
      runs
        .map((run) => register.runs.get(run)?.date ?? '')
        .sort()
        .at(-1) ?? ''
    );
  };
}

/** Of those of one day, the ones of the note come in its order. */
export function newestFirst<T extends { readonly since: string }>(corrections: readonly T[]): T[] {
  return corrections.toSorted((a, b) => compareText(b.since, a.since));
}

function unprotected(note: Note): Problem {
  return warning('unprotected', note.placeOf('status'), `nothing holds the published words of this ${note.kind}`, {
    expected: 'a published state, against which later changes are told',
    remedy: `run \`npm run publish -- ${note.file} --date ${note.date}\``,
  });
}

/** Addresses of a published note. One with errors, of its own or of its runs, has problems enough, and counts as whole. */
function standingOf(
  { note, written }: NoteOutcome,
  drawn: readonly (PlotResult | null)[],
  present: PublishedState,
  states: ReadonlyMap<string, PublishedState>,
): [string, ReadonlySet<string>][] {
  if (note.status !== 'published') return [];
  const broken = drawn.includes(null) || written.problems.some(({ severity }) => severity === 'error');
  const published = broken ? (states.get(present.of)?.addresses ?? []) : [];
  return [[present.of, new Set([...present.addresses, ...published])]];
}
