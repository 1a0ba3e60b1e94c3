/** Models of the pages of record copies: each copy as it prints for ever, and beside it what changed since. */

import { comparisonPath } from '../contents/site-contents.ts';
import type { Gathered } from '../models/gathered.ts';
import type { ChangedSince, CopyRow } from '../models/record-copies.ts';
import type { SharePicture } from '../models/share.ts';
import type { RecordCopiesModel, RecordCopyModel } from '../results.ts';
import { copyPath } from './copy.ts';
import type { PrintedCopy } from './print-copies.ts';

/** The page of one copy. `living`: its comparison, where the site shows that. */
export function recordCopyModel(
  printed: PrintedCopy,
  living: Gathered | null,
  since: ChangedSince,
  share: SharePicture | null,
): RecordCopyModel {
  const { id, date, title, sha256, own } = printed;
  return {
    kind: 'record-copy',
    id,
    title,
    date,
    path: copyPath(id),
    file: `${copyPath(id)}record.json`,
    sha256,
    own,
    living: living && { title: living.title, path: comparisonPath(living.id) },
    since,
    share,
  };
}

/** The list of all copies, newest first. */
export function recordCopiesModel(copies: readonly PrintedCopy[]): RecordCopiesModel {
  return { kind: 'record-copies', invented: copies.some(({ own }) => own.marks.invented), rows: copies.map(copyRow) };
}

/** A copy in lists. */
export function copyRow({ id, date, title, runs }: PrintedCopy): CopyRow {
  return { link: { title, path: copyPath(id) }, date, runs: runs.map((run) => run.title) };
}

/** All copies for programs: which runs each holds. */
export function copiesIndex(copies: readonly PrintedCopy[]): object {
  return {
    format: 1,
    copies: copies.map(({ id, title, date, runs }) => ({ id, title, date, path: copyPath(id), runs: runs.map(({ run }) => run) })),
  };
}
