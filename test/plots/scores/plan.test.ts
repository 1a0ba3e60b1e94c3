import { describe, expect, test } from 'vitest';
import { inkOf } from '../../../src/plots/drawing/palette.ts';
import { NARROW, WIDE } from '../../../src/plots/drawing/size.ts';
import { planScores } from '../../../src/plots/scores/plan.ts';
import { comparison } from '../comparisons.ts';
import { drawable, partsOf } from '../plan-parts.ts';

const TWO = comparison({
  base: { scores: { mix: [100, 1, null], copy: [50, 0.5, null], sort: [10, 0.1, null] } },
  double: { scores: { mix: [200, 2, null], copy: [25, 0.25, null], sort: [10, 0.1, null] } },
  same: { scores: { mix: [101, 1, null], copy: [50, 0.5, null], sort: null } },
});

/** Signs by row, so many in each, from the first row on. */
function rowsOf<T>(signs: readonly T[], counts: readonly number[]): T[][] {
  return counts.map((count, row) => {
    const start = counts.slice(0, row).reduce((sum, each) => sum + each, 0);
    return signs.slice(start, start + count);
  });
}

describe('plots/scores/plan', () => {
  test.each([WIDE, NARROW])('$name: a row for all tests and one for each, from the largest gain; signs at the speedups', (size) => {
    const plan = drawable(planScores(TWO));
    const [panel] = partsOf(plan, size);
    const [all, mix, sort, copy] = rowsOf(panel!.signs, [2, 2, 1, 2]);
    expect(plan.table.rows.map(([title]) => title)).toEqual(['All tests (geometric mean)', 'mix', 'sort', 'copy']);
    const at = (ratios: readonly number[]) => ratios.map((ratio) => expect.closeTo(panel!.xOf(ratio), 6));
    expect(mix!.map(({ x }) => x)).toEqual(at([2, 1.01]));
    expect(sort!.map(({ x }) => x)).toEqual(at([1]));
    expect(copy!.map(({ x }) => x)).toEqual(at([0.5, 1]));
    expect(all!.map(({ x }) => x)).toEqual(at([1, Math.sqrt(1.01)]));
  });

  test('half and double stand equally far from the reference', () => {
    const [panel] = partsOf(drawable(planScores(TWO)), WIDE);
    expect(panel!.xOf(2) - panel!.xOf(1)).toBeCloseTo(panel!.xOf(1) - panel!.xOf(0.5), 9);
    const zero = panel!.rules.find(({ stroke }) => stroke === 'var(--plot-ink)')!;
    expect(zero.x).toBeCloseTo(panel!.xOf(1), 9);
  });

  test('where lower is better a shorter time is a gain', () => {
    const timed = comparison({
      base: { better: 'lower', unit: 's', scores: { mix: 100 } },
      fast: { better: 'lower', unit: 's', scores: { mix: 50 } },
    });
    const plan = drawable(planScores(timed));
    expect(plan.table.rows).toEqual([['mix', '2']]);
    const [panel] = partsOf(plan, WIDE);
    expect(panel!.signs[0]!.x).toBeCloseTo(panel!.xOf(2), 9);
  });

  test('told apart is a filled sign, not told apart an open one and said in the table', () => {
    const plan = drawable(planScores(TWO));
    const [, mix] = rowsOf(partsOf(plan, WIDE)[0]!.signs, [2, 2]);
    expect(mix!.map(({ fill }) => fill)).toEqual([inkOf(1), 'var(--plot-paper)']);
    expect(plan.table.rows[1]![2]).toMatch(/^1\.010 ±\s0\.0\d+, these two runs do not differ$/);
    expect(plan.csv).toMatch(/\r\nmix,same,1\.01,0\.98\d*,1\.03\d*,these two runs do not differ,\r\n/);
  });

  test('runs are named in the first row, beside their signs and inside the drawing', () => {
    for (const size of [WIDE, NARROW]) {
      const [panel] = partsOf(drawable(planScores(TWO)), size);
      for (const alias of ['double', 'same']) {
        const label = panel!.texts.find(({ text }) => text === alias)!;
        expect(panel!.signs.slice(0, 2).map(({ y }) => y)).toContain(label.y);
        expect(label.x).toBeGreaterThan(0);
        expect(label.x).toBeLessThan(panel!.width);
      }
    }
  });

  test('a test without a score of a run says so in its row and in the method', () => {
    const plan = drawable(planScores(TWO));
    expect(partsOf(plan, WIDE)[0]!.texts.map(({ text }) => text)).toContain('same absent');
    expect(plan.method).toContain('No sign for same in sort: score.sort of same is absent. No repeat of sort gave a result.');
    expect(plan.alt).toContain('sort: double 1.000 and same absent.');
  });

  test('one test has no row for all of them', () => {
    const plan = drawable(planScores(comparison({ base: { scores: { mix: 10 } }, fast: { scores: { mix: 15 } } })));
    expect(plan.table).toEqual({
      caption: 'Speedup by test, as multiples of base',
      head: ['Test', 'fast'],
      rows: [['mix', '1.5']],
    });
  });

  test('nothing to draw is told with its reason', () => {
    expect(planScores(comparison({ base: { scores: { mix: 10 } }, other: { scores: { copy: 15 } } }))).toMatchObject({
      why: expect.stringMatching(/^The run .*\.$/),
    });
    expect(planScores(comparison({ base: {}, other: {} }))).toEqual({ why: 'Neither other nor base has scores.' });
    expect(planScores(comparison({ base: { scores: { mix: 10 } } }))).toEqual({ why: 'The comparison has one run alone.' });
  });

  test('an interval that reaches zero, which no logarithm has, is cut at the edge of the drawing', () => {
    const vague = comparison({ base: { scores: { mix: [10, 4, 1], sure: 10 } }, fast: { scores: { mix: [12, 4, 1], sure: 12 } } });
    const [panel] = partsOf(drawable(planScores(vague)), WIDE);
    const whiskers = panel!.rules.filter(({ stroke, y, y2 }) => stroke === inkOf(1) && y === y2);
    expect(whiskers.length).toBeGreaterThan(0);
    for (const { x, x2 } of whiskers) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x2).toBeLessThanOrEqual(panel!.width);
    }
    expect(Math.min(...whiskers.map(({ x }) => x))).toBe(0);
    const said = 'One without a stroke at its end goes on beyond the axis.';
    expect(drawable(planScores(vague)).method).toContain(said);
    expect(drawable(planScores(TWO)).method).not.toContain(said);
  });

  test('the order of figures, which a JSON file sorts, shows nowhere', () => {
    const turned = { ...TWO, figures: new Map([...TWO.figures].reverse()) };
    const [one, other] = [drawable(planScores(TWO)), drawable(planScores(turned))];
    expect({ ...other, spec: other.layOut(WIDE), layOut: null }).toEqual({ ...one, spec: one.layOut(WIDE), layOut: null });
  });
});
