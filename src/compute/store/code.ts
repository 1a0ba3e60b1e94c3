/** Digests of the code that makes results, so that a changed method makes its results anew. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { compareText } from '../../problem.ts';
import { digest } from './digest.ts';

const SRC = join(dirname(fileURLToPath(import.meta.url)), '../..');
const LOCK_FILE = join(SRC, '..', 'package-lock.json');

const MEASURING = ['problem.ts', 'statistics', 'quantities', 'intake', 'figures'];
const STEPS = {
  run: [
    ...MEASURING,
    'compute/steps/runs/run-step.ts',
    'compute/steps/runs/run-tables.ts',
    'compute/steps/runs/run-data.ts',
    'compute/steps/runs/log-sharing.ts',
  ],
  comparisons: [...MEASURING, 'compute/steps/comparisons.ts'],
  words: [...MEASURING, 'register', 'words', 'compute/steps/notes/word-step.ts'],
  series: [
    ...MEASURING,
    'plots',
    'compute/steps/runs/run-step.ts',
    'compute/steps/runs/run-tables.ts',
    'compute/steps/plots/plot-subject.ts',
    'compute/steps/series/series-step.ts',
  ],
  plots: [
    ...MEASURING,
    'register',
    'plots',
    'compute/steps/runs/run-step.ts',
    'compute/steps/runs/run-tables.ts',
    'compute/steps/plots/plot-subject.ts',
    'compute/steps/plots/plot-task.ts',
    'compute/steps/plots/plot-step.ts',
  ],
  compared: [
    ...MEASURING,
    'plots',
    'compute/steps/plots/plot-step.ts',
    'compute/models/gathered.ts',
    'compute/steps/plots/comparison-plans.ts',
    'compute/steps/plots/comparison-plot-task.ts',
    'compute/steps/plots/comparison-plot-step.ts',
  ],
  all: [...MEASURING, 'register', 'words', 'plots', 'search', 'compute'],
} as const;

export type CodeDigests = Record<keyof typeof STEPS, string>;

/** For each step of stage 1: a digest of its folders, the lock file and Node's major. */
export function codeDigests(): CodeDigests {
  const ground = `${digest(readFileSync(LOCK_FILE))} ${process.versions.node.split('.')[0]}`;
  const folders = new Map<string, string>();
  const folderDigest = (name: string): string => {
    const known = folders.get(name);
    if (known !== undefined) return known;
    const made = digestOfPath(join(SRC, name));
    folders.set(name, made);
    return made;
  };
  const of = (step: keyof typeof STEPS) => digest(`${ground} ${STEPS[step].map(folderDigest).join(' ')}`);
  const steps = Object.keys(STEPS) as (keyof typeof STEPS)[];
  return Object.fromEntries(steps.map((step) => [step, of(step)])) as CodeDigests;
}

function digestOfPath(path: string): string {
  if (path.endsWith('.ts')) return digest(readFileSync(path));
  const names = readdirSync(path, { recursive: true, encoding: 'utf8' }).filter((name) => /\.(ts|json)$/.test(name));
  names.sort(compareText);
  return digest(names.map((name) => `${name} ${digest(readFileSync(join(path, name)))}`).join('\n'));
}
