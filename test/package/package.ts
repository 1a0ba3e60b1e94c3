/** `npm run package`: the tool in one file that installs in any folder. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { commandLine } from '../../src/commands/command-line.ts';
import { emitPackage, ROOT } from './emit.ts';

commandLine({
  name: 'package',
  does: 'Compiles the tool into built/ and packs it. The file whose name it prints can be installed in any folder with `npm install FILE`.',
  exits: { 0: 'the package was written', 1: 'it could not be written' },
  example: 'npm run package',
});

// Node says of each use that stripping types by call is new.
process.removeAllListeners('warning');
emitPackage(join(ROOT, 'built'));
const packing = { cwd: ROOT, stdio: 'inherit', shell: process.platform === 'win32' } as const;
process.exitCode = spawnSync('npm', ['pack', './built', '--silent'], packing).status ?? 1;
