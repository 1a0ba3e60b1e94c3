// Runs before every npm script, in plain JavaScript for whatever Node the machine has: installs what the lock file asks
// for when that is not what is installed, then makes sure that the pinned Node is the one that will run.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, realpathSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const stamp = join(root, 'node_modules', '.soakproof-lock');
const localNode = join(root, 'node_modules', 'node', 'bin', process.platform === 'win32' ? 'node.exe' : 'node');

const lock = join(root, 'package-lock.json');

if (existsSync(lock)) installWhatIsLocked();
else if (!existsSync(localNode))
  stop(
    'There is no package-lock.json, which says what to install. Bring it back with `git restore package-lock.json`, then run the same command again.',
  );
requireNode24();

function installWhatIsLocked() {
  const wanted = createHash('sha256').update(readFileSync(lock)).digest('hex');
  const installed = existsSync(stamp) ? readFileSync(stamp, 'utf8') : '';
  if (installed === wanted && existsSync(localNode)) return;
  if (!existsSync(localNode) || !isInstalled()) install();
  writeFileSync(stamp, wanted);
}

/** Whether npm itself has put in place what the lock file asks for, as `npm install PACKAGE` does. What only packages call optional may be missing. */
function isInstalled() {
  try {
    const packagesOf = (path) => JSON.parse(readFileSync(path, 'utf8')).packages;
    const there = packagesOf(join(root, 'node_modules', '.package-lock.json'));
    const { '': project, ...locked } = packagesOf(lock);
    const ours = new Set(Object.keys(project.optionalDependencies ?? {}).map((name) => `node_modules/${name}`));
    const asked = Object.entries(locked).filter(
      ([path, { optional, devOptional }]) => ours.has(path) || !(optional || devOptional),
    );
    return asked.every(
      ([path, { integrity, version }]) => there[path]?.version === version && there[path]?.integrity === integrity,
    );
  } catch {
    return false;
  }
}

/** Runs `npm ci` with the npm that started us, or the one on the path. */
function install() {
  console.log('Installing what package-lock.json asks for …');
  const npm = process.env.npm_execpath;
  const args = ['ci', '--no-audit', '--no-fund', '--loglevel=error'];
  const options = { cwd: root, stdio: 'inherit' };
  const result = npm
    ? spawnSync(process.execPath, [npm, ...args], options)
    : spawnSync('npm', args, { ...options, shell: process.platform === 'win32' });
  if (result.status !== 0)
    stop(
      `npm ci ended with ${result.status ?? result.signal ?? result.error?.message}. Mend what it says above, then run the same command again.`,
    );
}

/** The scripts after this one call `node`, which npm finds in node_modules/.bin. */
function requireNode24() {
  // npm has found the pinned Node already, and this is it.
  if (realpathSync(process.execPath) === realpathSync(localNode) && process.version.startsWith('v24.')) return;
  const version = spawnSync(localNode, ['--version'], { encoding: 'utf8' });
  if (version.status !== 0)
    stop(
      `The Node that came with the packages does not start (${version.error?.message ?? version.stderr}). Remove node_modules and run the same command again.`,
    );
  if (!version.stdout.startsWith('v24.'))
    stop(`Found Node ${version.stdout.trim()} in node_modules, expected v24. Remove node_modules and run the same command again.`);
}

function stop(sentence) {
  console.error(sentence);
  process.exit(1);
}
