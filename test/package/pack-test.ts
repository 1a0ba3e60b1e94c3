/**
 * `npm run pack-test`: the package as a user meets it. In an empty folder outside of any project, by the Node that the machine itself has, it is
 * installed from its one file, and prints the demonstration to the bytes of this folder's dist/.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { commandLine } from '../../src/commands/command-line.ts';
import { differences, tree } from '../site/project.ts';
import { ROOT } from './emit.ts';
import { copyPublication } from './installed.ts';

commandLine({
  name: 'pack-test',
  does: 'Installs the package in an empty folder, builds the demonstration there with the Node that the machine has, and compares it with dist/. Takes minutes, and the registry of npm.',
  exits: { 0: 'the same bytes', 1: 'a step failed, or bytes differ' },
  example: 'npm run pack-test',
});

/** As outside of npm's scripts: the machine's own Node, nothing that npm says of this project. */
const env = Object.fromEntries(
  Object.entries(process.env)
    .filter(([name]) => !/^npm_|^INIT_CWD$|^NODE/i.test(name))
    .map(([name, value]) => [
      name,
      /^path$/i.test(name)
        ? (value ?? '')
            .split(delimiter)
            .filter((each) => !/node_modules|node-gyp-bin/.test(each))
            .join(delimiter)
        : value,
    ]),
);

function run(cwd: string, command: string, ...args: readonly string[]): string {
  const { status, stdout, error } = spawnSync(command, args, {
    cwd,
    env,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'inherit'],
    shell: process.platform === 'win32',
  });
  if (status === 0) return stdout.trim();
  console.error(`${command} ${args.join(' ')} ended with ${status ?? error?.message}.`);
  process.exit(1);
}

if (!existsSync(join(ROOT, 'dist'))) {
  console.error('There is no site in dist/ to compare with: `npm run build` makes it.');
  process.exit(1);
}
run(ROOT, process.execPath, join(ROOT, 'test', 'package', 'package.ts'));
const file = readdirSync(ROOT).find((name) => /^soakproof-.*\.tgz$/.test(name))!;
const folder = mkdtempSync(join(tmpdir(), 'soakproof-package-'));
console.log(`Node ${run(folder, 'node', '--version')}, npm ${run(folder, 'npm', '--version')}, ${file}, in ${folder}`);
run(folder, 'npm', 'install', join(ROOT, file), '--no-audit', '--no-fund', '--loglevel=error');
copyPublication(ROOT, folder);
console.log(run(folder, join(folder, 'node_modules', '.bin', 'soakproof'), 'build'));
const differing = differences(tree(join(folder, 'dist')), tree(join(ROOT, 'dist')));
console.log(differing.length === 0 ? 'The same bytes as dist/.' : `Other bytes than dist/:\n${differing.join('\n')}`);
if (differing.length > 0) process.exit(1);
rmSync(folder, { recursive: true, force: true });
