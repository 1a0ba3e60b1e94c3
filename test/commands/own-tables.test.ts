/** Tables as benchmarks and cameras write them, from the bytes to the figures: read by what the author declares, and no file edited. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { printFigures } from '../../src/commands/figures/print-figures.ts';

let root = '';
const file = (path: string, text: string) => {
  mkdirSync(dirname(join(root, path)), { recursive: true });
  writeFileSync(join(root, path), text);
};

const LOG = `t [s],SoC [°C]\n${Array.from({ length: 120 }, (_, t) => `${t},${t < 60 ? 30 : 50}`).join('\n')}\n`;
const SETUP =
  'title: Bench\ndevice: larch-2\nspecimen: no-1\nchannels:\n  soc:\n    quantity: temperature\n    column: "SoC [°C]"\nphases:\n  load: 60 s ..\n';

function run(id: string, more: string): void {
  file(`data/${id}.csv`, LOG);
  file(`content/runs/${id}.md`, `---\ntitle: ${id}\nsetup: bench\ndate: 2026-03-14\nlog: ${id}.csv\n${more}---\n`);
}

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'soakproof-tables-'));
  file('content/devices/larch-2.md', '---\ntitle: Larch 2 (invented)\nmaker: Nobody\ninvented: yes\n---\n');
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

async function figures(...ids: string[]) {
  const printed = { out: '', err: '' };
  const print = { out: (text: string) => (printed.out += text), err: (text: string) => (printed.err += text) };
  const code = await printFigures(root, [...ids, '--json'], print);
  return { code, err: printed.err, ...(printed.out === '' ? {} : JSON.parse(printed.out)) };
}
const values = (run: { figures: Record<string, { value?: number; unit?: string }> }, start: string) =>
  Object.fromEntries(
    Object.entries(run.figures).flatMap(([address, { value, unit }]) =>
      address.startsWith(start) && value !== undefined ? [[address, `${Number(value.toPrecision(6))} ${unit}`]] : [],
    ),
  );

describe('tables as they come', () => {
  it('scores of two settings in one long file, declared once in a setup', async () => {
    file(
      'data/bench.csv',
      'Benchmark;Clock;Result;Unit\nCopy;1900;10,5;MB/s\nCopy;1900;11,5;MB/s\nSort;1900;3;s\nCopy;2400;14;MB/s\nSort;2400;2,5;s\n',
    );
    const scores =
      'scores:\n  file: bench.csv\n  columns:\n    test: Benchmark\n    value: Result\n    unit: Unit\n  tests:\n    Copy: higher\n    Sort: lower\n';
    file('content/setups/bench.md', `---\n${SETUP}${scores}---\n`);
    run('slow', 'scores:\n  rows:\n    Clock: 1900\n');
    run('fast', 'scores:\n  rows:\n    Clock: 2400\n');
    run('none', '');
    const { code, err, runs } = await figures('slow', 'fast', 'none');
    expect([code, err]).toEqual([0, '']);
    expect(values(runs.slow, 'score.')).toEqual({ 'score.copy': '11 MB/s', 'score.sort': '3 s' });
    expect(values(runs.fast, 'score.')).toEqual({ 'score.copy': '14 MB/s', 'score.sort': '2.5 s' });
    expect(values(runs.none, 'score.')).toEqual({});
    expect(runs.slow.figures['score.copy'].from).toEqual({
      file: 'data/bench.csv',
      columns: ['Benchmark', 'Result'],
      rows: [2, 3],
    });
  });

  it('the same in wide form, with the error that the table states', async () => {
    file('data/wide.csv', 'Clock,Copy [MB/s],Sort [s],Frames\n1900,10.5,3,31\n2400,14,2.5,40\n');
    file('content/setups/bench.md', `---\n${SETUP}---\n`);
    run(
      'slow',
      'scores:\n  file: wide.csv\n  layout: wide\n  rows:\n    Clock: 1900\n  tests:\n    Copy: higher\n    Sort: lower\n    Frames: higher, frames\n',
    );
    file('data/errors.csv', 'name,mean,sd\nCopy,10,0.2\n');
    run(
      'stated',
      'scores:\n  file: errors.csv\n  columns:\n    test: name\n    value: mean\n    error: sd\n  error_is: standard\n  tests:\n    Copy: higher, points\n',
    );
    const { code, err, runs } = await figures('slow', 'stated');
    expect([code, err]).toEqual([0, '']);
    expect(values(runs.slow, 'score.')).toEqual({ 'score.copy': '10.5 MB/s', 'score.sort': '3 s', 'score.frames': '31 frames' });
    expect(runs.stated.figures['score.copy']).toMatchObject({ value: 10, u: 0.2 });
  });

  it('a camera’s spots, and outcomes in words of one’s own', async () => {
    file('data/spots.csv', 'Point,Max\nLid centre,48.7\nBase,40.1\n');
    file('content/setups/bench.md', `---\n${SETUP}surface:\n  columns:\n    spot: Point\n    reading: Max\n---\n`);
    run('slow', 'surface: spots.csv\n');
    file('data/tried.csv', 'MHz,Result\n1900,ok\n2400,froze\n');
    file(
      'content/attempts/tried.md',
      '---\ntitle: Tried\ndevice: larch-2\nspecimen: no-1\ntable:\n  file: tried.csv\n  columns:\n    clock: MHz\n    outcome: Result\n  units:\n    clock: MHz\n  every_row:\n    voltage_offset: 0 mV\n  words:\n    ok: passed\n    froze: hung under load\npassed:\n  test: mix\n  duration: 10 min\n  ambient: 22 °C\n---\n',
    );
    const { code, err, runs, attempts } = await figures('slow', 'tried');
    expect([code, err]).toEqual([0, '']);
    expect(values(runs.slow, 'camera_reading')).toEqual({
      'camera_reading.lid-centre': '48.7 °C',
      'camera_reading.base': '40.1 °C',
    });
    expect(values(attempts.tried, '')).toEqual({
      highest_passed_clock: '1900000000 Hz',
      'highest_passed_clock.0 mV': '1900000000 Hz',
      'lowest_failed_clock.0 mV': '2400000000 Hz',
    });
  });

  it('what is wrong with a file is one message, with a mapping to copy', async () => {
    file('content/setups/bench.md', `---\n${SETUP}---\n`);
    file('data/bench.csv', 'Benchmark,Result,Units\nCopy,10,MB/s\nSort,3,s\n');
    run('slow', 'scores: bench.csv\n');
    file('data/tried.csv', 'clock,voltage_offset,outcome\n1.9 GHz,0 mV,ok\n2.1 GHz,0 mV,ok\n2.4 GHz,0 mV,froze\n');
    file('content/attempts/tried.md', '---\ntitle: Tried\ndevice: larch-2\nspecimen: no-1\ntable: tried.csv\n---\n');
    const { err } = await figures('slow', 'tried');
    expect(err.match(/ error: /g)).toHaveLength(2);
    expect(err).toContain('4 faults in this table: line 1: no column `test`; line 1: no column `value`');
    expect(err).toContain(
      'scores:\n    file: bench.csv\n    columns:\n      test: Benchmark\n      value: Result\n      unit: Units\n    tests:\n      Copy: higher\n      Sort: lower\n',
    );
    expect(err).toContain('3 faults in this table: lines 2, 3: `outcome` is `ok`; line 4: `outcome` is `froze`');
    expect(err).toContain('words:\n      ok: passed\n      froze: hung under load\n');
  });

  it('a mapping that the message proposes is one that is read', async () => {
    file('content/setups/bench.md', `---\n${SETUP}---\n`);
    file('data/bench.csv', 'Benchmark,Result,Units\nCopy,10,MB/s\nSort,3,s\n');
    run('slow', 'scores: bench.csv\n');
    const { err } = await figures('slow');
    const [, proposed = ''] = /to do: [^\n]*\n((?:.|\n)*?)\n\n/.exec(err) ?? [];
    run('slow', `${proposed.replaceAll(/^ {2}/gm, '')}\n`);
    const { code, err: after, runs } = await figures('slow');
    expect([code, after]).toEqual([0, '']);
    expect(values(runs.slow, 'score.')).toEqual({ 'score.copy': '10 MB/s', 'score.sort': '3 s' });
  });
});
