/** Chosen runs by names for readers: their titles, without the words that all of them share at either end. */
import type { Gathered } from '../../compute/models/gathered.ts';

/** Behind a word. */
const STOP = /[,;:]$/;
/** A number without a unit: "2.4", "4/8". */
const BARE = /^[^\p{L}%‰]*$/u;
/** Characters of the shortest name that readers can make something of: "off" and "on" need the words around them. */
const SHORTEST = 4;

export interface Titled {
  readonly run: string;
  readonly title: string;
}

/**
 * A name for each run, by its id: "Rated" and "Fast" for "Rated setting, hour soak" and "Fast setting, hour soak". A shared word
 * behind a number stays, as its unit: "2.4 GHz". Whole titles where that leaves a bare number, less than four characters or two runs of one
 * name; runs of one title have their ids behind it.
 */
export function namesOf(runs: readonly Titled[]): ReadonlyMap<string, string> {
  const titles = runs.map(({ title }) => title);
  const short = shortened(titles);
  const choices = short.every(readsAlone) ? [short, titles] : [titles];
  const names = choices.find(tellApart) ?? runs.map(({ run, title }) => `${title} (${run})`);
  return new Map(runs.map(({ run }, at) => [run, names[at]!]));
}

/** What is gathered, with names in the place of the ids that runs have as aliases. */
export function underNames(gathered: Gathered, names: ReadonlyMap<string, string>): Gathered {
  const nameOf = (id: string) => names.get(id) ?? id;
  const named = Object.entries(gathered.figures).map(([address, figure]) => {
    const run = figure.of?.run;
    return [address, typeof run === 'string' ? { ...figure, of: { ...figure.of, run: nameOf(run) } } : figure] as const;
  });
  return {
    ...gathered,
    reference: nameOf(gathered.reference),
    runs: gathered.runs.map((run) => ({ ...run, alias: nameOf(run.run) })),
    figures: Object.fromEntries(named),
  };
}

function tellApart(names: readonly string[]): boolean {
  return new Set(names).size === names.length;
}

function readsAlone(name: string): boolean {
  return [...name].length >= SHORTEST && !BARE.test(name);
}

function shortened(titles: readonly string[]): string[] {
  const words = titles.map((title) => title.split(' '));
  const ahead = shared(words);
  const alike = shared(words.map((each) => each.slice(ahead).reverse()));
  const apart = words.map((each) => each.slice(ahead, each.length - alike));
  const withUnit = alike > 0 && apart.every(({ length }) => length > 0) && apart.some((each) => needsUnit(each.at(-1)!));
  const behind = withUnit ? alike - 1 : alike;
  return words.map((each) =>
    each
      .slice(ahead, each.length - behind)
      .join(' ')
      .replace(STOP, ''),
  );
}

/** A number with a stop behind it has no unit there. */
function needsUnit(word: string): boolean {
  return BARE.test(word) && !STOP.test(word);
}

/** How many words all begin with; of one run alone, none. */
function shared(all: readonly (readonly string[])[]): number {
  const [first = [], ...others] = all;
  if (others.length === 0) return 0;
  const ends = first.findIndex((word, at) => others.some((each) => each[at]?.replace(STOP, '') !== word.replace(STOP, '')));
  return ends < 0 ? first.length : ends;
}
