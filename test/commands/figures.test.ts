import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { printFigures } from '../../src/commands/figures/print-figures.ts';

let root = '';
const file = (path: string, text: string) => {
  mkdirSync(dirname(join(root, path)), { recursive: true });
  writeFileSync(join(root, path), text);
};

/** An invented run: two minutes at 30 °C, two minutes at a temperature of its own, in steps of a tenth. */
function addRun(id: string, clock: string, warm: number): void {
  const rows = Array.from({ length: 240 }, (_, t) => `${t},${(t < 120 ? 30 : warm + ((t % 3) - 1) / 10).toFixed(1)}`);
  file(`data/${id}.csv`, `Elapsed [s],SoC [°C]\n${rows.join('\n')}\n`);
  file(`data/${id}-scores.csv`, 'test,value,unit,better\nWide copy,10,MB/s,higher\nWide copy,12,MB/s,higher\n');
  file(
    `content/runs/${id}.md`,
    `---\ntitle: Soak ${id}\ndevice: larch-2\nspecimen: no-1\ndate: 2026-03-14\nsetting:\n  clock: ${clock}\nlog: ${id}.csv\nscores: ${id}-scores.csv\nchannels:\n  soc:\n    quantity: temperature\n    column: "SoC [°C]"\nphases:\n  idle: 0 .. 2 min\n  load: 2 min ..\n---\n`,
  );
}

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'soakproof-figures-'));
  file('content/devices/larch-2.md', '---\ntitle: Larch 2 (invented)\nmaker: Nobody\ninvented: yes\n---\n');
  addRun('slow', '2.0 GHz', 50);
  addRun('fast', '2.4 GHz', 60);
  file('content/comparisons/steps.md', '---\ntitle: Steps\nruns:\n  rated: slow\n  fast: fast\nreference: rated\n---\n');
  file(
    'content/notes/x.md',
    '---\ntitle: X\ndate: 2026-03-15\nstatus: draft\nruns:\n  quick: fast\ncomparisons:\n  steps: steps\n---\n\nX.\n',
  );
  file('data/tried.csv', 'clock,voltage_offset,outcome,note\n2.0 GHz,0 mV,passed,\n2.4 GHz,0 mV,hung under load,\n');
  file('content/attempts/tried.md', '---\ntitle: Tried\ndevice: larch-2\nspecimen: no-1\ntable: tried.csv\n---\n');
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

async function figures(...args: string[]) {
  const printed = { code: 0, out: '', err: '' };
  printed.code = await printFigures(root, args, {
    out: (text) => (printed.out += text),
    err: (text) => (printed.err += text),
    width: 100,
  });
  return printed;
}
/** A line of a table by its first word, blanks made one. */
const row = (out: string, name: string) =>
  out
    .split('\n')
    .find((line) => line.trim().startsWith(`${name} `))
    ?.trim()
    .replaceAll(/\s+/g, ' ');

describe('commands/figures', () => {
  it('prints each figure of a run under the name that a text holds it by, and why others are absent', async () => {
    const { code, out, err } = await figures('slow');
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^slow: Soak slow, 2026-03-14, clock 2\.0\sGHz\n/);
    expect(row(out, 'idle_temperature')).toMatch(/^idle_temperature 30\.0\s°C /);
    expect(row(out, 'score."wide-copy"')).toMatch(/^score\."wide-copy" 11\sMB\/s .*2 repeats/);
    expect(out).toMatch(/\nAbsent\n(?:.*\n)*? +throttle_headroom\b(?:.*\n)+? +The device states no temperature at which/);
    expect(out.split('\n').filter((line) => line.length > 100)).toEqual([]);
  });

  it('prints the same as JSON, unrounded', async () => {
    const { out } = await figures('content/runs/slow.md', '--json');
    const { runs } = JSON.parse(out);
    expect(Object.keys(runs)).toEqual(['slow']);
    expect(runs.slow.figures.idle_temperature).toMatchObject({ value: 30, unit: '°C' });
    expect(runs.slow.figures['score.wide-copy'].value).toBeCloseTo(11, 12);
    expect(runs.slow.log).toMatchObject({ file: 'data/slow.csv', rows: 240, span_s: 239 });
  });

  it('prints runs of a note or comparison side by side, by their aliases, and what is compared', async () => {
    const { code, out } = await figures('steps');
    expect(code).toBe(0);
    expect(out).toMatch(/^ +rated +fast$/m);
    expect(row(out, 'peak_temperature')).toMatch(/^peak_temperature 50\.1\s°C 60\.1\s°C$/);
    expect(row(out, 'speedup.fast."wide-copy"') ?? row(out, 'speedup.fast')).toBeDefined();
    const note = await figures('content/notes/x.md', '--json');
    expect(Object.keys(JSON.parse(note.out).runs)).toEqual(['quick', 'slow']);
    expect(Object.keys(JSON.parse(note.out).comparisons)).toEqual(['steps']);
  });

  it('prints what came of attempts', async () => {
    const { code, out } = await figures('tried');
    expect(code).toBe(0);
    expect(out).toMatch(/^Stability$/m);
    expect(out).toMatch(/ 2\.\d+\sGHz\b/);
  });

  it('says what is wrong where a file cannot be used, and names what there is', async () => {
    file('content/runs/broken.md', '---\ntitle: Broken\nlogg: x.csv\n---\n');
    const broken = await figures('broken');
    expect([broken.code, broken.out]).toEqual([1, '']);
    expect(broken.err).toMatch(/content\/runs\/broken\.md cannot be used:\ncontent\/runs\/broken\.md:\d+:\d+: error/);
    rmSync(join(root, 'content/runs/broken.md'));
    const none = await figures('slwo');
    expect(none.err).toContain('there is no run, comparison, attempts file, note or script slwo: did you mean `slow`?');
    file('data/slow-scores.csv', 'test,value,unit,better\nWide copy,10,MB/s,up\n');
    const spoiled = await figures('slow');
    expect(spoiled.err).toContain('the direction `up`');
    expect(row(spoiled.out, 'idle_temperature')).toBeDefined();
  });
});
