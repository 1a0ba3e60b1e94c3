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
  const dates = models.map(([path, model]): [string, string] => {
    if (model.kind === 'run') return [path, latest([model.date, ...datesOf(model.notes, written)])];
    if (model.kind === 'device') {
      const runs = model.specimens.flatMap((specimen) => specimen.runs.map(({ date }) => date));
      return [path, latest([...runs, ...datesOf(model.notes, written)])];
    }
    if (model.kind === 'record-copy') return [path, model.date];
    if (model.kind === 'comparison') {
      const runs = model.runs.map(({ date }) => date);
      return [path, latest([...runs, ...datesOf(model.notes, written)])];
    }
    if (model.kind === 'ledger') return [path, written.get(model.of.path) ?? ''];
    if (model.kind === 'prompter') return [path, written.get(model.script.path) ?? ''];
    return [path, ['home', 'runs', 'compare'].includes(model.kind) ? newest : (written.get(path) ?? '')];
  });
  return new Map(dates.filter(([, date]) => date !== ''));
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
