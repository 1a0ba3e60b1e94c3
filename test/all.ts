/** `npm test`: lint, then all tests, or those of the files that are named. */
import { spawnSync } from 'node:child_process';
import { commandLine } from '../src/commands/command-line.ts';

commandLine({
  name: 'test',
  does: 'Runs lint, then all tests: of units, of stages and of whole sites.',
  takes: [{ name: 'PATH', is: 'a part of the paths of the test files to run; all if left out', optional: true, many: true }],
  options: { '--project': { value: 'NAME', does: 'only the tests of unit, stage or site' } },
  exits: { 0: 'lint finds nothing and every test passes', 1: 'lint found something, or a test fails' },
  example: 'npm test -- --project unit test/figures',
});
const run = (command: string, args: readonly string[]) => spawnSync(command, args, { stdio: 'inherit' }).status ?? 1;
process.exitCode = run(process.execPath, ['test/lint/lint.ts']) || run('vitest', ['run', ...process.argv.slice(2)]);
