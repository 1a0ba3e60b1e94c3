/** The guide's first page from its beginning to its end, as a newcomer follows it: what it says to write is written, and what it says is printed is printed. */
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { copyBuilt, copySources, type Ran, runCommand } from '../site/project.ts';
import { type Fence, fencesOf } from './fences.ts';

const FENCES = fencesOf('text data', 'text printed', 'markdown note', 'sh', 'yaml device', 'yaml setup', 'yaml run').filter(
  ({ page }) => page === 'first-write-up.md',
);
const of = (kind: string): Fence[] => FENCES.filter((fence) => fence.kind === kind);
const NOTE = 'content/notes/faster-clock.md';

let root = '';
const run = (command: string, ...args: string[]): Ran => runCommand(root, command, {}, args);

function put(path: string, text: string): void {
  mkdirSync(dirname(join(root, path)), { recursive: true });
  writeFileSync(join(root, path), text);
}

/** The lines of what was printed that a fence shows: `add 1-6` is lines 1 to 6 of what add said. */
function shown(rest: string, printed: string): string {
  const [, from = '1', to = ''] = /(\d+)-(\d+)/.exec(rest) ?? [];
  const lines = printed.trimEnd().split('\n');
  return `${lines.slice(Number(from) - 1, to === '' ? lines.length : Number(to)).join('\n')}\n`;
}

function expectPrinted(command: string, { out, err }: Ran): void {
  const fences = of('text printed').filter(({ rest }) => rest.split(' ')[0] === command);
  expect(fences.length, command).toBeGreaterThan(0);
  for (const { rest, text } of fences) expect(shown(rest, out + err)).toBe(text);
}

/** An invented soak: an approach to `hot` by the law of cooling, and noise from a fixed seed. */
function soak(start: number, clock: number, hot: number, watts: number): string {
  let seed = clock;
  const noise = () => {
    seed = (seed * 48271) % 2147483647;
    return (seed / 2147483647 - 0.5) * 0.5;
  };
  const rows = Array.from({ length: 540 }, (_, row) => {
    const t = row * 5;
    const loaded = t >= 300 && t < 2100;
    const level = t < 300 ? 0 : (1 - Math.exp(-(Math.min(t, 2100) - 300) / 240)) * Math.exp(-Math.max(0, t - 2100) / 240);
    const instant = new Date(Date.UTC(2026, 2, 14, start) + t * 1000).toISOString().replace('.000Z', 'Z');
    const power = (loaded ? watts : 2.1) + noise() / 10;
    return `${instant},${(34 + (hot - 34) * level + noise()).toFixed(1)},${loaded ? clock : 600},${power.toFixed(2)}`;
  });
  return `Time,CPU [°C],Clock [MHz],Power [W]\n${rows.join('\n')}\n`;
}

beforeAll(() => {
  root = mkdtempSync(join(inject('scratch'), 'newcomer-'));
  copySources(root);
  copyBuilt(root, ['.cache']);
  // The page about the publication stays, since the configuration names it.
  const folders = readdirSync(join(root, 'content')).filter((each) => !each.endsWith('.md'));
  for (const folder of [...folders.map((each) => join('content', each)), 'data', '.cache/results'])
    rmSync(join(root, folder), { recursive: true, force: true });
  const [rated = '', fast = ''] = of('text data')[0]!.text.trim().split('\n');
  put(rated, soak(8, 2400, 61, 6.4));
  put(fast, soak(10, 2600, 68, 7.9));
  return () => rmSync(root, { recursive: true, force: true });
});

describe('the first write-up', () => {
  it('goes from two logs to a published note', () => {
    const lines = of('sh').flatMap(({ text }) => text.trim().split('\n'));
    expect(lines.map((line) => line.split(' ')[2])).toEqual([
      'package',
      'new',
      'add',
      'figures',
      'hold',
      'check',
      'publish',
      'build',
    ]);
    const argsOf = (command: string) =>
      lines
        .find((line) => line.startsWith(`npm run ${command}`))!
        .split(' -- ')[1]
        ?.split(' ') ?? [];

    const added = run('add', ...argsOf('add'));
    expect(added.code, added.err).toBe(0);
    expectPrinted('add', added);

    for (const { rest, text } of [...of('yaml device'), ...of('yaml setup'), ...of('yaml run')]) put(rest, `---\n${text}---\n`);
    expectPrinted('figures', run('figures', ...argsOf('figures')));

    const [note] = of('markdown note');
    put(NOTE, note!.text);
    expect(argsOf('hold')).toEqual([NOTE]);
    expectPrinted('hold', run('hold', NOTE));
    const takes = [1, 2, 3, 4, 5].flatMap((number) => ['--take', `${number}=1`]);
    const held = run('hold', NOTE, ...takes);
    expect(held.code, held.err + held.out).toBe(0);

    const checked = run('check');
    expect(checked.code, checked.err).toBe(0);
    expectPrinted('check', checked);

    const published = run('publish', ...argsOf('publish'));
    expect(published.code, published.err).toBe(0);
    expect(published.out).toContain('5 numbers');
  });
});
