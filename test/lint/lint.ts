/** `npm run lint`: its four parts at once, since each keeps one core busy. Prints what each said, in order; exit code 1 where one found fault. */
import { spawn } from 'node:child_process';
import { commandLine } from '../../src/commands/command-line.ts';

commandLine({
  name: 'lint',
  does: 'Looks at the code without running it: format and rules, directions of imports, types, pages.',
  exits: { 0: 'nothing was found', 1: 'something was found, and is printed' },
  example: 'npm run lint',
});

const PARTS = [
  'biome check --error-on-warnings .',
  'depcruise --config test/lint/import-directions.cjs src',
  // By its path, since astro check's TypeScript 6 brings a command of the same name.
  'node node_modules/typescript-native/bin/tsc --noEmit',
  'astro check --minimumSeverity hint --tsconfig test/lint/tsconfig.astro.json',
];

interface Ended {
  readonly code: number | null;
  readonly said: string;
}

function run(part: string): Promise<Ended> {
  const [command = '', ...args] = part.split(' ');
  return new Promise((resolve, reject) => {
    const running = spawn(command, args, { env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1' } });
    let said = '';
    for (const stream of [running.stdout, running.stderr]) stream.setEncoding('utf8').on('data', (text: string) => (said += text));
    running.once('error', reject);
    running.once('close', (code) => resolve({ code, said }));
  });
}

const ended = await Promise.all(PARTS.map(run));
for (const [index, { code, said }] of ended.entries())
  console.log(`${PARTS[index]}: ${code === 0 ? 'ok' : 'faults'}\n${said.trim()}\n`);
process.exitCode = ended.every(({ code }) => code === 0) ? 0 : 1;
