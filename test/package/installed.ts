/** A folder in which the package is installed, without npm: the other packages are those of this project. */
import { cpSync, mkdirSync, readdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { type Ran, runNode } from '../site/project.ts';
import { emitPackage, ROOT } from './emit.ts';

/** Puts the package and all that it needs below a folder's node_modules. */
export function installInto(folder: string): void {
  const packages = join(folder, 'node_modules');
  mkdirSync(packages, { recursive: true });
  for (const name of readdirSync(join(ROOT, 'node_modules')))
    symlinkSync(join(ROOT, 'node_modules', name), join(packages, name), 'dir');
  emitPackage(join(packages, 'soakproof'));
}

/** Copies the parts of a publication. */
export function copyPublication(from: string, to: string): void {
  for (const path of ['content', 'data', 'astro.config.mjs']) cpSync(join(from, path), join(to, path), { recursive: true });
}

/** Runs `soakproof NAME …` in a folder in which it is installed. */
export function soakproof(folder: string, ...args: readonly string[]): Ran {
  return runNode(folder, join(folder, 'node_modules', 'soakproof', 'src', 'commands', 'soakproof.mjs'), args);
}
