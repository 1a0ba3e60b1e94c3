import { describe, expect, test } from 'vitest';
import { ownPhases } from '../../../src/commands/retest/own-phases.ts';
import type { DeclaredPhase } from '../../../src/figures/context.ts';
import { every, logOf, noise, phase } from '../../figures/build.ts';

const random = noise(5);
/** W: a load between two instants of a log of some length, s. */
const logWith = (from: number, to: number, length: number) =>
  logOf(every(1, length), { meter: { quantity: 'power', values: (t) => (t >= from && t < to ? 8 : 2) + 0.2 * random() } });
const END = Number.POSITIVE_INFINITY;
const HOUR: readonly DeclaredPhase[] = [phase('idle', 0, 300), phase('load', 300, 3900), phase('cool-down', 3900, END)];
const written = (...[log, phases]: [ReturnType<typeof logWith>, readonly DeclaredPhase[] | 'auto']) => {
  const own = ownPhases(log, { phases });
  return own === undefined || own === 'untold' ? own : own.map(({ name, stretch }) => `${name}: ${stretch}`);
};

describe('commands/retest/own-phases', () => {
  test('phases that agree with the new log stand, and so do those that are found anyway', () => {
    expect(written(logWith(300, 3900, 4200), HOUR)).toBeUndefined();
    expect(written(logWith(100, 900, 1200), 'auto')).toBeUndefined();
    expect(ownPhases(null, { phases: HOUR })).toBeUndefined();
  });

  test('a load of another length takes the stretches of its own log, under the names of the old ones', () => {
    expect(written(logWith(300, 1500, 1800), HOUR)).toEqual(['idle: 0 .. 300 s', 'load: 300 .. 1500 s', 'cool-down: 1500 s ..']);
    expect(written(logWith(120, 2000, 1800), HOUR)).toEqual(['idle: 0 .. 120 s', 'load: 120 s ..']);
    expect(written(logWith(0, 1500, 1800), [phase('load', 0, 3600), phase('rest', 3600, END)])).toEqual([
      'load: 0 .. 1500 s',
      'rest: 1500 s ..',
    ]);
  });

  test('where they do not fit and the log shows no single load for them, the author says', () => {
    expect(written(logWith(0, 1800, 1800), HOUR)).toBe('untold');
    const two = [...HOUR.slice(0, 2), phase('pause', 3900, 4000), phase('load-2', 4000, END)];
    expect(written(logWith(300, 1500, 1800), two)).toBe('untold');
    expect(written(logWith(300, 1500, 1800), [...HOUR, phase('late', 3000, 3900)])).toBe('untold');
  });
});
