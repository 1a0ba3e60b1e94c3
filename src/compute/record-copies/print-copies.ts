/** Each record copy printed from itself alone, once: what is stored of it is found again by its bytes and the code. */
import { compareText, error, type Problem } from '../../problem.ts';
import type { ContentFile } from '../../register/register.ts';
import { COPIES, type RecordedComparison } from '../../register/sealed/record-copies.ts';
import { isProblem } from '../../register/sealed/sealed-file.ts';
import { comparisonModel } from '../comparison/comparison-page.ts';
import { drawCompared } from '../comparison/compute-gathered.ts';
import type { FileBeside } from '../models/data-file.ts';
import type { ComparisonModel } from '../results.ts';
import { plotFiles } from '../steps/plots/plot-files.ts';
import type { PlotResult } from '../steps/plots/plot-task.ts';
import type { Pool } from '../steps/pool.ts';
import { isDamage, systemFault } from '../store/damage.ts';
import { digestOf } from '../store/digest.ts';
import { jsonText } from '../store/json-text.ts';
import { memoAsync, stored } from '../store/memo.ts';
import type { Store } from '../store/store.ts';
import { copyPath } from './copy.ts';
import { type ReadCopy, readCopy } from './read-copies.ts';

/** A copy as its page prints it. */
export interface PrintedCopy {
  /** Covers its file and all code. */
  readonly key: string;
  readonly id: string;
  readonly date: string;
  readonly title: string;
  /** Id of the comparison that it was made from. */
  readonly comparison: string;
  readonly runs: readonly { readonly run: string; readonly title: string }[];
  /** Names of the figures whose methods it knows. */
  readonly methods: readonly string[];
  /** SHA-256 of the file's own bytes. */
  readonly sha256: string;
  readonly own: ComparisonModel;
  readonly plots: readonly PlotResult[];
  /** The file itself, its figures, the downloads of its plots. */
  readonly files: readonly FileBeside[];
}

export interface PrintedCopies {
  /** Newest first, those of one day by id. */
  readonly copies: readonly PrintedCopy[];
  readonly problems: readonly Problem[];
}

interface Ground {
  readonly store: Store;
  readonly pool: Pool;
  /** Digests of all code, and of what draws comparisons. */
  readonly code: { readonly all: string; readonly compared: string };
}

/** Prints all copies. One that is not as it was written, or cannot be printed, is a problem of its file, and none of the site. */
export async function printCopies(ground: Ground, files: readonly ContentFile[]): Promise<PrintedCopies> {
  const all = await Promise.all(files.map((file) => printCopy(ground, file)));
  const copies = all.filter((printed): printed is PrintedCopy => !isProblem(printed));
  return {
    copies: copies.sort((a, b) => compareText(b.date, a.date) || compareText(a.id, b.id)),
    problems: all.filter(isProblem),
  };
}

/** What a copy records, from the store. */
export function recordOf(store: Store, { files }: PrintedCopy): RecordedComparison {
  return (JSON.parse(new TextDecoder().decode(store.bytes(files[0]!.blob))) as { record: RecordedComparison }).record;
}

async function printCopy(ground: Ground, file: ContentFile): Promise<PrintedCopy | Problem> {
  const key = digestOf(['record-copy', ground.code.all, file.path, file.text]);
  const before = stored<PrintedCopy>(ground.store, key);
  if (before !== undefined) return before;
  const read = readCopy(file);
  if (isProblem(read)) return read;
  try {
    return await memoAsync(ground.store, key, (store) => printedFrom({ ...ground, store }, key, read));
  } catch (thrown) {
    if (isDamage(thrown) || systemFault(thrown) !== undefined) throw thrown;
    return unprintable(file.path, thrown);
  }
}

/** Nothing in it hangs on what the site has besides, links included. */
async function printedFrom({ store, pool, code }: Ground, key: string, { copy, text, sha256 }: ReadCopy): Promise<PrintedCopy> {
  const { id, date, record } = copy;
  const path = copyPath(id);
  const drawn = await drawCompared({ store, pool, code: code.compared }, record);
  const alone = { body: '', status: 'published', notes: [], copies: [], has: () => false } as const;
  return {
    key,
    id,
    date,
    title: record.title,
    comparison: record.id,
    runs: record.runs.map(({ run, title }) => ({ run, title })),
    methods: Object.keys(record.methods),
    sha256,
    own: comparisonModel(record, drawn, { path, ...alone }),
    plots: drawn.plots,
    files: [
      { path: `${path}record.json`, blob: store.keep(text), data: 'record copy' },
      { path: `${path}figures.json`, blob: store.keep(figuresText(id, record)), data: 'figures' },
      ...plotFiles(path, drawn.plots),
    ],
  };
}

/** As the figures of a comparison are published. */
function figuresText(id: string, { id: comparison, sources, figures, reference, runs }: RecordedComparison): string {
  const aliases = Object.fromEntries(runs.map(({ alias, run }) => [alias, run]));
  return jsonText({ format: 1, comparison, figures, record: id, reference, runs: aliases, sources });
}

function unprintable(file: string, thrown: unknown): Problem {
  const found = `this record copy could not be printed: ${thrown instanceof Error ? thrown.message : String(thrown)}`;
  return error('fault', { file, line: 1, column: 1 }, found, {
    remedy: `if \`${COPIES.command}\` wrote it here, this is a fault of the program: please report it; else take the file out`,
  });
}
