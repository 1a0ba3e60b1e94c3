/** What a count of things can rest on: "four settings", "two specimens", "the three runs". */

import { OUTCOMES as ENDS_OF_ATTEMPTS } from '../../figures/stability/ladder.ts';
import type { Sentence } from '../../words/directives/sentence-order.ts';
import { HAPPENED, OUTCOMES } from '../../words/rules/beside-number.ts';
import { HAPPENINGS_ALONE } from '../../words/stated/happenings.ts';
import type { Stated } from '../../words/stated/read.ts';
import type { Subject } from '../../words/written.ts';
import type { ContextWord } from './context.ts';
import type { OwnWords } from './rank.ts';

export interface Count {
  readonly is: string;
  readonly title: string;
  readonly score: number;
}

/** "Three passed": what came of so many. */
const CAME_OF = new RegExp(String.raw`\b(?:${OUTCOMES})\b`);

/** "Two hangs", "a single restart": what happened, by its noun. */
const HAPPENING = new RegExp(String.raw`\b${HAPPENINGS_ALONE}`, 'u');

/** The thing counted, by its word. */
const THINGS: readonly (readonly [
  word: RegExp,
  of: (groups: readonly Group[], subjects: ReadonlyMap<string, Subject>, named: (alias: string) => boolean) => Count[],
])[] = [
  [
    /\b(?:settings?|combinations?|clocks?)\b/,
    (groups, subjects) => [
      ...groups.map(({ list, title, score }) => ({
        is: `kinds(${list}.setting.clock)`,
        title: `different clock settings of ${title}`,
        score,
      })),
      ...triedOf(subjects),
    ],
  ],
  [/\b(?:attempts?|tries|rungs?)\b/, (_, subjects) => triedOf(subjects)],
  [CAME_OF, (_, subjects) => triedOf(subjects)],
  [/\brepeats?\b/, (groups, subjects) => [...sameRepeats(groups, subjects), ...allRepeats(subjects)]],
  [
    /\b(?:runs?|soaks?)\b/,
    (groups) => groups.map(({ list, title, score }) => ({ is: `count(${list}.setting.clock)`, title: `runs: ${title}`, score })),
  ],
  [
    /\bspecimens?\b/,
    (groups) =>
      groups.map(({ list, title, score }) => ({ is: `kinds(${list}.specimen)`, title: `different specimens of ${title}`, score })),
  ],
  [/\b(?:tests?|benchmarks?)\b/, (_, subjects) => eachWith(subjects, 'score')],
  [/\bspots?\b/, (_, subjects) => eachWith(subjects, 'surface')],
  [/\b(?:events?|throttles|throttling)\b/, (_, subjects, named) => eventsOf(subjects, named)],
  [HAPPENING, (_, subjects) => triedOf(subjects)],
];

/** Counts of the thing that some words name, over every run, over those of each comparison, and over those that the context names. */
export function countsOf(
  counted: string,
  context: readonly ContextWord[],
  { subjects, words: own }: { readonly subjects: ReadonlyMap<string, Subject>; readonly words: OwnWords },
): Count[] {
  const thing = THINGS.find(([word]) => word.test(counted));
  const named = (alias: string) => context.some(({ word }) => (own.get(alias) ?? [alias]).includes(word));
  const all = thing ? thing[1](groupsOf(context, subjects, own), subjects, named) : [];
  const outcome = outcomeOf(counted);
  // What came of an attempt is not what happened to a run that the sentence names.
  const ofRun = outcome !== undefined && !ofAttempts(context, subjects) && runsNamed(context, subjects, own).length > 0;
  const found = all.filter(({ is }) => outcome === undefined || (!ofRun && is.endsWith(`.outcome.${outcome}`)));
  return found.filter(({ is }, index) => found.findIndex((each) => each.is === is) === index);
}

/** Words that an outcome of attempts has beside its own. */
const ALSO: Readonly<Record<string, string>> = { hang: 'hung', reboot: 'restart' };

