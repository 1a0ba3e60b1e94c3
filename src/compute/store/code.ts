/** Digests of the code that makes results, so that a changed method makes its results anew. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { digest } from './digest.ts';
import { openCode } from './imports.ts';

const SRC = fileURLToPath(new URL('../..', import.meta.url));

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

/** For each kind of result: a digest of the code that makes it, the lock file and Node's major. `src` is the folder of the code. */
export function codeDigests(src: string = SRC): CodeDigests {
  const code = openCode(src);
  const ground = [digest(readFileSync(join(src, '..', 'package-lock.json'))), process.versions.node.split('.')[0]];
  const files = new Map<string, string>();
  const fileDigest = (path: string) => {
    const made = files.get(path) ?? digest(code.text(path));
    files.set(path, made);
    return made;
  };
  const of = (entries: readonly string[]) =>
    digest([...ground, ...code.neededBy(entries).map((path) => `${path} ${fileDigest(path)}`)].join('\n'));
  return Object.fromEntries(Object.entries(ENTRIES).map(([kind, entries]) => [kind, of(entries)])) as CodeDigests;
}

/** Folders and files at the root of `src` that stage 1 is made of. */
export function codeFolders(): readonly string[] {
  return [
    ...new Set(
      openCode(SRC)
        .neededBy(ENTRIES.all)
        .map((path) => path.split('/')[0]!),
    ),
  ];
}
