import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Command, helpText, lineFault } from '../../src/commands/command-line.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const { scripts } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as { scripts: Record<string, string> };

/** The file that a command of npm runs; `publish` runs another command, since npm has a `prepublish` of its own. */
function fileOf(name: string): string {
  const script = scripts[name]!;
  const other = /^npm run --silent (\S+) --$/.exec(script)?.[1];
  const [program, file, ...more] = other === undefined ? script.split(' ') : ['node', fileOf(other)];
  expect([program, more], `${name} runs one file`).toEqual(['node', []]);
  return file!;
}

const targets = Object.values(scripts).flatMap((script) => /^npm run --silent (\S+) --$/.exec(script)?.[1] ?? []);
/** npm runs it by itself, before it packs. */
const PREPACK = 'prepack';
/** Every command that a person gives: no `pre…`, and no second name. */
const COMMANDS = Object.keys(scripts).filter(
  (name) => name !== PREPACK && !targets.includes(name) && !scripts[name.replace(/^pre/, '')] === /^pre/.test(name),
);

interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

function run(name: string, ...args: string[]): Promise<Ran> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [fileOf(name), ...args], { cwd: ROOT, env: { ...process.env, NO_COLOR: '1' } });
    let [out, err] = ['', ''];
    child.stdout.on('data', (chunk) => (out += chunk));
    child.stderr.on('data', (chunk) => (err += chunk));
    child.once('close', (code) => resolve({ code, out, err }));
  });
}

const COMMAND: Command = {
  name: 'soak',
  does: 'Soaks.',
  takes: [
    { name: 'NOTE', is: 'a note' },
    { name: 'DAY', is: 'a day', optional: true },
  ],
  options: { '--long': { does: 'soak long' }, '--at': { value: 'CLOCK', does: 'soak at a clock' } },
  exits: { 0: 'soaked' },
  example: 'npm run soak -- x.md',
};

describe('commands/command-line', () => {
  it('finds the commands of package.json', () => {
    expect(COMMANDS).toContain('publish');
    expect(COMMANDS.filter((name) => name.startsWith('pre'))).toEqual(['preview']);
  });

  it('refuses to pack the clone as it is', async () => {
    expect(await run(PREPACK)).toEqual({
      code: 1,
      out: '',
      err: '`npm pack` would pack the clone as it is, and that does not run where it is installed. `npm run package` writes the package.\n',
    });
  });

  it.each(COMMANDS)('npm run %s -- --help says what it does, takes and ends with, and does nothing', async (name) => {
    const { code, out, err } = await run(name, '--help', '--no-such-option');
    expect([code, err]).toEqual([0, '']);
    for (const part of ['--help', 'Exit codes:\n', '\n  0  ', '\n  1  ', '\n  2  ', 'Example:\n  npm '])
      expect(out).toContain(part);
    await expect(out).toMatchFileSnapshot(join(import.meta.dirname, 'help', `${name}.txt`));
  });

  it('refuses an option that it does not have, with exit code 2', async () => {
    const { code, out, err } = await run('check', '--no-such-option');
    expect([code, out]).toEqual([2, '']);
    expect(err).toBe('`npm run check` has no option --no-such-option. `npm run check -- --help` says what it takes.\n');
  });

  it('refuses two forms of one check, with exit code 2', async () => {
    expect(await run('check', '--json', '--sarif')).toEqual({
      code: 2,
      out: '',
      err: '--json and --sarif exclude each other: one form is printed.\nnpm run check -- --sarif\n',
    });
  });

  it.each([
    [['x.md'], null],
    [['x.md', '2026-03-14', '--long', '--at', '-2'], null],
    [['--at=2.6 GHz', 'x.md'], null],
    [['-'], null],
    [[], '`npm run soak` needs NOTE: a note'],
    [['x.md', 'a', 'b'], '`npm run soak` takes 2 arguments, found x.md a b'],
    [['x.md', '-l'], '`npm run soak` has no option -l'],
    [['x.md', '--long=3'], '--long takes no value, found 3'],
    [['x.md', '--at'], '--at needs a value: CLOCK'],
  ])('reads the line %j', (args, fault) => expect(lineFault(COMMAND, args)).toBe(fault));

  it('takes the last argument any number of times where it says so, and none where there is none', () => {
    const many = { ...COMMAND, takes: [{ name: 'FILE', is: 'a file', many: true }] } as const;
    expect(lineFault(many, ['a', 'b', 'c'])).toBeNull();
    expect(lineFault(many, [])).toBe('`npm run soak` needs FILE: a file');
    const { takes: _takes, ...none } = COMMAND;
    expect(lineFault(none, ['a'])).toBe('`npm run soak` takes no arguments, found a');
    expect(helpText(many)).toContain('npm run soak -- FILE… [--long] [--at CLOCK]\n');
  });
});