/** The outcome that words of what happened mean: "restarted" of "two restarts"; null where no attempt ends so, as none ends in a crash. */
function outcomeOf(counted: string): string | null | undefined {
  const said = (CAME_OF.exec(counted) ?? HAPPENING.exec(counted))?.[0].replace(/(?:ed|e?s)$/, '');
  if (said === undefined || said.startsWith('throttle ')) return undefined;
  return ['hung', ...ENDS_OF_ATTEMPTS].find((outcome) => outcome.startsWith(ALSO[said] ?? said)) ?? null;
}

/** Whether a sentence speaks of attempts on a specimen. */
function ofAttempts(context: readonly ContextWord[], subjects: ReadonlyMap<string, Subject>): boolean {
  return context.some(
    ({ word, own }) =>
      own && (/^(?:rungs?|attempts?|tries|tried|settings|combinations)$/.test(word) || subjects.get(word)?.kind === 'attempts'),
  );
}

export interface Group {
  /** As an expression has it: `*`, `[rated fast]`. */
  readonly list: string;
  readonly aliases: readonly string[];
  readonly title: string;
  readonly score: number;
}

export function groupsOf(context: readonly ContextWord[], subjects: ReadonlyMap<string, Subject>, own: OwnWords): Group[] {
  const runs = [...subjects].filter(([, { kind }]) => kind === 'run').map(([alias]) => alias);
  const named = runsNamed(context, subjects, own);
  const compared = [...subjects.values()].filter(({ kind }) => kind === 'comparison').map((subject) => aliasesOf(subject, runs));
  const lists = [runs, ...compared, ...(named.length > 1 ? [named] : [])];
  return lists
    .filter((list, index) => list.length > 1 && lists.findIndex((each) => each.join() === list.join()) === index)
    .map((list, index) => ({
      list: list.length === runs.length ? '*' : `[${list.join(' ')}]`,
      aliases: list,
      title: list.length === runs.length ? 'every run of the note' : list.join(', '),
      score: -index / 10,
    }));
}

/** Aliases of the runs that the words around a number name. */
function runsNamed(context: readonly ContextWord[], subjects: ReadonlyMap<string, Subject>, own: OwnWords): string[] {
  const runs = [...subjects].filter(([, { kind }]) => kind === 'run').map(([alias]) => alias);
  return runs.filter((alias) => context.some(({ word }) => (own.get(alias) ?? [alias]).includes(word)));
}

/** The runs of a comparison, by the note's aliases, in the order of the note. */
function aliasesOf({ figures }: Subject, runs: readonly string[]): string[] {
  const named = new Set<unknown>([...figures.values()].flatMap(({ of }) => [of?.run, of?.reference]));
  return runs.filter((alias) => named.has(alias));
}

/** "Two of the six runs", "one of the runs". */
const OF_SO_MANY = /^\s+(?:out\s+)?of\s+(?:(?:the|our|all|these|those)\s+)*(\d+|\p{Ll}+)(?:\s+(\p{L}+))?/u;

/**
 * The words that say what a number counts, in lower case: only a count can hold it then. They are its own ("four settings"), or stand behind it
 * ("two of the six runs", "three passed"). Undefined for a number that counts nothing.
 */
export function countedBy(words: string, { said, unit }: Stated, { before, after }: Sentence): string | undefined {
  const [side] = said.sides;
  if (side.unit?.kind === 'times' && side.amount.place >= 0 && /\b(?:repeated|measured|tested|run|ran)\s+$/i.test(before))
    return 'repeats';
  if (side.unit?.kind === 'times' && side.amount.place >= 0 && HAPPENED.test(before)) return happened(before);
  if (/^\W*(?:(?:only|just|exactly)\s+)?once\W*$/i.test(words)) return happened(before);
  const counts = unit === '1' && said.sides.length === 1 && side.unit === undefined && side.amount.part === undefined;
  if (!counts || side.amount.place < 0) return undefined;
  const rest = words.slice(side.end).toLowerCase();
  // "812 runs/s" is a rate.
  if (/^\s*\p{L}+\s*(?:\/|per\b)/u.test(rest)) return undefined;
  if (isThing(rest) || /^[ -]*(?:events?|times)\b/.test(rest)) return rest;
  if (!/^(?:\s+of\s+(?:them|these|those))?\s*$/.test(rest)) return undefined;
  const low = after.toLowerCase();
  const behind = OF_SO_MANY.exec(low)?.slice(1) ?? [/^\s+(\p{L}+)/u.exec(low)?.[1]];
  return behind.find((word) => word !== undefined && isThing(word));
}

