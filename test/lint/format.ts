/** `npm run format`: writes the project's files in its form, and mends what lint can mend by itself. */
import { spawnSync } from 'node:child_process';
import { commandLine } from '../../src/commands/command-line.ts';

commandLine({
  name: 'format',
  does: "Writes the project's files in its form, and mends what lint can mend by itself.",
  exits: { 0: 'nothing is left', 1: 'something is left to mend by hand, and is printed' },
  example: 'npm run format',
});
process.exitCode = spawnSync('biome', ['check', '--write', '.'], { stdio: 'inherit' }).status ?? 1;
