import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { addFiles } from '../../src/commands/add/add-files.ts';
import { blockPlot } from '../../src/commands/add/block-plot.ts';
import { read } from '../../src/intake/read.ts';
import { readRegister } from '../../src/register/read.ts';

const FIXTURES = join(import.meta.dirname, '..', 'fixtures', 'intake');
let root = '';
let out = '';
let err = '';

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'soakproof-add-'));
  mkdirSync(join(root, 'data', 'bench'), { recursive: true });
  mkdirSync(join(root, 'content', 'devices'), { recursive: true });
  mkdirSync(join(root, 'content', 'setups'), { recursive: true });
  writeFileSync(
    join(root, 'content', 'devices', 'larch-2.md'),
    '---\ntitle: Larch 2 (invented)\nmaker: Nobody\ninvented: yes\n---\n',
  );
  out = '';
  err = '';
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

const add = (...files: string[]) => addFiles(root, files, { out: (text) => (out += text), err: (text) => (err += text) });
const data = (name: string, text: string) => writeFileSync(join(root, 'data', 'bench', name), text);
const run = (id: string) => readFileSync(join(root, 'content', 'runs', `${id}.md`), 'utf8');

/** An invented soak: a minute idle, eight minutes of load, a minute after it. */
function soak(head = 'Elapsed [s],SoC [°C],Board [°C],Clock [MHz],Input [A]'): string {
  const rows = Array.from({ length: 600 }, (_, t) => {
    const load = t >= 60 && t < 540;
    const rise = load ? 30 * (1 - Math.exp(-(t - 60) / 90)) : t < 60 ? 0 : 30 * Math.exp(-(t - 540) / 90);
    return [t, (30 + rise).toFixed(1), (28 + rise / 2).toFixed(1), load ? 2000 : 600, (load ? 0.9 : 0.2).toFixed(3)].join(',');
  });
  return `${head}\n${rows.join('\n')}\n`;
}

/** The run's log read as `check` would read it, after the given lines were typed. */
function check(id: string, typed: Record<string, string> = {}) {
  const path = join(root, 'content', 'runs', `${id}.md`);
  let text = readFileSync(path, 'utf8');
  for (const [key, value] of Object.entries(typed))
    text = text.replace(new RegExp(`^( *)# +${key}: .*$`, 'm'), `$1${key}: ${value}`);
  writeFileSync(path, text);
  const files = ['devices', 'setups', 'runs'].flatMap((folder) =>
    readdirSync(join(root, 'content', folder)).map((name) => ({
      path: `content/${folder}/${name}`,
      text: readFileSync(join(root, 'content', folder, name), 'utf8'),
    })),
  );
  const { register, problems } = readRegister(files, {
    kind: (name) => (existsSync(join(root, 'data', name)) ? 'file' : 'missing'),
  });
  const declared = register.runs.get(id);
  const log = declared?.logs[0]?.declaration;
  const result = log && read(readFileSync(join(root, 'data', log.file)), log, `data/${log.file}`);
  return {
    problems: [...problems, ...(result?.problems ?? [])].filter(({ severity }) => severity === 'error'),
    log: result?.log,
    run: declared,
    typed: Object.keys(typed).length,
  };
}

