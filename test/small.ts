/** The small project, built once for all tests of sites that begin with it. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { copyFolder, copySources, runCommand } from './site/project.ts';
import { makeSmall } from './site/small-project.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Folder of the small project, which no test writes to. */
    readonly small: string;
  }
}

/** Comes after `scratch.ts`, whose folder it is built in, and after `demonstration.ts`, whose cache it begins with. */
export default function setup(project: TestProject): void {
  const { scratch, demonstration } = project.getProvidedContext();
  const root = join(scratch, 'small');
  mkdirSync(root);
  copySources(root);
  copyFolder(demonstration.root, root, '.cache');
  makeSmall(root);
  const { code, err } = runCommand(root, 'build');
  if (code !== 0) throw new Error(`the small project is not built: ${err}`);
  project.provide('small', root);
}
