/** A copy of this project in a folder of its own, for tests that build, break and mend a site. */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { inject } from 'vitest';
import { compareText } from '../../src/problem.ts';
import { DEMONSTRATION, PARTS } from '../demonstration-folder.ts';

/** The folder of this project. */
export const HERE = fileURLToPath(new URL('../..', import.meta.url));
const TOOL = ['src', 'package.json', 'package-lock.json', 'tsconfig.json'];
const COPIED = [...TOOL, ...PARTS];
const BUILT = ['.cache', 'dist'];
const COMPILED = join('.cache', 'compiled');

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

export interface TestProject {
  readonly root: string;
  read(path: string): string;
  write(path: string, text: string): void;
  /** Replaces a text that must be there. */
  edit(path: string, from: string, to: string): void;
  run(command: string, env?: Record<string, string>, args?: readonly string[]): Ran;
  start(command: string, args?: readonly string[]): ChildProcess;
  /** Forgets what was published, so that a test may change numbers without giving reasons. */
  unprotect(): void;
  remove(): void;
}

/**
 * Copies the project into a new temporary folder, as the demonstration's build left it, so that a build makes anew only what a test
 * changes. Packages are linked, not copied.
 */
export function copyProject(name: string): TestProject {
  const project = copyUnbuilt(name);
  copyBuilt(project.root, BUILT);
  return project;
}

/** Copies folders of the built demonstration into another. */
export function copyBuilt(root: string, folders: readonly string[]): void {
  for (const folder of folders) copyFolder(inject('demonstration').root, root, folder);
}

/** Copies the small project, as its build left it: where a test would show the same on any site, and builds it often. */
export function copySmall(name: string): TestProject {
  const root = mkdtempSync(join(inject('scratch'), `${name}-`));
  for (const folder of [...COPIED, ...BUILT]) copyFolder(inject('small'), root, folder);
  linkPackages(root);
  return projectAt(root);
}

/** Copies a folder of a project to the same place in another. */
export function copyFolder(from: string, to: string, path: string): void {
  cpSync(join(from, path), join(to, path), { recursive: true, preserveTimestamps: true });
}

/** Copies the project into a new temporary folder as a clone has it, without results and without a site. Only compiled code is kept. */
export function copyUnbuilt(name: string): TestProject {
  const project = cloneIn(inject('scratch'), name);
  copyBuilt(project.root, [COMPILED]);
  return project;
}

/** The same outside of Vitest, below a folder that is there. */
export function cloneIn(folder: string, name: string): TestProject {
  const root = mkdtempSync(join(folder, `${name}-`));
  copySources(root);
  return projectAt(root);
}

/** Copies what a clone has into a folder. */
export function copySources(root: string): void {
  for (const path of TOOL) cpSync(join(HERE, path), join(root, path), { recursive: true });
  for (const path of PARTS) cpSync(join(DEMONSTRATION, path), join(root, path), { recursive: true });
  linkPackages(root);
}

function linkPackages(root: string): void {
  symlinkSync(join(HERE, 'node_modules'), join(root, 'node_modules'), 'dir');
}

function projectAt(root: string): TestProject {
  const read = (path: string) => readFileSync(join(root, path), 'utf8');
  const write = (path: string, text: string) => writeFileSync(join(root, path), text);
  return {
    root,
    read,
    write,
    edit: (path, from, to) => {
      const text = read(path);
      if (!text.includes(from)) throw new Error(`${path} does not hold ${from}`);
      write(
        path,
        text.replace(from, () => to),
      );
    },
    run: (command, env, args) => runCommand(root, command, env, args),
    start: (command, args = []) =>
      spawn(process.execPath, [script(root, command), ...args], { cwd: root, env: plainEnvironment() }),
    unprotect: () => rmSync(join(root, 'content', 'published'), { recursive: true, force: true }),
    remove: () => rmSync(root, { recursive: true, force: true }),
  };
}

/** Runs a command of the project in a folder to its end. */
export function runCommand(root: string, command: string, env: Record<string, string> = {}, args: readonly string[] = []): Ran {
  return runNode(root, script(root, command), args, { ...compiledBefore(root), ...env });
}

/** Node reads compiled code from the first module of a command on, not only from where the command says so: a fifth of a second each time. */
function compiledBefore(root: string): Record<string, string> {
  return { NODE_COMPILE_CACHE: join(root, COMPILED), NODE_COMPILE_CACHE_PORTABLE: '1' };
}

/** Runs a file with Node in a folder to its end. */
export function runNode(root: string, file: string, args: readonly string[], env: Record<string, string> = {}): Ran {
  const done = spawnSync(process.execPath, [file, ...args], {
    cwd: root,
    encoding: 'utf8',
    // As npm would tell it of this folder, and not of the one that the tests were started in.
    env: { ...process.env, INIT_CWD: root, ...env },
  });
  return { code: done.status, out: done.stdout, err: done.stderr };
}

function script(root: string, command: string): string {
  return join(root, 'src', 'commands', `${command}.ts`);
}

/** The environment as a user's shell would have it: without what the test runner sets. */
function plainEnvironment(): NodeJS.ProcessEnv {
  const { NODE_ENV: _mode, FORCE_COLOR: _colour, VITEST: _runner, ...rest } = process.env;
  return { ...rest, NO_COLOR: '1', ASTRO_DEV_BACKGROUND: '1' };
}

/** Every file below a folder, by path, as bytes. */
export function tree(folder: string): Map<string, Buffer> {
  const names = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1));
  return new Map(names.sort(compareText).map((name) => [name, readFileSync(join(folder, name))]));
}

/** Paths that are in one tree only, or whose bytes differ. */
export function differences(a: Map<string, Buffer>, b: Map<string, Buffer>): string[] {
  const paths = new Set([...a.keys(), ...b.keys()]);
  return [...paths].filter((path) => {
    const [left, right] = [a.get(path), b.get(path)];
    return left === undefined || right === undefined || !left.equals(right);
  });
}

/** Removes data/ and all folders of content/; the page about the publication stays, since the configuration names it. */
export function removeContents(root: string): void {
  const folders = readdirSync(join(root, 'content')).filter((each) => !each.endsWith('.md'));
  for (const folder of [...folders.map((each) => join('content', each)), 'data']) rmSync(join(root, folder), { recursive: true });
}
