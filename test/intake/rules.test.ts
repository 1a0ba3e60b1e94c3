import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { read } from '../../src/intake/read.ts';
import { bytes, channel, declare, RUN } from './declare.ts';

const TEST = import.meta.dirname;
const SRC = join(TEST, '..', '..', 'src');
/** Where faults of logs are told: from bytes and columns alone, and where phases or several logs are needed. */
const ROOMS = ['intake', 'compute/steps/runs'].map((room) => join(SRC, room));
const textOf = (folder: string) =>
  globSync('**/*.{ts,json}', { cwd: folder, exclude: ['fixtures/**', 'coverage/**'] })
    .map((path) => readFileSync(join(folder, path), 'utf8'))
    .join('\n');

const SOC = channel('soc', 'temperature', 'soc_c');
const problems = (text: string, more = {}) =>
  read(bytes(text), declare([SOC], more), 'data/a.csv').problems.map(({ rule, severity, found }) => [severity, rule, found]);

describe('intake, its faults', () => {
  it('are each provoked by name in a test', () => {
    const told = [
      ...ROOMS.map(textOf)
        .join('\n')
        .matchAll(/\b(?:(?:error|warning)\(\s*|rule: )'([a-z]+(?:-[a-z]+)+)'/g),
    ].map(([, rule]) => rule!);
    expect(told.length).toBeGreaterThan(20);
    const named = textOf(join(TEST, '..'));
    expect([...new Set(told)].filter((rule) => !named.includes(rule))).toEqual([]);
  });

  it('no-rows: repairs leave none', () => {
    const repairs = [{ kind: 'drop', fromLine: 2, toLine: 3, reason: 'before the test', place: RUN }];
    expect(problems('time_s,soc_c\n0,40\n1,41\n', { repairs })).toContainEqual(['error', 'no-rows', 'no row of a.csv is left']);
  });

  it('time-unreadable: all dates are of days that do not exist', () => {
    const day = '2026-02-30 10:00:0';
    expect(problems(`time,soc_c\n${day}0,40\n${day}1,41\n${day}2,42\n`)).toContainEqual([
      'error',
      'time-unreadable',
      'no row of a.csv has a readable time in `time`',
    ]);
  });

  it('zone-mixed: some times state an offset, others do not', () => {
    const text = 'time,soc_c\n2026-03-10T10:00:00Z,40\n2026-03-10T10:00:01,41\n2026-03-10T10:00:02Z,42\n';
    expect(problems(text)).toContainEqual([
      'error',
      'zone-mixed',
      '2 of 3 times in `time` state an offset from UTC, the others do not',
    ]);
  });

  it('time-step-changed: the logger went on in another step, and the line says where', () => {
    const times = Array.from({ length: 600 }, (_, row) => (row < 300 ? row : 300 + 5 * (row - 300)));
    expect(problems(`time_s,soc_c\n${times.map((time) => `${time},40.${time % 10}`).join('\n')}\n`)).toContainEqual([
      'warning',
      'time-step-changed',
      expect.stringMatching(/^from about this line on the step between rows is 5 s; at the start it is 1 s$/),
    ]);
  });

  it('rows-none: no row has what the author names', () => {
    const rows = { column: 'device', value: 'gpu', place: RUN };
    expect(problems('time_s,device,soc_c\n0,cpu,40\n1,cpu,41\n2,cpu,42\n', { rows })).toContainEqual([
      'error',
      'rows-none',
      'no row of a.csv has `gpu` in the column `device`',
    ]);
  });

  it('date-order-impossible: a date that cannot be read in the declared order', () => {
    const time = { column: 'time', order: 'mdy', place: RUN };
    const text = 'time,soc_c\n25/03/2026 10:00:00,40\n25/03/2026 10:00:01,41\n25/03/2026 10:00:02,42\n';
    expect(problems(text, { time }).map(([severity, rule]) => [severity, rule])).toContainEqual(['error', 'date-order-impossible']);
  });
});