/** What "once" counts: "throttled once", "restarted only once". */
function happened(before: string): string | undefined {
  const verb = /\b(\p{Ll}+(?:\s+in)?)\s+(?:(?:only|just|exactly)\s+)?$/u.exec(before)?.[1] ?? '';
  if (/^(?:throttled|intervened|stepped in)$/.test(verb)) return 'throttle events';
  return CAME_OF.test(verb) ? verb : undefined;
}

function isThing(words: string): boolean {
  return THINGS.some(([word]) => word.test(words));
}

/** How many settings were tried on a specimen, and how many ended in each way. */
function triedOf(subjects: ReadonlyMap<string, Subject>): Count[] {
  const tried = [...subjects].filter(([, { kind }]) => kind === 'attempts');
  return tried.flatMap(([alias, { facts, title }]) =>
    [...facts].map(([key], index) => ({
      is: `${alias}.${key}`,
      title: key === 'tried' ? `settings tried (${title})` : `settings tried that ${ENDED(key)} (${title})`,
      score: -0.2 - index / 20,
    })),
  );
}

const ENDED = (key: string) => key.slice('outcome.'.length).replaceAll('"', '');

/** "Every benchmark five repeats": one number that all tests of all runs share. */
function sameRepeats(groups: readonly Group[], subjects: ReadonlyMap<string, Subject>): Count[] {
  return groups.flatMap(({ list, aliases, title, score }) => {
    const scored = aliases.filter((alias) => hasRepeats(subjects.get(alias)));
    const own = scored.length === aliases.length ? list : `[${scored.join(' ')}]`;
    return scored.length < 2
      ? []
      : [{ is: `same(${own}.repeats.*)`, title: `repeats of every test: ${title}`, score: score - 0.05 }];
  });
}

/** "Twenty repeats in all": those of all tests of a run together. */
function allRepeats(subjects: ReadonlyMap<string, Subject>): Count[] {
  return [...subjects]
    .filter(([, subject]) => hasRepeats(subject))
    .flatMap(([alias, { title }], index) => [
      { is: `sum(${alias}.repeats.*)`, title: `repeats of all tests together (${title})`, score: -0.3 - index / 10 },
      { is: `same(${alias}.repeats.*)`, title: `repeats of every test (${title})`, score: -0.3 - index / 10 },
    ]);
}

function hasRepeats(subject: Subject | undefined): boolean {
  return [...(subject?.facts.keys() ?? [])].some((key) => key.startsWith('repeats.'));
}

/** How often each run throttled, the runs that the sentence names first. */
function eventsOf(subjects: ReadonlyMap<string, Subject>, named: (alias: string) => boolean): Count[] {
  return [...subjects]
    .filter(([, { figures }]) => figures.has('throttle_events'))
    .map(([alias, { title }], index) => ({
      is: `${alias}.throttle_events`,
      title: `throttle events (${title})`,
      score: (named(alias) ? 1 : 0) - index / 10,
    }));
}

/** The number of scores or spots of each run that has some. */
function eachWith(subjects: ReadonlyMap<string, Subject>, name: string): Count[] {
  return [...subjects]
    .filter(([, { figures }]) => [...figures.keys()].some((key) => key.startsWith(`${name}.`)))
    .map(([alias, { title }], index) => ({
      is: `count(${alias}.${name}.*)`,
      title: `${name === 'score' ? 'tests' : 'spots'} of ${title}`,
      score: -index / 10,
    }));
}
