import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { draw } from '../../src/plots/draw.ts';
import { PLACE, request, subject } from './subjects.ts';

const rated = subject('rated', { rise: 40 });
const fast = subject('fast', { rise: 55, load: 2100 });
const KINDS = ['trace', 'step-response', 'power-by-phase'] as const;
const drawn = new Map(
  await Promise.all(KINDS.map(async (kind) => [kind, await draw(request(kind, [rated, fast]), [rated, fast], 'fig-2')] as const)),
);

describe.each(KINDS)('plots/draw %s', (kind) => {
  const plot = drawn.get(kind)!;

  test('has no problems and says what it shows', () => {
    expect(plot.problems).toEqual([]);
    expect(plot.id).toBe(`${kind}-1`);
    expect(plot.about ?? plot.title).toMatch(/rated and fast$/);
    expect(plot.title).toMatch(/rated.*fast/i);
    expect(plot.method).toMatch(/\.$/);
  });

  test.each(['wide', 'narrow'] as const)(
    '%s: one labelled image without style attributes, ids of its own, colours by variable',
    (size) => {
      const svg = plot[size];
      expect(svg).toMatch(/^<svg role="img" aria-label="[^"]*rated[^"]*fast[^"]*"/i);
      expect(svg).not.toMatch(/\sstyle=/);
      expect(svg).not.toMatch(/aria-hidden|graphics-/);
      for (const [, id] of svg.matchAll(/\bid="([^"]*)"/g)) expect(id).toMatch(new RegExp(`^fig-2-${size}-`));
      expect(svg).toContain('var(--plot-1)');
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
      expect(svg).not.toMatch(/(?:fill|stroke)="(?!none|var\(--plot-[a-z0-9]+\)|transparent)/);
    },
  );

  test('is as wide as its columns, and its type legible at 1:1', () => {
    expect(plot.wide).toMatch(/^<svg [^>]*width="864"/);
    expect(plot.narrow).toMatch(/^<svg [^>]*width="344"/);
    for (const [, px] of plot.narrow.matchAll(/font-size="([\d.]+)px"/g)) expect(Number(px)).toBeGreaterThanOrEqual(11);
  });

  test('runs are labelled in the drawing, in their colours', () => {
    for (const svg of [plot.wide, plot.narrow]) {
      expect(svg).toMatch(/fill="var\(--plot-1\)"[^>]*>rated[,<]/);
      expect(svg).toMatch(/fill="var\(--plot-2\)"[^>]*>fast[,<]/);
    }
  });

  test('downloads have their colours filled in; no picture is made that nobody asked for', () => {
    expect(plot.svg).not.toContain('var(');
    expect(plot.svg).toContain(plot.title);
    expect(plot.png).toBeUndefined();
  });

  test('the data stand in a CSV of equal rows and in a short table of equal rows', () => {
    const { data, errors } = Papa.parse<string[]>(plot.csv, { skipEmptyLines: true });
    expect(errors).toEqual([]);
    expect(data.length).toBeGreaterThan(3);
    expect(new Set(data.map((row) => row.length)).size).toBe(1);
    expect(plot.table.rows.length).toBeGreaterThan(3);
    expect(plot.table.rows.length).toBeLessThanOrEqual(40);
    for (const row of plot.table.rows) expect(row).toHaveLength(plot.table.head.length);
  });
});

describe('plots/draw', () => {
  test('drawn again, in another zone, locale and process, and without code generation, the bytes are the same', async () => {
    const script = fileURLToPath(new URL('draw-digest.ts', import.meta.url));
    const env = { ...process.env, TZ: 'Pacific/Chatham', LC_ALL: 'tr_TR.UTF-8', LANG: 'tr_TR.UTF-8' };
    const there = execFileSync(process.execPath, ['--disallow-code-generation-from-strings', script], { env, encoding: 'utf8' });
    const { digests } = await import('./draw-digest.ts');
    expect(JSON.parse(there)).toEqual(await digests());
  });

  test('the author’s title is kept', async () => {
    const { title, wide } = await draw(request('trace', [rated], [], { title: 'Under load & after' }), [rated], 'p');
    expect(title).toBe('Under load & after');
    expect(wide).toContain('aria-label="Under load &#38; after"');
  });

  test('what cannot be drawn gives located errors and an empty drawing', async () => {
    const plot = await draw(request('trace', [rated], ['sox']), [rated], 'p');
    expect(plot.problems).toEqual([
      {
        severity: 'error',
        rule: 'unknown-channel',
        place: PLACE,
        found: 'the run rated has no channel `sox`',
        expected: 'one of its channels: `soc`, `core_clock`, `board`, `flag` or `dead`',
        remedy: 'did you mean `soc`?',
      },
    ]);
    expect([plot.wide, plot.narrow, plot.svg, plot.csv]).toEqual(['', '', '', '']);
  });

  test('a picture to pass on is a PNG', async () => {
    const { png = '' } = await draw(request('trace', [rated]), [rated], 'p', [], null, { png: true });
    expect(Buffer.from(png, 'base64').toString('latin1', 1, 4)).toBe('PNG');
  });
});

describe('plots/draw, of a run without an alias', () => {
  const titled = { ...rated, alias: '', title: 'Rated setting, hour soak' };

  test.each([
    ['trace', ['soc', 'core_clock', 'board'], 'Temperature, clock and power over time', 'core clock'],
    ['trace', ['soc'], 'Temperature of soc over time', 'soc'],
    ['step-response', [], 'Step response of soc to the load', 'soc'],
  ] as const)('%s of %j: the page’s title is not said again, lines are named by channel', async (kind, channels, title, label) => {
    const plot = await draw(request(kind, [titled], channels), [titled], 'p');
    expect(plot.about ?? plot.title).toBe(title);
    for (const svg of [plot.wide, plot.narrow]) {
      expect(svg).not.toContain('Rated setting');
      expect(svg).toMatch(new RegExp(`>${label}[,<]`));
    }
    expect(plot.alt).toMatch(new RegExp(`[:.;] ${label} `));
    expect(plot.alt).not.toContain('Rated setting');
    expect(plot.svg).toContain(`aria-label="${plot.title}: Rated setting, hour soak"`);
    const run = Papa.parse<string[]>(plot.csv, { skipEmptyLines: true }).data[1]![0];
    expect(run).toBe('Rated setting, hour soak');
  });
});
