/** Digests of the code that makes results, so that a changed method makes its results anew. */
import { existsSync, globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { compareText } from '../../problem.ts';
import { digest } from './digest.ts';
import { openCode } from './imports.ts';
import { codeFolder } from './places.ts';

/** In a package, beside the compiled code: the digests of the code that it was compiled from, so that both make the same results. */
export const PACKED_DIGESTS = 'code-digests.json';

const RUN = 'compute/steps/runs/run-step.ts';
const COMPARISONS = 'compute/steps/comparisons.ts';
const ATTEMPTS = 'compute/steps/attempts.ts';

/** Where the code of each kind of result begins. All else that it hangs on is found by its imports. */
export const ENTRIES = {
  run: [RUN],
  comparisons: [COMPARISONS],
  attempts: [ATTEMPTS],
  words: ['compute/steps/notes/word-step.ts'],
  series: ['compute/steps/series/series-step.ts'],
  plots: ['compute/steps/plots/plot-step.ts'],
  pictures: ['compute/steps/pictures/picture-step.ts'],
  compared: ['compute/steps/plots/comparison-plot-step.ts'],
  shares: ['compute/steps/shares/share-step.ts'],
  accuracy: ['compute/steps/accuracy.ts'],
  /** Of all figures: what a published state calls the methods. */
  figures: [RUN, COMPARISONS, ATTEMPTS],
  all: ['compute/compute.ts'],
} as const;

export type CodeDigests = Record<keyof typeof ENTRIES, string>;

/** Where the packages of a clone are named, the most exact first: the lock file, npm's own list of what it installed, what is asked for. */
const PACKAGES = ['package-lock.json', 'node_modules/.package-lock.json', 'package.json'];

/** What says which packages the tool in a folder runs with; '' where nothing does. A clone works without its lock file, too. */
export function packagesOf(tool: string): string {
  const path = PACKAGES.map((name) => join(tool, name)).find((each) => existsSync(each));
  return path === undefined ? '' : readFileSync(path, 'utf8');
}

/** For each kind of result: a digest of the code that makes it, its packages and Node's major. `src` is the folder of the code. */
export function codeDigests(src: string = codeFolder()): CodeDigests {
  const packed = join(src, PACKED_DIGESTS);
  if (existsSync(packed)) return JSON.parse(readFileSync(packed, 'utf8')) as CodeDigests;
  const code = openCode(src);
  const ground = [digest(packagesOf(join(src, '..'))), process.versions.node.split('.')[0]];
  const files = new Map<string, string>();
  const fileDigest = (path: string) => {
    const made = files.get(path) ?? digest(code.text(path));
    files.set(path, made);
    return made;
  };
  const of = (entries: readonly string[]) =>
    digest([...ground, ...code.neededBy(entries).map((path) => `${path} ${fileDigest(path)}`)].join('\n'));
  const digests = Object.fromEntries(Object.entries(ENTRIES).map(([kind, entries]) => [kind, of(entries)])) as CodeDigests;
  // What a site prints of the tool besides its code.
  const guide = globSync('guide/*.md', { cwd: src }).sort(compareText);
  return { ...digests, all: digest([digests.all, ...guide.map((path) => digest(readFileSync(join(src, path))))].join('\n')) };
}

/** Folders and files that stage 1 is made of, at the root of the code. None of a package: nobody edits it. */
export function editedCode(src: string = codeFolder()): readonly string[] {
  if (existsSync(join(src, PACKED_DIGESTS))) return [];
  const roots = openCode(src)
    .neededBy(ENTRIES.all)
    .map((path) => path.split('/')[0]!);
  return [...new Set([...roots, 'guide'])].map((name) => join(src, name));
}
