/** Published addresses: none vanishes, each leads somewhere. */
import { error, type Problem } from '../../problem.ts';
import type { Note } from '../../register/register.ts';
import type { PublishedState } from '../../register/sealed/published-states.ts';
import { stateKey } from './present-state.ts';
import { statePath } from './read-states.ts';

/** An address that leads to a page now, or where a file's bytes now stand elsewhere. */
export interface Redirect {
  readonly from: string;
  /** Of a page, or of a file of the same kind. */
  readonly to: string;
}

export interface KeptAddresses {
  readonly redirects: readonly Redirect[];
  readonly problems: readonly Problem[];
}

/** What the site has: addresses of published notes now, by their key. */
export type Standing = ReadonlyMap<string, ReadonlySet<string>>;

/**
 * Compares published addresses with those that stand; the earlier addresses of notes lead on. `moved`: former addresses of runs, devices
 * and comparisons that lead on already.
 */
export function keepAddresses(
  states: Iterable<PublishedState>,
  standing: Standing,
  notes: readonly Note[],
  moved: ReadonlySet<string> = new Set(),
): KeptAddresses {
  const all = new Set([...standing.values(), moved].flatMap((addresses) => [...addresses]));
  const known = new Set<string>();
  const redirects: Redirect[] = [];
  const problems: Problem[] = [];
  for (const state of states) {
    for (const address of state.addresses) {
      const again = known.has(address);
      known.add(address);
      if (all.has(address) || again) continue;
      const to = leadsTo(address, notes, standing);
      if (to !== undefined) redirects.push({ from: address, to });
      else problems.push(...vanished(state, address, notes));
    }
  }
  return {
    redirects: [...redirects, ...promised(notes, all, known, standing)],
    problems: [...problems, ...stillStanding(notes, standing)],
  };
}

/** Earlier addresses at which the site has a page: whoever follows them would never be led on. */
function stillStanding(notes: readonly Note[], standing: Standing): Problem[] {
  const pages = new Set([...standing.values()].flatMap((addresses) => [...addresses]));
  return notes.flatMap((note) =>
    (note.was ?? [])
      .filter(({ address }) => address.endsWith('/') && pages.has(address))
      .map(({ address, place }) =>
        error('standing-address', place, `\`was\` names \`${address}\`, at which a page of this site stands`, {
          expected: 'an address at which nothing stands any more',
          remedy: 'remove this line: an address leads to one page',
        }),
      ),
  );
}

/** Earlier addresses of a time before the first published state; of a page of the same kind, the pages below it too. */
function promised(notes: readonly Note[], all: ReadonlySet<string>, known: ReadonlySet<string>, standing: Standing): Redirect[] {
  return notes.flatMap((note) => {
    const page = `${stateKey(note)}/`;
    const below = [...(standing.get(stateKey(note)) ?? [])].filter((address) => address.startsWith(page) && address.endsWith('/'));
    const redirects = (note.was ?? [])
      .filter(({ address }) => address.endsWith('/'))
      .flatMap(({ address }) =>
        address.startsWith(page.slice(0, page.indexOf('/') + 1))
          ? [...new Set([page, ...below])].map((to) => ({ from: address + to.slice(page.length), to }))
          : [{ from: address, to: page }],
      );
    return redirects.filter(({ from }) => !all.has(from) && !known.has(from));
  });
}

/** A page leads to the note that names it, a file of such a page to the same file of that note where it has one. */
function leadsTo(address: string, notes: readonly Note[], standing: Standing): string | undefined {
  for (const note of notes) {
    const named = (note.was ?? []).find(({ address: was }) => covers(was, address));
    if (named === undefined) continue;
    const page = `${stateKey(note)}/`;
    const same = named.address.endsWith('/') ? page + address.slice(named.address.length) : page;
    return standing.get(stateKey(note))?.has(same) ? same : page;
  }
  return undefined;
}

/** `notes/old/` covers all below it, `notes/x/plots/trace` the three files of that plot. */
function covers(was: string, address: string): boolean {
  return was.endsWith('/') ? address.startsWith(was) : address === was || address.replace(/\.(?:svg|png|csv)$/, '') === was;
}

/** A page tells for all below it, a plot's drawing for its other files. */
function vanished(state: PublishedState, address: string, notes: readonly Note[]): Problem[] {
  if (address.startsWith('record-copies/')) return [withoutCopy(state, address)];
  const page = `${state.of}/`;
  const note = notes.find((each) => stateKey(each) === state.of);
  // Of a note that is gone itself, its own address is told.
  if (/^(?:runs|devices|comparisons)\//.test(address)) return note === undefined ? [] : [withoutPage(state, address)];
  if (address === page) {
    const found = `the published address ${page} would vanish`;
    const place = { file: statePath(state.of), line: 1, column: 1 };
    return [
      error('vanished-address', place, found, {
        expected: `a published ${state.of.startsWith('scripts/') ? 'script' : 'note'} there, or one that takes its place`,
        remedy: `write \`was: ${page}\` into the front matter of the note that readers should find instead`,
      }),
    ];
  }
  if (note === undefined || !address.endsWith('.svg')) return [];
  const plot = address.slice(0, -'.svg'.length);
  return [
    error('vanished-address', note.placeOf('was'), `the published plot ${plot} would vanish`, {
      expected: 'a plot of that id, or `was` in the file that its address leads to now',
      remedy: `give a plot the attribute \`id=${plot.slice(plot.lastIndexOf('/') + 1)}\`, or write \`was: ${plot}\` into the front matter: its address then leads to the page`,
    }),
  ];
}

function withoutPage(state: PublishedState, address: string): Problem {
  const place = { file: statePath(state.of), line: 1, column: 1 };
  const kind = address.slice(0, address.indexOf('/') - 1);
  return error('vanished-address', place, `the published address ${address} would vanish`, {
    expected: `a ${kind} of that id which a published note uses, or one that takes its place`,
    remedy: `write \`was: ${address}\` into the front matter of the ${kind}, or else of the note, that readers should find instead`,
  });
}

function withoutCopy(state: PublishedState, address: string): Problem {
  const place = { file: statePath(state.of), line: 1, column: 1 };
  return error('vanished-address', place, `the published record copy ${address} would vanish`, {
    expected: `content/${address.replace(/\/$/, '.json')}`,
    remedy: 'bring back what was committed',
  });
}
