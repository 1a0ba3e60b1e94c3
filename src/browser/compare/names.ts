/** Chosen runs by names for readers: their titles, without the words that all of them share at either end. */
import type { Gathered } from '../../compute/models/gathered.ts';

/** Behind a word. */
const STOP = /[,;:]$/;

export interface Titled {
  readonly run: string;
  readonly title: string;
}

/**
 * A name for each run, by its id: "Rated" and "Fast" for "Rated setting, hour soak" and "Fast setting, hour soak". Whole titles where that
 * leaves nothing of one or tells two runs no longer apart; runs of one title have their ids behind it.
 */
export function namesOf(runs: readonly Titled[]): ReadonlyMap<string, string> {
  const titles = runs.map(({ title }) => title);
  const names = [shortened(titles), titles].find(tellApart) ?? runs.map(({ run, title }) => `${title} (${run})`);
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
  return !names.includes('') && new Set(names).size === names.length;
}

function shortened(titles: readonly string[]): string[] {
  const words = titles.map((title) => title.split(' '));
  const ahead = shared(words);
  const behind = shared(words.map((each) => each.slice(ahead).reverse()));
  return words.map((each) =>
    each
      .slice(ahead, each.length - behind)
      .join(' ')
      .replace(STOP, ''),
  );
}

/** How many words all begin with; of one run alone, none. */
function shared(all: readonly (readonly string[])[]): number {
  const [first = [], ...others] = all;
  if (others.length === 0) return 0;
  const ends = first.findIndex((word, at) => others.some((each) => each[at]?.replace(STOP, '') !== word.replace(STOP, '')));
  return ends < 0 ? first.length : ends;
}
