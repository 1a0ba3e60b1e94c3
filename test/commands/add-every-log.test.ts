/** `add`, then what `check` reads: on every log of the tests, with a setup that declares nothing, and with one that declares all channels. */
import {
  copyFileSync,
  existsSync,
  globSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { addFiles } from '../../src/commands/add/add-files.ts';
import { inspect } from '../../src/intake/inspect.ts';
import { read } from '../../src/intake/read.ts';
import { readRegister } from '../../src/register/read.ts';

const TEST = join(import.meta.dirname, '..');
const LOGS = globSync('{intake/catalogue,fixtures/intake}/*.csv', { cwd: TEST }).sort();
/** What only the author knows, each told once by the message of its rule. */
const LEFT_TO_AUTHOR = ['date-order-unknown', 'time-unit-missing', 'time-unit-conflict', 'decimal-marks-differ'];

/** A project with the log in it, after `add`: errors of `check` by rule and words, once the day was typed. */
function added(log: string, setup: string) {
  const root = mkdtempSync(join(tmpdir(), 'soakproof-every-log-'));
  try {
    for (const folder of ['data/bench', 'content/devices', 'content/setups', 'content/runs'])
      mkdirSync(join(root, folder), { recursive: true });
    writeFileSync(join(root, 'content/devices/larch-2.md'), '---\ntitle: Larch 2 (invented)\nmaker: Nobody\ninvented: yes\n---\n');
    writeFileSync(join(root, 'content/setups/bench.md'), `---\ntitle: Bench\nspecimen: no-1\n${setup}---\n`);
    copyFileSync(join(TEST, log), join(root, 'data/bench', basename(log)));
    let said = '';
    const code = addFiles(
      root,
      [`data/bench/${basename(log)}`],
      { out: (text) => (said += text), err: (text) => (said += text) },
      { date: '2026-03-14' },
    );
    const runs = readdirSync(join(root, 'content/runs'));
    if (code !== 0) return { code, said, runs, errors: [], text: '' };
    const files = ['devices', 'setups', 'runs'].flatMap((folder) =>
      readdirSync(join(root, 'content', folder)).map((name) => ({
        path: `content/${folder}/${name}`,
        text: readFileSync(join(root, 'content', folder, name), 'utf8'),
      })),
    );
    const { register, problems } = readRegister(files, {
      kind: (name) => (existsSync(join(root, 'data', name)) ? 'file' : 'missing'),
    });
    const ofLogs = [...register.runs.values()].flatMap(({ logs }) =>
      logs.flatMap(
        ({ declaration }) =>
          read(readFileSync(join(root, 'data', declaration.file)), declaration, `data/${declaration.file}`).problems,
      ),
    );
    const errors = [...problems, ...ofLogs].filter(({ severity }) => severity === 'error');
    return { code, said, runs, errors, text: files.find(({ path }) => path.includes('/runs/'))?.text ?? '' };
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
}

/** Units that an author could mean where the file states none. */
const UNITS: Readonly<Record<string, string>> = {
  temperature: '°C',
  ambient: '°C',
  clock: 'MHz',
  current: 'A',
  voltage: 'V',
  power: 'W',
  energy: 'J',
  fan: 'rpm',
  sound_level: 'dB',
  utilisation: '%',
  charge_level: '%',
  other: '1',
};

/** Columns that the file gives as readings, whether or not it states their units. */
function columnsOf(log: string) {
  return inspect(readFileSync(join(TEST, log)), log).columns;
}

describe('add, then check', () => {
  it('finds the logs', () => {
    expect(LOGS.length).toBeGreaterThan(150);
  });

  it.each(LOGS)('%s: no error that could have been avoided', (log) => {
    const { code, errors, said, runs } = added(log, '');
    if (code !== 0) {
      expect(runs).toEqual([]);
      expect(said).toMatch(/is not added: /);
      return;
    }
    const left = errors.filter(({ rule }) => !LEFT_TO_AUTHOR.includes(rule));
    const stated = columnsOf(log).some(({ unit, quantity }) => unit !== undefined || quantity === 'throttle_flag');
    expect(left.map(({ rule, found }) => `${rule}: ${found}`)).toEqual(
      stated ? [] : ['missing-key: a run needs the key `channels`, in itself or in its setup'],
    );
    expect(errors.length).toBeLessThanOrEqual(2);
  });

  it.each(LOGS)('%s: with a setup that declares its channels nothing is left open but times', (log) => {
    const columns = columnsOf(log);
    const channels = columns.map(({ column, quantity, unit }, at) =>
      [
        `  c${at}:`,
        `    quantity: ${quantity}`,
        `    column: ${JSON.stringify(column)}`,
        ...(unit === undefined && quantity !== 'throttle_flag'
          ? [`    unit: ${JSON.stringify(/°C/.test(column) ? '°C' : UNITS[quantity])}`]
          : []),
        ...(['current', 'voltage', 'power', 'energy'].includes(quantity) ? ['    at: wall'] : []),
      ].join('\n'),
    );
    const { code, errors, text } = added(log, channels.length === 0 ? '' : `channels:\n${channels.join('\n')}\n`);
    if (code !== 0) return;
    expect(errors.filter(({ rule }) => !LEFT_TO_AUTHOR.includes(rule)).map(({ rule, found }) => `${rule}: ${found}`)).toEqual([]);
    expect(text).not.toMatch(/^ {2}c\d+:/m);
    expect(text).not.toMatch(/0 \.\. 0 s/);
  });
});
