/** Runs the tests of many mutants in one Vitest, each mutant a project of its own; a line of output for each file of tests that ended. */
import { readFileSync } from 'node:fs';
import type { Plugin } from 'vitest/config';
import type { TestModule } from 'vitest/node';
import { startVitest } from 'vitest/node';
import { type Mutant, mutated } from './mutants.ts';

/** A mutant and the tests that it is tried with. */
export interface Trial {
  readonly name: string;
  readonly file: string;
  readonly mutant: Mutant;
  readonly tests: readonly string[];
}

/** As the parent reads it, a line each. */
export type Told = { readonly begun: string } | { readonly ended: string; readonly passed: boolean };

const root = process.cwd();
const trials = JSON.parse(readFileSync(0, 'utf8')) as readonly Trial[];
const tell = (told: Told): void => {
  process.stdout.write(`\n${JSON.stringify(told)}\n`);
};

await startVitest(
  'test',
  [],
  {
    root,
    config: false,
    watch: false,
    maxWorkers: 1,
    reporters: [
      {
        onTestModuleQueued: ({ project }: TestModule) => tell({ begun: project.name }),
        onTestModuleEnd: (module: TestModule) => tell({ ended: module.project.name, passed: module.ok() }),
      },
    ],
    projects: trials.map(({ name, file, mutant, tests }) => ({
      plugins: [wrong(file, mutant)],
      test: { name, include: [...tests], globalSetup: ['test/scratch.ts'], testTimeout: 600_000 },
    })),
  },
  {},
);
process.exit(0);

/** Gives the mistaken text in the place of the file. Vitest keeps modules from run to run: this one under a key of its own. */
function wrong(file: string, mutant: Mutant): Plugin {
  const is = (id: string) => id.split('?')[0] === `${root}/${file}`;
  return {
    name: 'mutant',
    enforce: 'pre',
    load: (id) => (is(id) ? mutated(readFileSync(`${root}/${file}`, 'utf8'), mutant) : undefined),
    configureVitest: ({ defineCacheKeyGenerator }) =>
      defineCacheKeyGenerator(({ id }) => (is(id) ? JSON.stringify(mutant) : undefined)),
  };
}
