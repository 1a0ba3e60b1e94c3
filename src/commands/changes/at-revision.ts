/** Published states as git has them at an earlier revision. Nothing is written: git is only asked. */
import { spawnSync } from 'node:child_process';
import type { ContentFile } from '../../register/register.ts';

const FOLDER = 'content/published/';

/** The files of content/published/ at a revision, or why they cannot be had. */
export function statesAtRevision(root: string, revision: string): readonly ContentFile[] | string {
  const known = git(root, ['rev-parse', '--verify', '--quiet', '--end-of-options', `${revision}^{commit}`]);
  if (known === undefined) return `git knows no revision ${revision} here`;
  const commit = known.trim();
  const names = git(root, ['ls-tree', '--name-only', '-z', commit, '--', FOLDER]);
  const paths = (names ?? '').split('\0').filter((name) => name.endsWith('.json'));
  const files = paths.map((path) => ({ path, text: git(root, ['show', `${commit}:./${path}`]) ?? '' }));
  return files.length > 0 ? files : `nothing was published at ${revision}: it has no ${FOLDER}`;
}

function git(root: string, args: readonly string[]): string | undefined {
  const ran = spawnSync('git', args, { cwd: root, encoding: 'utf8', maxBuffer: 2 ** 28 });
  return ran.status === 0 ? ran.stdout : undefined;
}
