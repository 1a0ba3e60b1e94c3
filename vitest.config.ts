import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

/** Nothing that is right takes as long, on however busy a machine: it ends what hangs, and judges no test by its time. */
const HANGS = 900_000;

// `unit` is quick and touches nothing but memory and temporary folders; `site` builds whole sites and opens a browser.
export default defineConfig({
  test: {
    maxWorkers: availableParallelism(),
    globalSetup: 'test/scratch.ts',
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['test/**/*.test.ts'],
          exclude: ['test/site/**'],
          // A module is loaded once for all files of a worker: loading took two thirds of the time. So no test may leave a module changed.
          isolate: false,
          testTimeout: HANGS,
          hookTimeout: HANGS,
        },
      },
      {
        extends: true,
        test: {
          name: 'site',
          include: ['test/site/**/*.test.ts'],
          globalSetup: 'test/site/demonstration.ts',
          testTimeout: HANGS,
          hookTimeout: HANGS,
          // After all others, which would take the time of browsers.
          sequence: { groupOrder: 1 },
          // A browser on a loaded machine loses a race now and then; what fails twice is wrong, and the report names each second try.
          retry: 1,
        },
      },
    ],
  },
});
