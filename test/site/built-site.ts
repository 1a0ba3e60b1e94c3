/** A built site, served, and a browser to look at it: for all tests of a file, taken down after them. */
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject } from 'vitest';
import { openBrowser } from './browser.ts';
import { copyProject, type TestProject } from './project.ts';
import { type Served, serve } from './server.ts';

/** There from the first test on, and in whatever `beforeAll` comes later. */
export interface ServedSite {
  /** Folder of the project whose `dist/` is served. */
  readonly root: string;
  readonly served: Served;
  readonly browser: Browser;
}

export interface BuiltSite extends ServedSite {
  readonly project: TestProject;
}

/** The demonstration as it was built, for tests that write nothing. */
export function demonstrationSite(): ServedSite {
  return served(async () => ({ root: inject('demonstration').root }));
}

/** A copy of the demonstration as it was built; where it is to be another site, `prepare` changes the copy and it is built again. */
export function builtSite(name: string, prepare?: (project: TestProject) => void): BuiltSite {
  const site = served(async () => {
    const project = copyProject(name);
    if (prepare !== undefined) {
      prepare(project);
      expect(project.run('build').code).toBe(0);
    }
    return { root: project.root, project };
  });
  afterAll(() => site.project?.remove());
  return site;
}

/** Fills in the site of a project before the tests, and what looks at it. */
function served<T extends { readonly root: string }>(make: () => Promise<T>): T & ServedSite {
  const site: Partial<T & ServedSite> = {};
  beforeAll(async () => {
    const made = await make();
    Object.assign(site, made, { served: await serve(join(made.root, 'dist')), browser: await openBrowser() });
  });
  afterAll(async () => {
    await site.browser?.close();
    await site.served?.close();
  });
  return site as T & ServedSite;
}
