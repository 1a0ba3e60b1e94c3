/**
 * Where the tests find the demonstration: content/, data/ and astro.config.mjs of this project, as long as they are the demonstration. Whoever
 * writes a publication of their own in a clone changes or clears them; the tests then read the demonstration that the history of the clone
 * holds, so that they judge the tool and never the author's files.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** The folder of this project. */
const HERE = join(import.meta.dirname, '..');
export const PARTS = ['content', 'data', 'astro.config.mjs'];
/** The demonstration is known by its device. */
const MARK = 'content/devices/larch-2.md';

/** The folder that holds its three parts, for reading only. Whoever changes the demonstration itself names its folder. */
export const DEMONSTRATION = process.env.SOAKPROOF_DEMONSTRATION ?? demonstrationOf(HERE);

/** The demonstration of a clone. Without git, or in a clone whose history has none, that is what stands there. */
export function demonstrationOf(clone: string): string {
  const changed = git(clone, 'status', '--porcelain', '--', ...PARTS);
  if (changed === undefined || (changed === '' && existsSync(join(clone, MARK)))) return clone;
  const commit = git(clone, 'log', '--format=%H', '--', ...PARTS)
    ?.split('\n')
    .find((each) => each !== '' && git(clone, 'cat-file', '-e', `${each}:${MARK}`) !== undefined);
  return commit === undefined ? clone : taken(clone, commit);
}

/** The parts as they were at a commit, in a folder named after it. */
function taken(clone: string, commit: string): string {
  const folder = join(tmpdir(), `soakproof-demonstration-${commit}`);
  if (existsSync(folder)) return folder;
  const part = `${folder}.${process.pid}`;
  mkdirSync(part);
  const archive = spawnSync('git', ['archive', commit, ...PARTS], { cwd: clone, maxBuffer: 2 ** 30 }).stdout;
  spawnSync('tar', ['-x'], { cwd: part, input: archive });
  try {
    renameSync(part, folder);
  } catch {
    // Another worker was quicker.
    rmSync(part, { recursive: true, force: true });
  }
  return folder;
}

/** What git says, less its last line end; undefined where it fails. */
function git(cwd: string, ...args: readonly string[]): string | undefined {
  const { status, stdout } = spawnSync('git', args, { cwd, encoding: 'utf8', maxBuffer: 2 ** 28 });
  return status === 0 ? stdout.replace(/\n$/, '') : undefined;
}

/** What to say before tests where they read another folder than this one; '' where they do not. */
export function elsewhereText(): string {
  if (DEMONSTRATION === HERE) return '';
  return `The tests read the demonstration from ${DEMONSTRATION}, since content/, data/ or astro.config.mjs are not as committed. SOAKPROOF_DEMONSTRATION=. lets them read what stands here.\n`;
}
