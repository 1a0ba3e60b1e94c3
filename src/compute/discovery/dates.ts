/** Since when pages say what they say, by the authors' own dates and no clock. */
import type { Link, PageModel } from '../results.ts';

type Paged = readonly [path: string, model: PageModel];

/**
 * The newest date that stands behind each page, by path: a note's own or that of its newest correction, a run's or that of the newest
 * note that uses it. Pages that hang on no date (method, search) have none.
 */
export function pageDates(models: readonly Paged[]): Map<string, string> {
  const written = new Map(models.flatMap(([path, model]): [string, string][] => ownDate(path, model)));
  const newest = latest([...written.values()]);
  const dates = models.map(([path, model]): [string, string] => [path, dateOf({ path, written, newest }, model)]);
  return new Map(dates.filter(([, date]) => date !== ''));
}

interface Known {
  readonly path: string;
  /** Dates of notes and scripts, by the path of their page. */
  readonly written: ReadonlyMap<string, string>;
  /** The newest of them. */
  readonly newest: string;
}

/** For each kind of page its date; '' where it hangs on none. */
const DATES: { readonly [K in PageModel['kind']]: (known: Known, model: Extract<PageModel, { kind: K }>) => string } = {
  note: ({ path, written }) => written.get(path) ?? '',
  script: ({ path, written }) => written.get(path) ?? '',
  ledger: ({ written }, { of }) => written.get(of.path) ?? '',
  prompter: ({ written }, { script }) => written.get(script.path) ?? '',
  run: ({ written }, { date, notes }) => latest([date, ...datesOf(notes, written)]),
  device: ({ written }, { specimens, notes }) => {
    const runs = specimens.flatMap((specimen) => specimen.runs.map(({ date }) => date));
    return latest([...runs, ...datesOf(notes, written)]);
  },
  comparison: ({ written }, { runs, notes }) => latest([...runs.map(({ date }) => date), ...datesOf(notes, written)]),
  'record-copy': (_known, { date }) => date,
  home: ({ newest }) => newest,
  runs: ({ newest }) => newest,
  compare: ({ newest }) => newest,
  about: undated,
  accuracy: undated,
  guide: undated,
  method: undated,
  'not-found': undated,
  'record-copies': undated,
  search: undated,
  verify: undated,
};

/** Every kind of page that there is. */
export const PAGE_KINDS = Object.keys(DATES) as readonly PageModel['kind'][];

function undated(): string {
  return '';
}

function dateOf<K extends PageModel['kind']>(known: Known, model: Extract<PageModel, { kind: K }>): string {
  return DATES[model.kind as K](known, model);
}

function ownDate(path: string, model: PageModel): [string, string][] {
  if (model.kind !== 'note' && model.kind !== 'script') return [];
  return [[path, latest([model.date, ...model.corrections.map(({ since }) => since)])]];
}

function datesOf(links: readonly Link[], written: ReadonlyMap<string, string>): string[] {
  return links.map(({ path }) => written.get(path) ?? '');
}

/** The last of ISO dates; '' of none. */
function latest(dates: readonly string[]): string {
  return [...dates].sort().at(-1) ?? '';
}
