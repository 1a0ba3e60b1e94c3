/** REBUILD.txt: how to build the note's pages again from its archive, and what can then be compared. */
import type { ComputedNote } from '../pages/parts.ts';
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
  /** Paths of what was computed, as they stand in the archive. */
  readonly computed: readonly string[];
}

export function rebuildText({ scope, placed, citation, invented, maker, computed }: Rebuilding): string {
  const [note] = scope.notes as [ComputedNote];
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
      `1. Take a checkout of Soakproof, version ${maker.version}, and remove its content/ and data/.`,
      `2. Unpack this archive into the checkout's folder.`,
      `3. npm run build (Node ${maker.node} comes with it; any from 20 on starts it).`,
      `4. npm run verify -- ${computed.join(' ')}`,
      'It names each file that was computed to the same bytes. A figure of a device rests here on the runs of this archive alone.',
      `Made by code with the digest ${maker.code}; the beginning of .cache/manifest-site.json has the one of your checkout under "code". With another, methods may differ, and with them figures.`,
      'A link to a page of the site that is not in this archive leads nowhere in what you build.',
    ],
    ...differing(placed),
    ...missing(placed),
  ];
  return `${sections.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

/** Logs that stay with their author: what is read in their place. */
function differing(placed: readonly PlacedFile[]): string[][] {
  const runs = new Set(placed.filter(({ file, path }) => file.role === 'log' && path === null).map(({ of }) => of));
  const lines = [...runs].flatMap((run) => {
    const stands = placed.find(({ of, file, path }) => of === run && path !== null && ['redacted', 'cleaned'].includes(file.role));
    const log = placed.find(({ of, file }) => of === run && file.role === 'log')?.file;
    const where =
      log?.elsewhere === undefined ? '' : `; the log as it came is to be had at ${log.elsewhere} (SHA-256 ${log.sha256})`;
    return stands ? [`${run} reads ${stands.path}, ${stands.file.what}${where}`] : [];
  });
  if (lines.length === 0) return [];
  const why =
    'The values and uncertainties of its figures are the same; file, digest, columns and lines in its figures.json are those of what it reads.';
  return [['What reads another file than its author did', ...lines, why]];
}

/** What is not here, and where it can be had. */
function missing(placed: readonly PlacedFile[]): string[][] {
  const lost = placed.filter(({ of, file, path }) => path === null && !standsIn(placed, of, file.role));
  if (lost.length === 0) return [];
  const lines = lost.map(({ of, file }) => {
    const where = file.elsewhere === undefined ? 'its author keeps it' : `to be had at ${file.elsewhere}`;
    return `${file.source} (${of}, SHA-256 ${file.sha256}): ${where}`;
  });
  return [['What is missing', ...lines, 'Without these files the build stops and names them. Put them at these paths first.']];
}

function standsIn(placed: readonly PlacedFile[], of: string, role: string): boolean {
  return (
    role === 'log' &&
    placed.some((other) => other.of === of && other.path !== null && ['redacted', 'cleaned'].includes(other.file.role))
  );
}
