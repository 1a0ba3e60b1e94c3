import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { thin } from '../../../../src/plots/drawing/lines/thin.ts';

interface Series {
  readonly x: number[];
  readonly y: number[];
}

const series = fc
  .array(fc.record({ step: fc.double({ min: 0, max: 3, noNaN: true }), y: fc.integer({ min: -50, max: 50 }) }), {
    minLength: 1,
    maxLength: 200,
  })
  .map((rows): Series => {
    let at = 0;
    return { x: rows.map(({ step }) => (at += step)), y: rows.map(({ y }) => y) };
  });
const columns = fc.integer({ min: 1, max: 40 });

const gridOf = ({ x }: Series, count: number) => ({ from: x[0]!, to: x.at(-1)! + 1e-9, columns: count });
const columnOf = (x: number, grid: ReturnType<typeof gridOf>) =>
  Math.min(Math.floor(((x - grid.from) / (grid.to - grid.from)) * grid.columns), grid.columns - 1);

describe('plots/drawing/lines/thin', () => {
  // M4 as the paper defines it: group by pixel column; rows with the least and greatest time and the least and greatest value
  // (Jugel, Jerzak, Hackenbroich & Markl, PVLDB 7(10), 2014).
  test('keeps first, last, lowest and highest of each column, at most four, in order', () => {
    fc.assert(
      fc.property(series, columns, (all, count) => {
        const grid = gridOf(all, count);
        const kept = thin(all.x, all.y, grid);
        const groups = Map.groupBy(all.x.keys(), (i) => columnOf(all.x[i]!, grid));
        for (const rows of groups.values()) {
          const here = kept.filter((i) => rows.includes(i));
          const values = rows.map((i) => all.y[i]!);
          expect(here.length).toBeLessThanOrEqual(4);
          expect(here).toContain(rows[0]);
          expect(here).toContain(rows.at(-1));
          expect(Math.min(...here.map((i) => all.y[i]!))).toBe(Math.min(...values));
          expect(Math.max(...here.map((i) => all.y[i]!))).toBe(Math.max(...values));
        }
        expect(kept).toEqual([...new Set(kept)].sort((a, b) => a - b));
      }),
    );
  });

  test('is at rest after one pass: thinning what was thinned changes nothing', () => {
    fc.assert(
      fc.property(series, columns, (all, count) => {
        const grid = gridOf(all, count);
        const once = thin(all.x, all.y, grid);
        const x = once.map((i) => all.x[i]!);
        const y = once.map((i) => all.y[i]!);
        expect(thin(x, y, grid)).toEqual([...once.keys()]);
      }),
    );
  });

  test('looks at no reading outside the stretch', () => {
    const x = [0, 1, 2, 3, 4, 5];
    const y = [99, 1, 2, 0, 1, -99];
    expect(thin(x, y, { from: 0, to: 6, columns: 1 }, 1, 5)).toEqual([1, 2, 3, 4]);
  });

  test('of equal extremes keeps the earliest', () => {
    expect(thin([0, 1, 2, 3, 4, 5], [1, 0, 5, 0, 5, 1], { from: 0, to: 6, columns: 1 })).toEqual([0, 1, 2, 5]);
  });

  test('a reading on the line between two columns counts to the later one', () => {
    expect(thin([0, 4, 4.999, 5, 9], [0, 1, 2, 3, 4], { from: 0, to: 10, columns: 2 })).toEqual([0, 2, 3, 4]);
  });

  test('counts readings outside the grid to its outermost columns, and an empty stretch gives none', () => {
    expect(thin([-5, 20], [1, 2], { from: 0, to: 10, columns: 2 })).toEqual([0, 1]);
    expect(thin([], [], { from: 0, to: 1, columns: 3 })).toEqual([]);
  });
});
