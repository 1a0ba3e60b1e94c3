import { describe, expect, test } from 'vitest';
import { joinLogs } from '../../src/intake/joined.ts';
import { every, logOf } from '../figures/build.ts';

const device = logOf(every(1, 5), { soc: { quantity: 'temperature', values: (t) => 40 + t } });
const meter = { ...logOf(every(2, 6), { input: { quantity: 'power', values: (t) => t } }), file: 'invented/meter.csv' };

describe('intake/joined', () => {
  test('rows stand in the order of time, each with its line, and a channel has readings in the rows of its own log alone', () => {
    const log = joinLogs(
      [
        { name: 'device', log: device, at: 0 },
        { name: 'meter', log: meter, at: 0.5 },
      ],
      ['input', 'soc'],
    );
    expect([...log.time.seconds]).toEqual([0, 0.5, 1, 2, 2.5, 3, 4, 4.5, 5, 6.5]);
    expect([...log.lines]).toEqual([2, 2, 3, 4, 3, 5, 6, 4, 7, 5]);
    expect([...log.joined!.ofRow]).toEqual([0, 1, 0, 0, 1, 0, 0, 1, 0, 1]);
    expect(log.channels.map(({ name, log: of }) => [name, of])).toEqual([
      ['input', 1],
      ['soc', 0],
    ]);
    const [input, soc] = log.channels;
    expect([...input!.values].filter((value) => !Number.isNaN(value))).toEqual([0, 2, 4, 6]);
    expect([...soc!.values].filter((value) => !Number.isNaN(value))).toEqual([40, 41, 42, 43, 44, 45]);
    expect(log.joined!.logs).toMatchObject([
      { name: 'device', step: 1 },
      { name: 'meter', step: 2, file: 'invented/meter.csv' },
    ]);
  });

  test('rows before the first row of the first log are left out; gaps of both logs stay gaps', () => {
    const gap = { ...device, time: { ...device.time, gaps: [{ row: 3, length: 1 }] } };
    const log = joinLogs(
      [
        { name: 'device', log: gap, at: 0 },
        { name: 'meter', log: meter, at: -3 },
      ],
      ['soc', 'input'],
    );
    expect([...log.time.seconds]).toEqual([0, 1, 1, 2, 3, 3, 4, 5]);
    expect(log.time.gaps).toEqual([{ row: 4, length: 1 }]);
  });

  test('one log is returned as it is', () => {
    expect(joinLogs([{ name: '', log: device, at: 0 }], ['soc'])).toBe(device);
  });
});
