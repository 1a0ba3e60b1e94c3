/** A copy of this project in a folder of its own, for tests that build, break and mend a site. */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { compareText } from '../../src/problem.ts';

const HERE = fileURLToPath(new URL('../..', import.meta.url));
const COPIED = ['src', 'content', 'data', 'package.json', 'package-lock.json', 'astro.config.mjs', 'tsconfig.json'];

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

/** Copies the project into a new temporary folder; packages are linked, not copied. */
export function copyProject(name: string): TestProject {
  const root = mkdtempSync(join(tmpdir(), `soakproof-${name}-`));
  for (const path of COPIED) cpSync(join(HERE, path), join(root, path), { recursive: true });
  symlinkSync(join(HERE, 'node_modules'), join(root, 'node_modules'), 'dir');
  const read = (path: string) => readFileSync(join(root, path), 'utf8');
  const write = (path: string, text: string) => writeFileSync(join(root, path), text);
  const script = (command: string) => join(root, 'src', 'commands', `${command}.ts`);
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
    run: (command, env = {}, args = []) => {
      const done = spawnSync(process.execPath, [script(command), ...args], {
        cwd: root,
        encoding: 'utf8',
        // As npm would tell it of this folder, and not of the one that the tests were started in.
        env: { ...process.env, INIT_CWD: root, ...env },
      });
      return { code: done.status, out: done.stdout, err: done.stderr };
    },
    start: (command, args = []) => spawn(process.execPath, [script(command), ...args], { cwd: root, env: plainEnvironment() }),
    unprotect: () => rmSync(join(root, 'content', 'published'), { recursive: true, force: true }),
    remove: () => rmSync(root, { recursive: true, force: true }),
  };
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
