/** What a count of things can rest on: "four settings", "two specimens", "the three runs". */
import type { Subject } from '../../words/written.ts';
import type { ContextWord } from './context.ts';
import type { OwnWords } from './rank.ts';

export interface Count {
  readonly is: string;
  readonly title: string;
  readonly score: number;
}

/** The thing counted, by the beginning of its word. */
const THINGS: readonly (readonly [
  word: RegExp,
  of: (groups: readonly Group[], subjects: ReadonlyMap<string, Subject>) => Count[],
])[] = [
  [
    /\bsettings?\b/,
    (groups) =>
      groups.map(({ list, title, score }) => ({
        is: `kinds(${list}.setting.clock)`,
        title: `different clock settings of ${title}`,
        score,
      })),
  ],
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
];

/** Counts of the thing that the words name, over every run, over those of each comparison, and over those that the context names. */
export function countsOf(
  words: string,
  context: readonly ContextWord[],
  { subjects, words: own }: { readonly subjects: ReadonlyMap<string, Subject>; readonly words: OwnWords },
): Count[] {
  const thing = THINGS.find(([word]) => word.test(words.toLowerCase()));
  return thing ? thing[1](groupsOf(context, subjects, own), subjects) : [];
}

interface Group {
  /** As an expression has it: `*`, `[rated fast]`. */
  readonly list: string;
  readonly title: string;
  readonly score: number;
}

function groupsOf(context: readonly ContextWord[], subjects: ReadonlyMap<string, Subject>, own: OwnWords): Group[] {
  const runs = [...subjects].filter(([, { kind }]) => kind === 'run').map(([alias]) => alias);
  const named = runs.filter((alias) => context.some(({ word }) => (own.get(alias) ?? [alias]).includes(word)));
  const compared = [...subjects.values()].filter(({ kind }) => kind === 'comparison').map((subject) => aliasesOf(subject, runs));
  const lists = [runs, ...compared, ...(named.length > 1 ? [named] : [])];
  return lists
    .filter((list, index) => list.length > 1 && lists.findIndex((each) => each.join() === list.join()) === index)
    .map((list, index) => ({
      list: list.length === runs.length ? '*' : `[${list.join(' ')}]`,
      title: list.length === runs.length ? 'every run of the note' : list.join(', '),
      score: -index / 10,
    }));
}

/** The runs of a comparison, by the note's aliases, in the order of the note. */
function aliasesOf({ figures }: Subject, runs: readonly string[]): string[] {
  const named = new Set<unknown>([...figures.values()].flatMap(({ of }) => [of?.run, of?.reference]));
  return runs.filter((alias) => named.has(alias));
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
