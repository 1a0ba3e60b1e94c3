/** The quick cells of each family, judged as the stored tables are; and that the stored tables are of the families as they are written. */
import { describe, expect, test } from 'vitest';
import { FAMILIES, type FamilyRow, faultsOf } from '../../src/figures/checks/families.ts';
import { instrumentless } from '../figures/build.ts';
import { countCell } from './count-cell.ts';
import type { Cell } from './family.ts';
import { familyTables } from './family-table.ts';
import { familyNames, familyOf } from './find-families.ts';

const families = await Promise.all(familyNames().map(async (name) => ({ name, ...(await familyOf(name)) })));
const quick = families.flatMap(({ name, cells, quick: trials }) =>
  cells.filter((cell) => cell.quick).map((cell) => ({ name, cell, trials, title: `${name}: ${cell.name}` })),
);

describe('coverage/families', () => {
  test.each(quick)('$title', ({ name, cell, trials }) => {
    const rows = countCell(name, cell, trials);
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows) expect(faultsOf(row), `${row.asked}: ${JSON.stringify(row)}`).toEqual([]);
  });

  test.each(families)('$name has a quick cell, and cells of different names', ({ cells }) => {
    expect(cells.some((cell) => cell.quick)).toBe(true);
    expect(new Set(cells.map((cell) => cell.name)).size).toBe(cells.length);
  });

  test('the stored tables are of the families as they are written, and nothing in them is at fault', () => {
    const written = families.map(({ name, title, words, trials, cells }) => [
      name,
      { title, words, trials, cells: cells.map((cell) => [cell.name, cell.beyond ?? cell.why ?? '']) },
    ]);
    const stored = Object.entries(FAMILIES).map(([name, { rows, ...head }]) => [
      name,
      { ...head, cells: [...new Map(rows.map(({ cell, why }) => [cell, why]))] },
    ]);
    expect(stored).toEqual(written);
    const faults = Object.entries(FAMILIES).flatMap(([name, { rows }]) =>
      rows.flatMap((row) => faultsOf(row).map((fault) => `${name}, ${row.cell}, ${row.asked}: ${fault}`)),
    );
    expect(faults).toEqual([]);
  });

  test('a quick part that a gap at the beginning hid, reckoned back beyond all numbers, leaves the other figures', async () => {
    const { cells } = await familyOf('steady-gaps');
    const cell = cells.find(({ name }) => name === 'a gap of 1500 s over the moment of settling')!;
    // The ninth trial has such a part.
    expect(countCell('steady-gaps', cell, 9)[0]).toMatchObject({ trials: 9, figure: 'time_to_steady_state' });
  });

  test('threads count what one thread counts', async () => {
    const { cells } = await familyOf('level');
    const { level } = await familyTables(['level'], 3);
    expect(level!.rows).toEqual(cells.flatMap((cell) => countCell('level', cell, 3)));
  });
});

describe('coverage/count-cell', () => {
  /** A normal deviate about 5 W with an interval for `deviation`, which is 1 W in truth. */
  const cell = (deviation: number): Cell => ({
    name: 'one reading',
    pairs: true,
    simulate: ({ noise, run }) => {
      const figure = instrumentless('load_power', 5 + noise.normal(), 'W', deviation, run);
      return [
        { asked: 'load_power', figure, truth: 5, known: 1.96 },
        { asked: 'above', said: figure.quantity.value > 5, atLeast: 0.4, atMost: 0.6 },
      ];
    },
  });

  test('an interval that holds has no fault; one that is too narrow or too wide has', () => {
    const [row, saying] = countCell('made up', cell(1), 1000);
    expect(row).toMatchObject({ figure: 'load_power', trials: 1000, present: 1000, half: 1.96, unit: 'W', ratio: 1, pairs: 1000 });
    expect(faultsOf(row!)).toEqual([]);
    expect(faultsOf(saying!)).toEqual([]);
    expect(faultsOf(countCell('made up', cell(0.5), 1000)[0]!)).toEqual([
      'the interval bluffs',
      'the interval is too narrow, and no reason is given',
      'identical runs are told apart',
    ]);
    expect(faultsOf(countCell('made up', cell(2), 1000)[0]!)).toEqual(['the interval is too wide, and no reason is given']);
    expect(countCell('made up', cell(1), 1000)).toEqual(countCell('made up', cell(1), 1000));
  });

  test('a bound is counted where it is given, and an absence with its cause', () => {
    const why = 'The fan stopped.';
    const absent = { name: 'load_power', absent: 'no-fit', why, bound: { relation: '>', value: 4, unit: 'W' } } as const;
    const asked = (truth: number, cause?: RegExp): Cell => ({
      name: 'absent',
      simulate: () => [{ asked: 'load_power', figure: absent, truth, ...(cause ? { absent: cause } : {}) }],
    });
    const [held] = countCell('made up', asked(5, /fan/), 10);
    expect(held).toMatchObject({ absent: 10, caused: 10, bounds: 10, falseBounds: 0 });
    expect(faultsOf(held!)).toEqual([]);
    expect(faultsOf(countCell('made up', asked(3, /pump/), 10)[0]!)).toEqual([
      'bounds are false',
      'the reason does not name the cause',
    ]);
    const given: Cell = {
      name: 'given',
      simulate: ({ run }) => [
        { asked: 'load_power', figure: instrumentless('load_power', 5, 'W', 1, run), truth: 5, absent: /fan/ },
      ],
    };
    expect(faultsOf(countCell('made up', given, 10)[0]!)).toContain('a figure is given that must be absent');
  });

  test('what no log can know may hold less often, and says so', () => {
    const row: FamilyRow = {
      cell: '',
      asked: '',
      figure: null,
      trials: 100,
      present: 100,
      held: 60,
      pairs: 100,
      apart: 30,
      why: '',
    };
    expect(faultsOf(row)).toHaveLength(3);
    expect(faultsOf({ ...row, why: 'Nobody can know.', beyond: true })).toEqual([]);
    expect(faultsOf({ ...row, held: 95, apart: 5, said: 10, atLeast: 0.5 })).toEqual(['it is said too seldom']);
    expect(faultsOf({ ...row, held: 95, apart: 5, said: 10, atMost: 0 })).toEqual(['it is said too often']);
  });
});
