import { describe, expect, test } from 'vitest';
import { BASE, type Edit, FAST, RATED, reading, report, SETUP } from '../base.ts';

const ONE = 'log: larch-2/fast-soak.csv';
const TWO = `logs:
  device:
    file: larch-2/fast-soak.csv
    time:
      format: epoch
      unit: ms
  meter:
    file: larch-2/other.csv
    offset: 37 ± 1 s
    share: digest only`;

function fast(logs: string, ...more: readonly Edit[]) {
  const { register, problems } = reading([FAST, ONE, logs], ...more);
  expect(problems.filter(({ severity }) => severity === 'error')).toEqual([]);
  return register.runs.get('larch-fast')!;
}

describe('register/sections/log: several logs', () => {
  test('each has its file, time, offset and way out; a channel that names none may be of either', () => {
    const { logs, channels } = fast(TWO);
    expect(channels.map(({ name }) => name)).toEqual(['soc', 'board']);
    expect(logs).toMatchObject([
      { name: 'device', declaration: { file: 'larch-2/fast-soak.csv', time: { format: 'epoch', unit: 'ms' } }, sharing: {} },
      {
        name: 'meter',
        declaration: { file: 'larch-2/other.csv' },
        offset: { by: 'offset', seconds: 37, distribution: 'rectangular' },
        sharing: { share: 'digest only' },
      },
    ]);
    expect(logs.map(({ declaration }) => declaration.channels.length)).toEqual([2, 2]);
    expect(logs[0]!.declaration.phaseStarts).toHaveLength(2);
    expect(logs[1]!.declaration.phaseStarts).toBeUndefined();
  });

  test('a setup states for every log, and for a log by its name; a channel may name its log', () => {
    const setup = `log:
  time:
    zone: UTC
logs:
  meter:
    offset: by load edge
    time:
      column: Zeit
channels:
  fan:
    quantity: fan
    column: rpm
    log: meter`;
    const { logs } = fast(
      TWO.replace('    offset: 37 ± 1 s\n', ''),
      [SETUP, 'channels:', setup],
      [RATED, 'log:', 'channels:\n  fan: none\nlog:'],
    );
    expect(logs[0]!.declaration.time).toMatchObject({ zone: 'UTC', format: 'epoch' });
    expect(logs[1]).toMatchObject({ offset: { by: 'load edge' }, declaration: { time: { zone: 'UTC', column: 'Zeit' } } });
    expect(logs.map(({ declaration }) => declaration.channels.map(({ name }) => name))).toEqual([
      ['soc', 'board'],
      ['fan', 'soc', 'board'],
    ]);
  });

  test('repairs and `known` say of which log their lines are; a setup knows channels of all its runs, several at once', () => {
    const own = `${TWO}
repairs:
  - drop: 12
    log: meter
    reason: The plug was pulled.
known:
  - lines: 3
    reason: A stutter.`;
    const shared = `known:
  - channels: [soc, board]
    reason: They are written every other second.
title: Open bench`;
    const { logs } = fast(own, [SETUP, 'title: Open bench', shared]);
    expect(logs.map(({ declaration }) => declaration.repairs.length)).toEqual([0, 1]);
    expect(logs[0]!.declaration.known).toMatchObject([{ fromLine: 3 }, { channel: 'soc', ofSetup: true }, { channel: 'board' }]);
    expect(logs[1]!.declaration.known).toMatchObject([{ channel: 'soc' }, { channel: 'board' }]);
  });

  test('a log may say when it starts instead', () => {
    expect(fast(TWO.replace('offset: 37', 'starts: 37')).logs[1]!.offset).toMatchObject({ by: 'start', seconds: 37 });
  });

  test('a run without a log says so', () => {
    const { logs } = fast('log: none');
    expect(logs).toEqual([]);
  });

  test.each([
    [`${ONE}\n${TWO}`, 'the run has `log` and `logs`'],
    [TWO.replace('device:', 'device:\n    offset: 1 s'), 'the log `device` stands first and has `offset`'],
    [TWO.replace('device:', 'device:\n    starts: 1 s'), 'the log `device` stands first and has `starts`'],
    [TWO.replace('    share', '    starts: 1 s\n    share'), '`offset` and `starts` are both stated'],
    [`${TWO}\nrepairs:\n  - drop: 1\n    log: metre\n    reason: x`, 'the log `metre` is named, which the run has not'],
    [TWO.replace('37 ± 1 s', '37'), '`offset` is `37`, a number without a unit'],
    [TWO.replace('meter:', 'Meter 1:'), 'a log is named `Meter 1`'],
    ['', 'a run needs the key `log`'],
  ])('located: %s', (logs, found) => {
    const told = report([FAST, logs === '' ? `${ONE}\n` : ONE, logs]).filter((each) => each.includes(found));
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(/^content\/runs\/larch-fast\.md:\d+:\d+: error: /);
  });

  test('lines are of one log: a setup cannot know them', () => {
    expect(BASE[SETUP]).toBeDefined();
    const told = report([SETUP, 'title: Open bench', 'known:\n  - lines: 3\n    reason: x\ntitle: Open bench']);
    expect(told.join('\n')).toContain('`known` of a setup names `lines`');
  });
});
