import { describe, expect, it } from 'vitest';
import { groupFiles } from '../../../src/commands/add/group.ts';

const log = (path: string, span?: readonly [number, number]) => ({ path, ...(span ? { span } : {}) });

describe('commands/add/group', () => {
  it('puts logs that cover the same time into one run, and later ones into another', () => {
    const { groups } = groupFiles([log('d/a.csv', [0, 100]), log('d/meter.csv', [37, 130]), log('d/b.csv', [200, 300])], []);
    expect(groups.map(({ logs, why }) => [logs, why])).toEqual([
      [['d/a.csv', 'd/meter.csv'], 'they cover the same time'],
      [['d/b.csv'], ''],
    ]);
  });

  it('goes by names where no time tells: what all share and what a file is does not count', () => {
    const { groups } = groupFiles(
      [log('o/orrin-slow-soak.csv'), log('o/orrin-slow-meter.csv'), log('o/orrin-fast-soak.csv')],
      [{ path: 'o/orrin-fast-scores.csv' }],
    );
    expect(groups.map(({ logs, tables }) => [logs, tables.map(({ path }) => path)])).toEqual([
      [['o/orrin-slow-soak.csv', 'o/orrin-slow-meter.csv'], []],
      [['o/orrin-fast-soak.csv'], ['o/orrin-fast-scores.csv']],
    ]);
  });

  it('gives each run its rows of a table of several settings', () => {
    const { groups, left } = groupFiles(
      [log('o/soak1900.csv'), log('o/soak2400.csv')],
      [{ path: 'o/bench.csv', settings: ['1900 MHz', '2100 MHz', '2400 MHz'] }, { path: 'o/other.csv' }],
    );
    expect(groups.map(({ tables }) => tables)).toEqual([
      [{ path: 'o/bench.csv', setting: '1900 MHz' }],
      [{ path: 'o/bench.csv', setting: '2400 MHz' }],
      [{ path: 'o/bench.csv', setting: '2100 MHz' }],
    ]);
    expect(groups.at(-1)).toMatchObject({ logs: [], why: 'no log has 2100 MHz in its name' });
    expect(left).toEqual(['o/other.csv']);
  });

  it('goes by the log that a table names, and says nothing of a setting while a log may be of it', () => {
    const files = [log('o/soak-slow.csv'), log('o/soak-fast.csv')];
    const named = groupFiles(files, [{ path: 'o/bench.csv', settings: ['soak-slow.csv', 'soak-fast.csv'] }]);
    expect(named.groups.map(({ tables }) => tables[0]?.setting)).toEqual(['soak-slow.csv', 'soak-fast.csv']);
    const unsure = groupFiles([...files, log('o/third.csv')], [{ path: 'o/bench.csv', settings: ['slow', 'fast', 'quick'] }]);
    expect(unsure.groups.map(({ logs }) => logs.length)).toEqual([1, 1, 1]);
  });

  it('takes a setting as one sequence with its numbers whole, a clock in MHz or GHz, and none where two runs fit', () => {
    const settings = (names: readonly string[], of: readonly string[]) =>
      groupFiles(
        names.map((name) => log(name)),
        [{ path: 'bench.csv', settings: of }],
      )
        .groups.filter(({ logs }) => logs.length > 0)
        .map(({ tables }) => tables[0]?.setting);
    expect(settings(['soak-1.9.csv', 'soak-2.1.csv', 'soak-2.3.csv'], ['1.9 GHz', '2.1 GHz', '2.3 GHz'])).toEqual([
      '1.9 GHz',
      '2.1 GHz',
      '2.3 GHz',
    ]);
    expect(settings(['soak-1.9.csv', 'soak-2.1.csv'], ['1900', '2100', '2300'])).toEqual(['1900', '2100']);
    expect(settings(['soak-2-1.csv', 'soak-1-9.csv'], ['2.3 GHz', '2.1 GHz'])).toEqual([undefined, undefined]);
    expect(settings(['quiet-case.csv', 'quiet-open.csv'], ['quiet', 'loud'])).toEqual([undefined, undefined]);
    expect(settings(['fast-open.csv', 'fast-shut.csv'], ['fast', 'fast shut'])).toEqual(['fast', 'fast shut']);
  });

  it('takes the tester’s word: apart, or together', () => {
    const logs = [log('d/a.csv', [0, 100]), log('d/b.csv', [0, 100]), log('d/c.csv')];
    expect(groupFiles(logs, [], 'apart').groups).toHaveLength(3);
    expect(groupFiles(logs, [], 'together').groups.map((group) => group.logs)).toEqual([['d/a.csv', 'd/b.csv', 'd/c.csv']]);
  });
});
