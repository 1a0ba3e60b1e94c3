/** Models of the pages of record copies: each copy as it prints for ever, and beside it what changed since. */
import type { GatheredRun } from '../compared/gathered.ts';
import { changedSince, type Living } from '../record-copies/changed-since.ts';
import type { CopyRow } from '../record-copies/models.ts';
import { copyPath, type PrintedCopy } from '../record-copies/print-copies.ts';
import type { RecordCopiesModel, RecordCopyModel } from '../results.ts';
import { comparisonPath } from './parts.ts';

/** What the site has besides the copies. */
export interface Beside {
  /** Comparisons that it shows, by id. */
  readonly comparisons: ReadonlyMap<string, NonNullable<Living['comparison']>>;
  /** Runs that it shows, by id. */
  readonly runs: ReadonlyMap<string, GatheredRun>;
  readonly methods: Living['methods'];
}

/** The page of one copy. */
export function recordCopyModel({ copy, sha256, own }: PrintedCopy, { comparisons, runs, methods }: Beside): RecordCopyModel {
  const { id, date, record } = copy;
  const comparison = comparisons.get(record.id) ?? null;
  return {
    kind: 'record-copy',
    id,
    title: record.title,
    date,
    path: copyPath(id),
    file: `${copyPath(id)}record.json`,
    sha256,
    own,
    living: comparison && { title: comparison.title, path: comparisonPath(record.id) },
    since: changedSince(record, { comparison, runs, methods }),
  };
}

/** The list of all copies, newest first. */
export function recordCopiesModel(copies: readonly PrintedCopy[]): RecordCopiesModel {
  return { kind: 'record-copies', invented: copies.some(({ own }) => own.marks.invented), rows: copies.map(copyRow) };
}

/** A copy in lists. */
export function copyRow({ copy: { id, date, record } }: Pick<PrintedCopy, 'copy'>): CopyRow {
  return { link: { title: record.title, path: copyPath(id) }, date, runs: record.runs.map(({ title }) => title) };
}

/** All copies for programs: which runs each holds. */
export function copiesIndex(copies: readonly Pick<PrintedCopy, 'copy'>[]): object {
  return {
    format: 1,
    copies: copies.map(({ copy: { id, date, record } }) => ({
      id,
      title: record.title,
      date,
      path: copyPath(id),
      runs: record.runs.map(({ run }) => run),
    })),
  };
}
