// The logger for devices under test, on a made-up tree of the kernel's files: its log needs no declaration, and every line is whole
// but for the last one of a run that was killed or ran out of disk.
import { spawn, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { inspect } from '../../../src/intake/inspect.ts';
import { read } from '../../../src/intake/read.ts';
import { declarationOf } from '../../intake/catalogue/typed.ts';
import { seededRandom } from '../../statistics/seeded-random.ts';

const SCRIPT = join(import.meta.dirname, '..', '..', '..', 'src', 'compute', 'site', 'side-files', 'soakproof-logger.sh');
const SHELLS = ['dash', 'bash', 'sh'].filter((shell) => spawnSync(shell, ['-c', 'exit 0']).status === 0);
/** Invented: what a kernel would tell of a small computer. */
const TREE = {
  'sys/class/thermal/thermal_zone0/type': 'cpu-thermal',
  'sys/class/thermal/thermal_zone0/temp': '48200',
  'sys/class/thermal/cooling_device0/type': 'cpufreq-cpu0',
  'sys/class/thermal/cooling_device0/cur_state': '2',
  'sys/class/hwmon/hwmon0/name': 'air, "case"',
  'sys/class/hwmon/hwmon0/fan1_input': '1500',
  'sys/class/hwmon/hwmon0/temp1_input': '31000',
  'sys/class/hwmon/hwmon1/name': 'ssd',
  'sys/class/hwmon/hwmon1/temp1_input': 'not now',
  'sys/devices/system/cpu/cpufreq/policy0/scaling_cur_freq': '1800000',
  'sys/devices/system/cpu/cpufreq/policy0/cpuinfo_cur_freq': '1795000',
  'proc/uptime': '1234.08 999.10',
  'proc/stat': 'cpu  100 0 50 1000 5 0 0 0 0 0',
};
/** In the place of `sleep`: a second passes on the tree's clock, and a quarter of it the processor is busy. */
const SLEEP = `#!/bin/sh
read -r up rest <"$SYSROOT/proc/uptime"
echo "$((\${up%.*} + 1)).08 0" >"$SYSROOT/proc/uptime"
read -r cpu user nice system idle rest <"$SYSROOT/proc/stat"
echo "cpu  $((user + 25)) 0 $system $((idle + 75)) 5 0 0 0 0 0" >"$SYSROOT/proc/stat"
`;

let root = '';
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'soakproof-logger-'));
  for (const [path, text] of Object.entries(TREE)) {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), `${text}\n`);
  }
  mkdirSync(join(root, 'bin'));
  writeFileSync(join(root, 'bin', 'sleep'), SLEEP);
  chmodSync(join(root, 'bin', 'sleep'), 0o755);
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

const environment = () => ({ ...process.env, SYSROOT: root, PATH: `${join(root, 'bin')}${delimiter}${process.env.PATH}` });
const out = () => join(root, 'soak.csv');

/** The log as `add` would declare it, with no line typed. */
function readBack(): ReturnType<typeof read> {
  const bytes = new Uint8Array(readFileSync(out()));
  return read(bytes, declarationOf(inspect(bytes, 'data/soak.csv'), {}), 'data/soak.csv');
}

const pause = (milliseconds: number) => new Promise((resolve) => setTimeout(resolve, milliseconds));
/** Random instants of each fault, and how long they may take on a busy machine, ms. */
const INSTANTS = 10;
const LONG = 240_000;

/** Every line that ends is whole; a last one that does not end is set aside, and nothing is said of the clock. */
function expectWholeLines(): void {
  const text = readFileSync(out(), 'utf8');
  const ended = text.split('\n').slice(0, -1);
  for (const line of ended) expect(line.split(',')).toHaveLength(ended[0]!.split(',').length);
  if (ended.length < 3) return;
  const { log, problems } = readBack();
  const torn = text.endsWith('\n') ? [] : ['last-line-cut', 'last-cell-cut'];
  expect(problems.map(({ rule }) => rule).filter((rule) => !torn.includes(rule) && rule !== 'many-missing')).toEqual([]);
  expect([ended.length - 1, ended.length]).toContain(log!.rows);
  expect(log!.time).toMatchObject({ format: 'epoch', gaps: [] });
}

