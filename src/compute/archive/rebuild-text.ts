/** REBUILD.txt: how to build the note's pages again from its archive, and what can then be compared. */

import type { ComputedNote } from '../contents/site-contents.ts';
import type { DataFile } from '../models/data-file.ts';
import { AS_PUBLISHED, type PlacedFile } from './placed-data.ts';
import type { ArchiveScope } from './scope.ts';

/** What made the archive. */
export interface Maker {
  /** Of the software, as its package.json has it. */
  readonly version: string;
  /** Digest of stage 1's code, the lock file and Node's major: equal ones compute alike. */
  readonly code: string;
  /** Node's major. */
  readonly node: string;
}

export interface Rebuilding {
  readonly scope: ArchiveScope;
  readonly placed: readonly PlacedFile[];
  readonly citation: string;
  readonly invented: boolean;
  readonly maker: Maker;
  /** Paths below data/, with the digests of originals and of what is here. */
  readonly pictures: readonly { readonly path: string; readonly original: string; readonly published: string }[];
  /** Paths of what was computed, as they stand in the archive. */
  readonly computed: readonly string[];
}

export function rebuildText({ scope, placed, citation, invented, maker, computed, pictures }: Rebuilding): string {
  const [note] = scope.notes as [ComputedNote];
  const others = [...new Set(readingOthers(placed).map(({ run }) => `${AS_PUBLISHED}${run}/figures.json`))];
  const sections = [
    [note.note.title, ...(invented ? ['Everything in it is invented: device, maker, people and numbers.'] : []), citation],
    [
      'What is in it',
      'content/ and data/: what its figures are computed from, as far as it is published. Declarations are written anew: what a run takes from a setup stands in the run, and comments are left out.',
      `${AS_PUBLISHED}: what was computed, at the addresses that it has on the site.`,
      'datapackage.json: what each file of data is (a Data Package). LICENCES.txt: how all of it may be used.',
    ],
    [
      'To build it again',
      `1. Make an empty publication with Soakproof, version ${maker.version}: \`soakproof new FOLDER\` of the package; of a checkout, remove data/ and every folder in content/.`,
      `2. Unpack this archive into its folder.`,
      `3. npm run build (Node ${maker.node} comes with Soakproof; any from 20 on starts it).`,
      `4. npm run verify -- ${computed.filter((path) => !others.includes(path)).join(' ')}`,
      'It names each file that was computed to the same bytes, as all of these are. A figure of a device rests here on the runs of this archive alone.',
      `Made by code with the digest ${maker.code}; the beginning of .cache/manifest-site.json has yours under "code". With another, methods may differ, and with them figures.`,
      'A link to a page of the site that is not in this archive leads nowhere in what you build.',
    ],
    ...differing(placed, others),
    ...missing(placed),
    ...asPublished(pictures),
  ];
  return `${sections.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

/** Pictures stay with their authors; what is here was published, and says nothing of where and by whom it was taken. */
function asPublished(pictures: Rebuilding['pictures']): string[][] {
  if (pictures.length === 0) return [];
  const lines = pictures.map(
    ({ path, original, published }) => `data/${path}: SHA-256 ${published}; the original, which its author keeps, ${original}`,
  );
  return [['Pictures, as they were published', ...lines]];
}

interface ReadingOther {
  readonly run: string;
  readonly log: DataFile;
  readonly stands: PlacedFile;
}

/** Runs whose log stays with its author, with what they read in its place. */
function readingOthers(placed: readonly PlacedFile[]): ReadingOther[] {
  return placed.flatMap(({ of: run, file: log, path: own }) => {
    const stands = placed.find(
      ({ of, file, path }) => of === run && file.log === log.log && path !== null && ['redacted', 'cleaned'].includes(file.role),
    );
    return log.role === 'log' && own === null && stands ? [{ run, log, stands }] : [];
  });
}

/** Logs that stay with their author: what is read in their place. */
function differing(placed: readonly PlacedFile[], others: readonly string[]): string[][] {
  const lines = readingOthers(placed).map(({ run, log: { elsewhere, sha256 }, stands }) => {
    const where = elsewhere === undefined ? '' : `; the log as it came is to be had at ${elsewhere} (SHA-256 ${sha256})`;
    return `${run} reads ${stands.path}, ${stands.file.what}${where}`;
  });
  if (lines.length === 0) return [];
  const why = `Values, uncertainties, intervals and parts of its figures are those of ${others.join(' and ')}; file, digest, columns and lines are those of what it reads, so that step 4 cannot name it.`;
  return [['What reads another file than its author did', ...lines, why]];
}

/** What is not here, and where it can be had. */
function missing(placed: readonly PlacedFile[]): string[][] {
  const lost = placed.filter(({ of, file, path }) => path === null && !standsIn(placed, of, file));
  if (lost.length === 0) return [];
  const lines = lost.map(({ of, file }) => {
    const where = file.elsewhere === undefined ? 'its author keeps it' : `to be had at ${file.elsewhere}`;
    return `${file.source} (${of}, SHA-256 ${file.sha256}): ${where}`;
  });
  return [['What is missing', ...lines, 'Without these files the build stops and names them. Put them at these paths first.']];
}

function standsIn(placed: readonly PlacedFile[], of: string, { role, log }: DataFile): boolean {
  return (
    role === 'log' &&
    placed.some(
      (other) =>
        other.of === of && other.file.log === log && other.path !== null && ['redacted', 'cleaned'].includes(other.file.role),
    )
  );
}
