import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { PATIENCE } from './test/site/patience.ts';

/** Nothing that is right takes as long, on however busy a machine: it ends what hangs, and judges no test by its time. */
const HANGS = 900_000;

const STAGE = 'test/**/*.stage.test.ts';
const SITE = 'test/site/**/*.test.ts';

/** A module is loaded once for all files of a worker, since loading took two thirds of the time. So no test leaves a module changed. */
const common = { isolate: false, testTimeout: HANGS, hookTimeout: HANGS };

/**
 * `unit` is quick and touches nothing but memory and temporary folders; `stage` runs stage 1 on a project folder; `site` builds whole sites
 * and opens a browser. A part of one: `npx vitest run --project unit test/figures`.
 */
export default defineConfig({
  test: {
    // One more than there are cores: a worker that waits for a browser or for a build leaves its core idle.
    maxWorkers: availableParallelism() + 1,
    projects: [
      {
        test: { ...common, name: 'unit', include: ['test/**/*.test.ts'], exclude: [STAGE, SITE], globalSetup: ['test/scratch.ts'] },
      },
      { test: { ...common, name: 'stage', include: [STAGE], globalSetup: ['test/scratch.ts', 'test/demonstration.ts'] } },
      {
        test: {
          ...common,
          name: 'site',
          include: [SITE],
          globalSetup: ['test/scratch.ts', 'test/demonstration.ts', 'test/small.ts'],
          expect: { poll: { timeout: PATIENCE } },
          // A browser on a loaded machine loses a race now and then; what fails twice is wrong, and the report names each second try.
          retry: 1,
        },
      },
    ],
  },
});
