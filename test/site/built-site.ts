/** A built copy of the project, served, and a browser to look at it: for all tests of a file, taken down after them. */
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import { openBrowser } from './browser.ts';
import { copyProject, type TestProject } from './project.ts';
import { type Served, serve } from './server.ts';

/** There from the first test on, and in whatever `beforeAll` comes later. */
export interface BuiltSite {
  readonly project: TestProject;
  readonly served: Served;
  readonly browser: Browser;
}

/** The demonstration as it was built; where it is to be another site, `prepare` changes the copy and it is built again. */
export function builtSite(name: string, prepare?: (project: TestProject) => void): BuiltSite {
  const site: { project?: TestProject; served?: Served; browser?: Browser } = {};
  beforeAll(async () => {
    site.project = copyProject(name);
    if (prepare !== undefined) {
      prepare(site.project);
      expect(site.project.run('build').code).toBe(0);
    }
    site.served = await serve(join(site.project.root, 'dist'));
    site.browser = await openBrowser();
  });
  afterAll(async () => {
    await site.browser?.close();
    await site.served?.close();
    site.project?.remove();
  });
  return site as BuiltSite;
}