describe('the logger for devices under test', () => {
  it.each(SHELLS)(
    'writes a log that needs no declaration (%s)',
    (shell) => {
      expect(spawnSync(shell, [SCRIPT, '-n', '20', out()], { env: environment() })).toMatchObject({ status: 0 });
      const { log, problems } = readBack();
      expect(problems).toEqual([]);
      expect(log).toMatchObject({ rows: 20, time: { format: 'epoch', column: 'time [s]', step: 1 } });
      expect(log!.channels.map(({ column, quantity, unit, values }) => [column, quantity, unit, values[19]])).toEqual([
        ['temp cpu-thermal 0 [mC]', 'temperature', '°C', 48.2],
        ['temp air___case_ 0.1 [mC]', 'temperature', '°C', 31],
        ['fan air___case_ 0.1 [rpm]', 'fan', 'rpm', 1500],
        ['clock policy0 requested [kHz]', 'clock', 'Hz', 1.8e9],
        ['clock policy0 delivered [kHz]', 'clock', 'Hz', 1.795e9],
        ['throttled cpufreq-cpu0 0', 'throttle_flag', '1', 1],
        ['cpu load [%]', 'utilisation', '1', 0.25],
        ['logger load [%]', 'utilisation', '1', expect.any(Number)],
      ]);
    },
    LONG,
  );

  it(
    'leaves whole lines when it is killed',
    async () => {
      const random = seededRandom(7);
      for (let instant = 0; instant < INSTANTS; instant++) {
        rmSync(out(), { force: true });
        const logger = spawn(SHELLS[instant % SHELLS.length]!, [SCRIPT, out()], { env: environment(), stdio: 'ignore' });
        const ended = new Promise((resolve) => logger.once('exit', resolve));
        while (!existsSync(out())) await pause(5);
        await pause(random() * 150);
        logger.kill('SIGKILL');
        await ended;
        expectWholeLines();
      }
    },
    LONG,
  );

  it(
    'leaves whole lines and says so when the disk is full',
    () => {
      const random = seededRandom(8);
      for (let instant = 0; instant < INSTANTS; instant++) {
        rmSync(out(), { force: true });
        // A limit on the size of files cuts a write where a full disk would (POSIX, ulimit -f: blocks of 512 bytes).
        writeFileSync(join(root, 'sys/class/hwmon/hwmon0/fan1_input'), `${Math.floor(random() * 10 ** (1 + (instant % 5)))}\n`);
        const blocks = 1 + Math.floor(random() * 6);
        const limited = `trap '' XFSZ; ulimit -f ${blocks}; exec ${SHELLS[instant % SHELLS.length]} ${SCRIPT} -n 200 ${out()}`;
        const done = spawnSync(SHELLS[0]!, ['-c', limited], { env: environment(), encoding: 'utf8' });
        expect(done.status).toBe(1);
        expect(done.stderr).toContain('cannot be written any more (is the disk full?)');
        expectWholeLines();
      }
    },
    LONG,
  );

  it('never overwrites, and says what it takes', () => {
    writeFileSync(out(), 'mine\n');
    expect(spawnSync('sh', [SCRIPT, out()], { env: environment(), encoding: 'utf8' })).toMatchObject({ status: 2 });
    expect(readFileSync(out(), 'utf8')).toBe('mine\n');
    const wrong = spawnSync('sh', [SCRIPT, '-s', 'soon', join(root, 'b.csv')], { env: environment(), encoding: 'utf8' });
    expect(wrong).toMatchObject({ status: 2, stderr: expect.stringContaining('usage: sh soakproof-logger.sh') });
  });
});
