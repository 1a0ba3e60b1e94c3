/** The pictures by which notes, comparisons and record copies are shown where somebody links to them: their lead charts. */
import type { Register } from '../../register/register.ts';
import type { AllGathered } from '../comparison/compute-gathered.ts';
import { bareAddress } from '../contents/bare-address.ts';
import { notePath } from '../contents/note-path.ts';
import { comparisonPath, type DrawnShare } from '../contents/site-contents.ts';
import type { SiteFacts } from '../project/site-facts.ts';
import { copyPath } from '../record-copies/copy.ts';
import type { PrintedCopies } from '../record-copies/print-copies.ts';
import type { ComparisonModel } from '../results.ts';
import type { Notes } from '../steps/notes/notes.ts';
import { leadOf } from '../steps/plots/pictured-plots.ts';
import type { PlotResult } from '../steps/plots/plot-task.ts';
import type { Plots } from '../steps/plots/plots.ts';
import type { Pool } from '../steps/pool.ts';
import type { Runs } from '../steps/runs/runs.ts';
import { shareTask } from '../steps/shares/share-task.ts';
import type { Store } from '../store/store.ts';

interface Options {
  readonly store: Store;
  readonly pool: Pool;
  /** Digest of the code that draws them. */
  readonly code: string;
  readonly site: SiteFacts;
  readonly register: Register;
  readonly runs: Runs;
  readonly notes: Pick<Notes, 'outcomes'>;
  readonly plots: Plots;
  readonly gathered: AllGathered;
  readonly copies: PrintedCopies;
}

/** A page with the plot that it is shown by. */
interface Shared {
  readonly path: string;
  /** '' for the plot's own. */
  readonly title: string;
  readonly plot: PlotResult | null | undefined;
  readonly devices: readonly string[];
  readonly invented: boolean;
  readonly date: string;
}

/** Those of a site with an address, by the paths of their pages: without one no page could name its picture. */
export async function drawShares(options: Options): Promise<ReadonlyMap<string, DrawnShare>> {
  const { store, pool, code, site, gathered, copies } = options;
  if (site.address === '') return new Map();
  const all: Shared[] = [
    ...sharedNotes(options),
    ...[...gathered.results].map(([id, { own, plots }]) => sharedComparison(comparisonPath(id), own, plots)),
    ...copies.copies.map(({ id, date, own, plots }) => ({ ...sharedComparison(copyPath(id), own, plots), date })),
  ];
  const drawn = all.map(async ({ path, title, plot, devices, invented, date }): Promise<[string, DrawnShare][]> => {
    const still = plot?.stills[0];
    if (!still) return [];
    const of = [...(devices.length > 0 ? [`${devices.join(', ')}${invented ? ' (invented)' : ''}`] : []), date].join(', ');
    const foot = { of, address: bareAddress(site.address, path) };
    const { png } = await pool.run(store, shareTask(code, { title: title || still.title, foot, svg: still.svg }));
    return [[path, { png, alt: sentencesWithin(`${still.title}. ${still.alt}`, LONGEST_ALT) }]];
  });
  return new Map((await Promise.all(drawn)).flat());
}

/** Readers of links show no more of a text alternative than this: common practice, no source. */
const LONGEST_ALT = 400;

/** Whole sentences, as many as fit, at least one. */
function sentencesWithin(text: string, most: number): string {
  const [first = '', ...more] = text.split(/(?<=\.) (?=\p{Lu})/u);
  let told = first;
  for (const sentence of more) {
    if (told.length + 1 + sentence.length > most) break;
    told += ` ${sentence}`;
  }
  return told;
}

function sharedNotes({ register, runs, notes, plots }: Options): Shared[] {
  return notes.outcomes.flatMap(({ note, written, reaches }): Shared[] => {
    const lead = note.kind === 'note' ? leadOf(written) : undefined;
    if (lead === undefined) return [];
    const ids = [...new Set(reaches.map((id) => runs.outcomes.get(id)!.run.device))];
    const devices = ids.flatMap((id) => register.devices.get(id) ?? []);
    return [
      {
        path: notePath({ note }),
        title: '',
        plot: plots.results.get(`notes/${note.id}`)?.[lead],
        devices: devices.map(({ title }) => title),
        invented: devices.some((device) => device.invented),
        date: note.date,
      },
    ];
  });
}

function sharedComparison(path: string, { title, devices, marks, runs }: ComparisonModel, plots: readonly PlotResult[]): Shared {
  const days = runs.map(({ date }) => date).sort();
  return {
    path,
    title,
    plot: plots.find(({ stills }) => stills.length > 0),
    devices: devices.map((device) => device.title),
    invented: marks.invented,
    date: days.at(-1) ?? '',
  };
}
