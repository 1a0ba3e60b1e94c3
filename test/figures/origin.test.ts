/** Readings of one log beside those of another, on a log that is joined of two. */
import { describe, expect, test } from 'vitest';
import { latestBeside, valuesBeside } from '../../src/figures/origin.ts';
import type { Log } from '../../src/intake/log.ts';
import { logOf } from './build.ts';

const NONE = Number.NaN;

/** Rows at those seconds, of the log with that index; the first log reads every second, the other one every `step` seconds. */
function joined(seconds: readonly number[], ofRow: readonly number[], step = 2): Log {
  const log = (name: string, own: number) => ({ name, file: `${name}.csv`, column: 't', step: own, zone: null, shift: null });
  return {
    ...logOf(seconds, {}),
    joined: { logs: [log('device', 1), log('meter', step)], ofRow: Uint8Array.from(ofRow) },
  } as unknown as Log;
}

const channel = (values: readonly number[], log?: number) => ({ values: Float64Array.from(values), ...(log ? { log } : {}) });
const beside = (log: Log, of: ReturnType<typeof channel>, own: number) => [...valuesBeside(log, of, own === 0 ? {} : { log: own })];

describe('figures/origin', () => {
  // The meter reads 10 at 0 s, 14 at 2 s and 20 at 5 s; the device has rows at 1 s, 2 s, 3 s and 6 s.
  const seconds = [0, 1, 2, 2, 3, 5, 6];
  const rows = [1, 0, 1, 0, 0, 1, 0];
  const power = channel([10, NONE, 14, NONE, NONE, 20, NONE], 1);

  test('a value lies on the straight line between the readings before and after, and there is none before the first or after the last', () => {
    expect(beside(joined(seconds, rows), power, 0)).toEqual([NONE, 12, NONE, 14, 16, NONE, NONE]);
    const late = channel([NONE, NONE, 14, NONE, NONE, 20, NONE], 1);
    expect(beside(joined(seconds, rows), late, 0)).toEqual([NONE, NONE, NONE, 14, 16, NONE, NONE]);
  });

  test('readings more than five steps of their own log apart are a gap; exactly five are none', () => {
    const [times, of] = [
      [0, 4, 10],
      [1, 0, 1],
    ];
    const log = (step: number) => joined(times!, of!, step);
    expect(beside(log(2), channel([10, NONE, 20], 1), 0)[1]).toBe(14);
    expect(beside(log(1.9), channel([10, NONE, 20], 1), 0)[1]).toBeNaN();
  });

  test('where both are of one log, the values are its own, gaps and all', () => {
    expect(beside(joined(seconds, rows), power, 1)).toEqual([10, NONE, 14, NONE, NONE, 20, NONE]);
  });

  test('the latest reading stays until the next', () => {
    expect([...latestBeside(joined(seconds, rows), power, {})]).toEqual([10, 10, 14, 14, 14, 20, 20]);
  });
});
