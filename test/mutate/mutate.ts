/**
 * Makes the code slightly wrong, a seeded set of times, and looks whether the tests notice: `npm run mutate`. What no test noticed is printed,
 * with the share. The tests must be green before. A kept tool for this was not tried.
 */
import { spawn } from 'node:child_process';
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { parseArgs } from 'node:util';
import { commandLine } from '../../src/commands/command-line.ts';
import { seededRandom } from '../statistics/seeded-random.ts';
import { type Mutant, mutantsOf } from './mutants.ts';
import { openRelatives } from './relatives.ts';
import type { Told, Trial } from './run.ts';

commandLine({
  name: 'mutate',
  does: 'Makes the code slightly wrong in one place at a time, runs the tests that reach the place, and prints every change that none of them notices.',
  takes: [
    {
      name: 'PLACE',
      is: 'a folder or file below src/; statistics, quantities, figures, intake and words if left out',
      optional: true,
      many: true,
    },
  ],
  options: {
    '--count': { value: 'NUMBER', does: 'how many changes to try, 100 if left out' },
    '--seed': { value: 'NUMBER', does: 'where chance begins, 1 if left out' },
  },
  exits: { 0: 'all changes were tried, whatever was noticed', 1: 'no file has that name, or the tests could not be run' },
  example: 'npm run mutate -- --count 20 statistics/mean.ts',
});

const ROOT = join(import.meta.dirname, '..', '..');
const FOLDERS = ['statistics', 'quantities', 'figures', 'intake', 'words'];
/** So many projects of Vitest at once: each has a server of its own, which takes memory. */
const BATCH = 25;
/** A mutant that is silent for so long runs for ever: a loop that no longer ends. */
const HANGS = 300_000;

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    count: { type: 'string', default: '100' },
    seed: { type: 'string', default: '1' },
  },
});

interface Candidate {
  readonly file: string;
  readonly mutant: Mutant;
}

const chosen = sample(candidates(positionals.length === 0 ? FOLDERS : positionals), Number(values.count), Number(values.seed));
const relatives = openRelatives(ROOT);
let alive = chosen;
for (const circle of ['own', 'others', 'folder', 'wing'] as const)
  alive = await survivors(alive, ({ file }) => relatives(file)[circle]);
for (const { file, mutant } of alive.toSorted((a, b) =>
  a.file < b.file ? -1 : a.file > b.file ? 1 : a.mutant.start - b.mutant.start,
))
  console.log(`${file}:${mutant.line}:${mutant.column}: \`${mutant.before}\` as \`${mutant.after}\` is noticed by no test`);
console.log(
  `${alive.length} of ${chosen.length} changes were noticed by no test: ${((100 * alive.length) / Math.max(1, chosen.length)).toFixed(1)} %.`,
);

function candidates(names: readonly string[]): Candidate[] {
  const patterns = names.map((name) => name.replace(/^src\//, '')).map((name) => (name.endsWith('.ts') ? name : `${name}/**/*.ts`));
  const files = [...new Set(patterns.flatMap((pattern) => globSync(`src/${pattern}`, { cwd: ROOT })))].sort();
  if (files.length === 0) {
    console.error(`no file of src/ is named ${names.join(', ')}`);
    process.exit(1);
  }
  return files
    .filter((file) => !file.endsWith('.d.ts'))
    .flatMap((file) => mutantsOf(readFileSync(join(ROOT, file), 'utf8')).map((mutant) => ({ file, mutant })));
}

/** Draws without putting back. */
function sample(all: readonly Candidate[], count: number, seed: number): Candidate[] {
  const random = seededRandom(seed);
  const left = [...all];
  return Array.from({ length: Math.min(count, all.length) }, () => left.splice(Math.floor(random() * left.length), 1)[0]!);
}

/** Those of some mutants that a choice of tests does not notice; one without tests is noticed by none. */
async function survivors(tried: readonly Candidate[], testsOf: (tried: Candidate) => string[]): Promise<Candidate[]> {
  const trials = tried.map((candidate, at): Trial => ({ name: String(at), ...candidate, tests: testsOf(candidate) }));
  const noticed = new Set<string>();
  let left = trials.filter(({ tests }) => tests.length > 0);
  while (left.length > 0) {
    const batch = left.slice(0, BATCH);
    const done = await runBatch(batch, noticed);
    left = left.filter(({ name }) => !done.has(name));
    process.stderr.write(`${trials.length - left.length} of ${trials.length} tried, ${noticed.size} noticed\n`);
  }
  return tried.filter((_, at) => !noticed.has(String(at)));
}

/** Runs a batch as far as its first mutant that hangs. Gives the names of those that were tried to their end, and adds to `noticed`. */
function runBatch(batch: readonly Trial[], noticed: Set<string>): Promise<Set<string>> {
  const running = new Set<string>();
  const runner = spawn(process.execPath, [join(import.meta.dirname, 'run.ts')], { cwd: ROOT, stdio: ['pipe', 'pipe', 'ignore'] });
  runner.stdin.end(JSON.stringify(batch));
  const hang = () => {
    for (const name of running) noticed.add(name);
    runner.kill('SIGKILL');
  };
  let waiting = setTimeout(hang, HANGS);
  createInterface({ input: runner.stdout }).on('line', (line) => {
    if (!line.startsWith('{')) return;
    clearTimeout(waiting);
    waiting = setTimeout(hang, HANGS);
    const told = JSON.parse(line) as Told;
    if ('begun' in told) running.add(told.begun);
    else {
      running.delete(told.ended);
      if (!told.passed) noticed.add(told.ended);
    }
  });
  return new Promise((resolve, reject) => {
    runner.once('exit', (code, signal) => {
      clearTimeout(waiting);
      if (signal === 'SIGKILL') resolve(new Set(noticed));
      else if (code === 0) resolve(new Set(batch.map(({ name }) => name)));
      else reject(new Error(`the tests could not be run (${code ?? signal})`));
    });
  });
}
