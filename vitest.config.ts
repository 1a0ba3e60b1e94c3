import { defineConfig } from 'vitest/config';

// `unit` is quick and touches nothing but memory and temporary folders; `site` builds whole sites and opens a browser.
export default defineConfig({
  test: {
    projects: [
      { test: { name: 'unit', include: ['test/**/*.test.ts'], exclude: ['test/site/**'], testTimeout: 60_000 } },
      {
        test: {
          name: 'site',
          include: ['test/site/**/*.test.ts'],
          testTimeout: 240_000,
          hookTimeout: 240_000,
          fileParallelism: false,
          // A browser on a loaded machine loses a race now and then; what fails twice is wrong, and the report names each second try.
          retry: 1,
        },
      },
    ],
  },
});