describe('commands/add', () => {
  it('makes a run that passes with at most three lines typed', () => {
    data('first-soak.csv', soak());
    expect(add('data/bench/first-soak.csv')).toBe(0);
    const checked = check('first-soak', { specimen: 'no-1', date: '2026-03-14' });
    expect(checked.problems).toEqual([]);
    expect(checked.log!.channels.map(({ name, quantity, unit }) => [name, quantity, unit])).toEqual([
      ['soc', 'temperature', '°C'],
      ['board', 'temperature', '°C'],
      ['clock', 'clock', 'Hz'],
      ['input', 'current', 'A'],
    ]);
    expect(checked.typed).toBeLessThanOrEqual(3);
  });

  it('writes phases from the load edge, to be corrected', () => {
    data('a.csv', soak());
    add('data/bench/a.csv');
    expect(run('a')).toMatch(/phases:\n {2}idle: 0 \.\. 60 s\n {2}load: 60 \.\. 540 s\n {2}cool-down: 540 s \.\.\n/);
    expect(out).toContain('load: from 60 s to 9 min 0 s');
    data('flat.csv', `t_s,soc_c\n${Array.from({ length: 50 }, (_, t) => `${t},${40 + (t % 3) / 10}`).join('\n')}\n`);
    add('bench/flat.csv');
    expect(run('flat')).toContain('phases: auto\n');
  });

  it('shows columns, why, statistics and a plot', () => {
    data('a.csv', soak());
    add('data/bench/a.csv');
    expect(out).toContain('600 rows of 601 lines, UTF-8 (every byte fits), fields between commas');
    expect(out).toContain('time: Elapsed [s] (elapsed), 9 min 59 s long, a row every 1 s');
    expect(out).toContain('SoC [°C] -> soc: temperature (by its unit), unit °C (stands in brackets in the header)');
    expect(out).toMatch(/600 readings: first 30, last [\d.]+, least 30, greatest [\d.]+, mean [\d.]+\n {4}[▁▂▃▄▅▆▇█]{60}\n/);
  });

  it('rests on the only setup: its device, channels and phases', () => {
    writeFileSync(
      join(root, 'content', 'setups', 'bench.md'),
      '---\ntitle: Bench\ndevice: larch-2\nspecimen: no-1\nchannels:\n  soc:\n    quantity: temperature\n  board:\n    quantity: temperature\n  cpu_clock:\n    quantity: clock\n  fan:\n    quantity: fan\nphases:\n  load: 60 .. 540 s\n---\n',
    );
    data('a.csv', soak());
    expect(add('data/bench/a.csv')).toBe(0);
    expect(run('a')).toContain('setup: bench\n');
    expect(run('a')).not.toContain('phases:');
    const checked = check('a', { date: '2026-03-14' });
    expect(checked.problems).toEqual([]);
    expect(Object.fromEntries(checked.run!.channels.map(({ name, column }) => [name, column]))).toEqual({
      soc: 'SoC [°C]',
      board: 'Board [°C]',
      cpu_clock: 'Clock [MHz]',
      input: 'Input [A]',
    });
  });

  const SETUP_HEAD = '---\ntitle: Bench\ndevice: larch-2\nspecimen: no-1\nsetting:\n  clock: 2 GHz\nchannels:\n';
  const setup = (channels: string) =>
    writeFileSync(join(root, 'content', 'setups', 'bench.md'), `${SETUP_HEAD}${channels}phases:\n  load: 60 .. 540 s\n---\n`);

  it('gives a column to a channel of the setup only by name, or where there is one of its quantity in both', () => {
    setup('  die:\n    quantity: temperature\n  board:\n    quantity: temperature\n  cpu_clock:\n    quantity: clock\n');
    data('a.csv', soak('Elapsed [s],SoC [°C],Sink [°C],Clock [MHz],Input [A]'));
    expect(add('data/bench/a.csv')).toBe(0);
    expect(run('a')).toContain('  # die: none, if it was not logged; else give this name to soc or sink\n');
    expect(run('a')).toContain('  # board: none, if it was not logged; else give this name to soc or sink\n');
    expect(run('a')).toContain('  cpu_clock:\n    column: "Clock [MHz]"\n');
    expect(out).toContain(
      'to be written by you: date, channels.die, channels.board, channels.input.at. Taken because there is only one, to be checked by you: setup bench.',
    );
    const checked = check('a', { die: 'none', board: 'none', date: '2026-03-14' });
    expect(checked.problems).toEqual([]);
    expect(checked.log!.channels.map(({ name }) => name)).toEqual(['cpu_clock', 'soc', 'sink', 'input']);
  });

  it.each(['Raum [°C]', 'Umgebung [°C]', 'Zimmertemperatur [°C]', 'T_Raum [°C]'])(
    'takes %s for the room, never for another channel',
    (head) => {
      setup('  soc:\n    quantity: temperature\n  board:\n    quantity: temperature\n  room:\n    quantity: ambient\n');
      data('a.csv', soak(`Elapsed [s],SoC [°C],${head},Clock [MHz],Input [A]`));
      add('data/bench/a.csv');
      const checked = check('a', { date: '2026-03-14' });
      expect(checked.problems).toEqual([]);
      expect(checked.run!.channels.find(({ name }) => name === 'room')!.column).toBe(head);
      expect(run('a')).toContain('  board: none\n');
    },
  );

  it('keeps one name for one quantity over the logs of a call', () => {
    data('a.csv', soak('Elapsed [s],CPU [°C],Board [°C],Clock [MHz],Input [A]'));
    data('b.csv', soak('Elapsed [s],SoC [°C],Board [°C],CPU [MHz],Input [A]'));
    expect(add('data/bench/a.csv', 'data/bench/b.csv')).toBe(0);
    expect(run('a')).toContain('  cpu:\n    quantity: temperature\n');
    expect(run('b')).toContain('  cpu_clock:\n    quantity: clock\n    column: "CPU [MHz]"\n');
    expect(run('b')).toContain('  board:\n    quantity: temperature\n');
  });

  it('prints no number with more decimals than the log has', () => {
    data('a.csv', 'Elapsed [s],SoC [°C],Clock [Hz]\n0,30.1,2400000123\n1,30.2,2400000124\n2,30.2,2400000124\n');
    add('data/bench/a.csv');
    expect(out).toContain('3 readings: first 30.1, last 30.2, least 30.1, greatest 30.2, mean 30.2\n');
    expect(out).toContain('first 2400000123, last 2400000124, least 2400000123, greatest 2400000124, mean 2400000124\n');
  });

  it('lists the choices where there are several setups', () => {
    for (const id of ['left', 'right'])
      writeFileSync(join(root, 'content', 'setups', `${id}.md`), `---\ntitle: ${id}\ndevice: larch-2\nspecimen: no-1\n---\n`);
    data('a.csv', soak());
    add('data/bench/a.csv');
    expect(run('a')).toContain('# setup: one of left, right\n');
    expect(check('a', { setup: 'left', date: '2026-03-14' }).problems).toEqual([]);
  });

  it('lists the bits of a flag by whether they go off again, for the author to name', () => {
    const word = (t: number) => (t >= 30 && t < 40 ? 4 : 0) + (t >= 30 ? 2 ** 18 : 0);
    const rows = Array.from({ length: 60 }, (_, t) => `${t},${2000 - t},${word(t)}`);
    data('a.csv', `Elapsed [s],Clock [MHz],Throttled\n${rows.join('\n')}\n`);
    add('data/bench/a.csv');
    expect(out).toContain('look: bits that come and go: 2; name those that tell of throttling now under `bits`');
    expect(run('a')).toContain(
      '    # bits: # come and go in this log; keep those that tell of throttling now\n    #   2: what it tells\n' +
        '    # sticky: # never went off again; those that stay set until the next boot\n    #   18: what it tells\n',
    );
    expect(run('a')).toContain('    # shows: requested or delivered\n');
    expect(check('a', { shows: 'delivered', specimen: 'no-1', date: '2026-03-14' }).problems).toEqual([]);
  });

  it('leaves units and time units that the file does not state to the author', () => {
    data('a.csv', soak('time,soc_c,board temp,clock_mhz,input_a'));
    expect(add('data/bench/a.csv')).toBe(0);
    expect(run('a')).toContain(
      '  # board_temp:\n  #   quantity: temperature\n  #   column: "board temp"\n  #   unit: °C # if the values look like it\n',
    );
    const checked = check('a', { specimen: 'no-1', date: '2026-03-14', unit: 's' });
    expect(checked.problems).toEqual([]);
    expect(checked.log!.channels.map(({ name }) => name)).toEqual(['soc', 'clock', 'input']);
    expect(checked.typed).toBeLessThanOrEqual(3);
  });

  it('adds several files and says which could not be added', () => {
    data('a.csv', soak());
    data(
      'scores.csv',
      'test,repeat,value,unit,better,start,end\naes,1,100,MB/s,higher,2026-03-14T10:00:00Z,2026-03-14T10:01:00Z\n',
    );
    data('prose.csv', 'It went well.\nThen it did not, at all.\n');
    expect(add('data/bench/a.csv', 'data/bench/scores.csv', 'data/bench/prose.csv', 'data/bench/none.csv')).toBe(1);
    expect(readdirSync(join(root, 'content', 'runs'))).toEqual(['a.md']);
    expect(run('a')).toContain('scores: "bench/scores.csv"\n');
    expect(err).toContain('data/bench/prose.csv:1:1: error: no line looks like a header or a row of readings [not-a-log]');
    expect(err).toContain('there is no file data/bench/none.csv');
  });

  it('drafts the rows of the first of several devices, and reads the right energy for each', () => {
    // Device 0 draws 2 W for 100 s, device 1 draws 5 W: 200 J and 500 J.
    const rows = Array.from({ length: 101 }, (_, t) => `${t},0,50.0,2.0,${2 * t}\n${t},1,60.0,5.0,${5 * t}`);
    data('two.csv', `t_s,gpu_index,temp_c,power_w,energy_j\n${rows.join('\n')}\n`);
    expect(add('data/bench/two.csv')).toBe(0);
    expect(err).toContain('rows of several devices or channels stand in this log: `gpu_index` tells which a row is of');
    expect(run('two')).toContain('  rows:\n    "gpu_index": "0" # or "1", each in a run of its own\n');
    const energyOf = () => {
      const { log, problems } = check('two', { specimen: 'no-1', date: '2026-03-14' });
      expect(problems).toEqual([]);
      const [power, energy] = ['power', 'energy'].map((name) => log!.channels.find((channel) => channel.name === name)!.values);
      const { seconds } = log!.time;
      const integral = seconds.slice(1).reduce((sum, t, k) => sum + ((power![k]! + power![k + 1]!) / 2) * (t - seconds[k]!), 0);
      return [integral, energy!.at(-1)! - energy![0]!];
    };
    expect(energyOf()).toEqual([200, 200]);
    const path = join(root, 'content', 'runs', 'two.md');
    writeFileSync(path, run('two').replace('"gpu_index": "0"', '"gpu_index": "1"'));
    expect(energyOf()).toEqual([500, 500]);
  });

  it('drafts one line for eight sensors, and leaves open what no name says', () => {
    const sensors = Array.from({ length: 8 }, (_, k) => `Sensor ${k + 1}`);
    const rows = Array.from({ length: 20 }, (_, t) => [t, ...sensors.map((_, k) => 20 + t + k)].join(','));
    data('eight.csv', `t_s,${sensors.join(',')}\n${rows.join('\n')}\n`);
    expect(add('data/bench/eight.csv')).toBe(0);
    const line = '  # Sensor 1 .. Sensor 8: temperature, °C # if that is what they are';
    expect(run('eight')).toContain(line);
    const typed = run('eight').replace('# channels:', 'channels:').replace(line, '  Sensor 1 .. Sensor 8: temperature, °C');
    writeFileSync(join(root, 'content', 'runs', 'eight.md'), typed);
    const { log, problems } = check('eight', { specimen: 'no-1', date: '2026-03-14' });
    expect(problems).toEqual([]);
    expect(log!.channels.map(({ name, unit, values }) => [name, unit, values[19]])).toEqual(
      sensors.map((_, k) => [`sensor_${k + 1}`, '°C', 39 + k]),
    );
  });

  it('asks for the order of dates, and takes the answer', () => {
    data('days.csv', `time,soc_c\n${Array.from({ length: 9 }, (_, k) => `0${k + 1}/03/2026 09:00:00,${50 + k}`).join('\n')}\n`);
    expect(add('data/bench/days.csv')).toBe(0);
    const { log, problems } = check('days', { specimen: 'no-1', date: '2026-03-01', date_order: 'day first' });
    expect(problems).toEqual([]);
    expect(log!.time.step).toBe(86400);
  });

  it('says of a header without rows that there are none', () => {
    data('header.csv', 't_s,soc_c,power_w\n');
    expect(add('data/bench/header.csv')).toBe(1);
    expect(err).toContain('data/bench/header.csv is not added: it has no row of readings');
  });

  it('puts logs and tables of three settings into three runs, with the device and the setup that the project lacks', () => {
    rmSync(join(root, 'content', 'devices'), { recursive: true });
    for (const clock of ['1900', '2100', '2400']) {
      data(`soak-${clock}.csv`, soak('Elapsed [s],SoC temp,Board [°C],Clock [MHz],Input [A]'));
      data(`spots-${clock}.csv`, 'Point,Max temp [°C]\nLid centre,48.7\n');
    }
    const wide = ['1900', '2100', '2400'].map((clock, k) => `${clock},${30 + k},${2 - k / 10}`).join('\n');
    data('bench.csv', `Clock [MHz],Frames,Sort [s]\n${wide}\n`);
    data('tried.csv', 'MHz,Result\n1900,ok\n2500,froze\n');
    const names = readdirSync(join(root, 'data', 'bench')).map((name) => `data/bench/${name}`);
    const code = addFiles(root, names, { out: (text) => (out += text), err: (text) => (err += text) }, { date: '2026-03-14' });
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('run 2: bench/soak-2100.csv, bench/bench.csv (2100), bench/spots-2100.csv\n');
    const setup = readFileSync(join(root, 'content', 'setups', 'bench-bench.md'), 'utf8');
    expect(setup).toContain(
      '  file: bench/bench.csv\n  layout: wide\n  tests:\n    Sort: lower\n  #   Frames: higher, points # or',
    );
    expect(setup).toContain('  # soc_temp:\n  #   quantity: temperature\n  #   column: "SoC temp"\n');
    expect(run('soak-2100')).toBe(
      '---\ntitle: "Soak 2100"\nsetup: bench-bench\ndate: 2026-03-14\nsetting:\n  clock: 2100 MHz\nlog: "bench/soak-2100.csv"\n# Found in the log: correct them to what you did.\nphases:\n  idle: 0 .. 60 s\n  load: 60 .. 540 s\n  cool-down: 540 s ..\nscores:\n  rows:\n    Clock [MHz]: 2100\nsurface: "bench/spots-2100.csv"\n---\n',
    );
    expect(readFileSync(join(root, 'content', 'attempts', 'tried.md'), 'utf8')).toContain('    froze: hung under load\n');
    expect(addFiles(root, ['data/bench/tried.csv'], { out: () => {}, err: (text) => (err += text) })).toBe(1);
    expect(err).toContain('data/bench/tried.csv is not added');
    expect(check('soak-1900').problems).toEqual([]);
  });

  it('writes a run without a log for a setting that only a table has', () => {
    for (const clock of ['1900', '2400']) data(`soak-${clock}.csv`, soak());
    data(
      'bench.csv',
      'Test,Clock [MHz],Value,Unit,Better\nCopy,1900,10,MB/s,higher\nCopy,2100,11,MB/s,higher\nCopy,2400,14,MB/s,higher\n',
    );
    const names = ['soak-1900.csv', 'soak-2400.csv', 'bench.csv'].map((name) => `data/bench/${name}`);
    expect(addFiles(root, names, { out: (text) => (out += text), err: (text) => (err += text) }, { date: '2026-03-14' })).toBe(0);
    expect(out).toContain('run 3: bench/bench.csv (2100) (no log has 2100 in its name)');
    const text = run('bench-2100');
    expect(text).toContain('setting:\n  clock: 2100 MHz\nlog: none\nscores:\n  file: "bench/bench.csv"\n');
    expect(text).toContain('    Clock [MHz]: 2100\n');
    for (const id of ['soak-1900', 'soak-2400']) check(id, { specimen: 'no-1' });
    expect(check('bench-2100', { specimen: 'no-1' }).problems).toEqual([]);
  });

  it('titles runs without a log by their whole setting, with a point or a stroke in it', () => {
    for (const clock of ['1900', '2400']) data(`soak-${clock}.csv`, soak());
    const rows = ['1900 MHz', '2400 MHz', '2.1 GHz', '2.7 GHz', '1/2 load'].map((setting) => `Copy,${setting},10,MB/s,higher\n`);
    data('scores.csv', `Test,Setting,Value,Unit,Better\n${rows.join('')}`);
    add(...['soak-1900.csv', 'soak-2400.csv', 'scores.csv'].map((name) => `data/bench/${name}`));
    const titles = readdirSync(join(root, 'content', 'runs')).map((name) => /^title: "(.*)"$/m.exec(run(name.slice(0, -3)))?.[1]);
    expect(titles.toSorted()).toEqual(['Scores 1/2 load', 'Scores 2.1 GHz', 'Scores 2.7 GHz', 'Soak 1900', 'Soak 2400']);
  });

  it('asks how files belong together where somebody can answer, and takes the answer', () => {
    for (const name of ['first.csv', 'second.csv']) data(name, soak());
    const asked: string[] = [];
    const answering = (answer: 'together' | null) => (question: string) => {
      asked.push(question);
      return answer;
    };
    const run2 = (answer: 'together' | null) =>
      addFiles(
        root,
        ['data/bench/first.csv', 'data/bench/second.csv'],
        { out: () => {}, err: () => {} },
        { ask: answering(answer) },
      );
    expect(run2(null)).toBe(1);
    expect(existsSync(join(root, 'content', 'runs'))).toBe(false);
    expect(run2('together')).toBe(0);
    expect(asked).toHaveLength(2);
    expect(readdirSync(join(root, 'content', 'runs'))).toEqual(['first.md']);
    expect(run('first')).toContain(
      'logs:\n  first: "bench/first.csv"\n  second:\n    file: "bench/second.csv"\n    offset: by load edge # or when its first row stands after that of the first log: starts: 37 ± 1 s\n',
    );
    const checked = check('first', { specimen: 'no-1', date: '2026-03-14' });
    expect(checked.problems).toEqual([]);
  });

  it('names no channel with a digit first, and no table twice in one run', () => {
    data('a.csv', soak('Elapsed [s],1st [°C],2nd [°C],Clock [MHz],Input [A]'));
    data('a-scores.csv', 'test,value,unit,better\ncopy,1,s,lower\n');
    data('a-bench.csv', 'test,value,unit,better\nsort,1,s,lower\n');
    expect(add('data/bench/a.csv', 'data/bench/a-scores.csv', 'data/bench/a-bench.csv')).toBe(0);
    expect(run('a')).toContain('  temperature_1st:\n');
    expect(err).toContain('data/bench/a-bench.csv is not added to the run of data/bench/a.csv: it has a table of scores already');
  });

  it('never overwrites, and adds a log once', () => {
    data('a.csv', soak());
    mkdirSync(join(root, 'content', 'runs'));
    writeFileSync(join(root, 'content', 'runs', 'a.md'), 'mine\n');
    expect(add('data/bench/a.csv')).toBe(0);
    expect(run('a')).toBe('mine\n');
    expect(run('bench-a')).toContain('log: "bench/a.csv"');
    const before = run('bench-a');
    expect(add('data/bench/a.csv')).toBe(0);
    expect(out).toContain('data/bench/a.csv is the log of content/runs/bench-a.md already');
    expect(run('bench-a')).toBe(before);
    writeFileSync(join(root, 'content', 'runs', 'bench-a.md'), 'mine too\n');
    expect(add('data/bench/a.csv')).toBe(1);
    expect(run('bench-a')).toBe('mine too\n');
  });

  it('never changes or moves data', () => {
    cpSync(FIXTURES, join(root, 'data', 'bench'), { recursive: true });
    const names = readdirSync(FIXTURES).filter((name) => name.endsWith('.csv'));
    add(...names.map((name) => `data/bench/${name}`));
    for (const name of readdirSync(FIXTURES))
      expect(readFileSync(join(root, 'data', 'bench', name)).equals(readFileSync(join(FIXTURES, name)))).toBe(true);
    expect(readdirSync(join(root, 'content', 'runs')).length).toBeGreaterThan(20);
  });

  it('asks to copy a file from elsewhere below data/ first', () => {
    const outside = join(root, 'elsewhere.csv');
    writeFileSync(outside, soak());
    expect(add('elsewhere.csv', outside, 'data/bench')).toBe(1);
    expect(err.match(/is not below data\/: copy it there first/g)).toHaveLength(2);
    expect(err).toContain('data/bench is a folder');
    expect(existsSync(outside)).toBe(true);
    expect(existsSync(join(root, 'content', 'runs'))).toBe(false);
  });

  it('works from the command line', () => {
    data('a.csv', soak());
    const command = join(import.meta.dirname, '..', '..', 'src', 'commands', 'add.ts');
    const go = (...files: string[]) => spawnSync(process.execPath, [command, ...files], { cwd: root, encoding: 'utf8' });
    expect(go('data/bench/a.csv')).toMatchObject({
      status: 0,
      stderr: '',
      stdout: expect.stringContaining(
        'wrote content/runs/a.md, to be written by you: specimen, date, setting.clock, channels.input.at. Taken because there is only one, to be checked by you: device larch-2.',
      ),
    });
    expect(go()).toMatchObject({ status: 2, stderr: expect.stringContaining('`npm run add` needs FILE') });
  });
});

describe('commands/add/block-plot', () => {
  it('draws means over equal stretches of time', () => {
    const times = Float64Array.from({ length: 80 }, (_, k) => k);
    expect(blockPlot(times, times, 8)).toBe('▁▂▃▄▅▆▇█');
    expect(
      blockPlot(
        times,
        times.map((t) => (t < 40 ? Number.NaN : t)),
        8,
      ),
    ).toBe('    ▁▃▆█');
    expect(
      blockPlot(
        times,
        times.map(() => 5),
        4,
      ),
    ).toBe('▁▁▁▁');
    expect(blockPlot(new Float64Array(0), new Float64Array(0), 3)).toBe('   ');
  });
});
