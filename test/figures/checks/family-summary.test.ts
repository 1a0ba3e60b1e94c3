import { describe, expect, test } from 'vitest';
import { familiesOf } from '../../../src/compute/pages/family-words.ts';
import { CATALOGUE } from '../../../src/figures/catalogue.ts';
import { BAND } from '../../../src/figures/checks/coverage.ts';
import { FAMILIES, type FamilyRow } from '../../../src/figures/checks/families.ts';
import { heldInFamilies, summariesOf } from '../../../src/figures/checks/family-summary.ts';

/** Cases from which on a share is judged as it is, without room for chance: its standard deviation is then 0.7 % or less. */
const MANY = 1000;
/** Intervals of one set of parameters from which on a share below 90 % is no chance: 0.1 % of honest ones come to that. */
const SOME = 200;

const rows = Object.entries(FAMILIES).flatMap(([family, table]) => table.rows.map((row) => ({ family, ...row })));
const share = ({ held = 0, present = 0 }: FamilyRow) => held / present;

describe('what the stored families promise', () => {
  test('nothing present holds less than 90 %, but where no log can know and that is said', () => {
    const judged = rows.filter(({ present = 0 }) => present >= SOME);
    expect(judged.length).toBeGreaterThan(50);
    const bluffs = judged.filter((row) => share(row) < 0.9 && !(row.beyond && /\bno (log|setting)\b|\bnothing\b/i.test(row.why)));
    expect(bluffs.map(({ family, cell, asked }) => `${family}, ${cell}: ${asked}`)).toEqual([]);
  });

  test.each(CATALOGUE.map(({ name }) => name))(
    '%s: in each family 93 % to 97 % of all intervals hold, or the page says why',
    (name) => {
      for (const { family, interval } of heldInFamilies(name)) {
        const { all, why } = interval;
        if (all.of === 0) continue;
        const spare = all.of >= MANY ? 0 : 3.1 * Math.sqrt((0.95 * 0.05) / all.of);
        const inside = all.held / all.of >= BAND[0] - spare && all.held / all.of <= BAND[1] + spare;
        const said = familiesOf(name).find(({ id }) => id === `family-${family}`)!.why;
        expect(said).toEqual(why);
        if (!inside) expect(said.join(' '), `${name} in ${family}: ${all.held} of ${all.of}`).toMatch(/^[A-Z].*\.$/);
        expect(all.held / all.of, `${name} in ${family}`).toBeGreaterThanOrEqual(0.9);
      }
    },
  );

  test('what must be absent is absent in every run, for the cause that there is', () => {
    const must = rows.filter(({ absent }) => absent !== undefined);
    expect(must.length).toBeGreaterThan(0);
    for (const { family, cell, absent, caused, trials } of must) {
      expect([absent, caused], `${family}, ${cell}`).toEqual([trials, trials]);
    }
  });

  test('at most 5 % of all bounds of a figure in a family are false, and of its identical pairs told apart', () => {
    for (const [family, table] of Object.entries(FAMILIES)) {
      for (const { asked, bounds, pairs } of summariesOf(table.rows)) {
        for (const counted of [bounds, pairs]) {
          if (counted) expect(1 - counted.held / counted.of, `${family}: ${asked}`).toBeLessThanOrEqual(0.05);
        }
      }
    }
  });
});

describe('figures/checks/family-summary', () => {
  const row = (of: Partial<FamilyRow>): FamilyRow => ({
    cell: '',
    asked: 'load_power',
    figure: 'load_power',
    trials: 100,
    why: '',
    ...of,
  });

  test('counts cells together, apart from those of which no log can know', () => {
    const [summary, ...others] = summariesOf([
      row({ cell: 'few', present: 100, held: 91, ratio: 1.2, why: 'Few.', pairs: 100, apart: 4 }),
      row({ cell: 'many', present: 50, held: 48, ratio: 1.5 }),
      row({ cell: 'rare', present: 10, held: 1 }),
      row({ cell: 'slow', present: 100, held: 30, why: 'No log can know.', beyond: true, pairs: 100, apart: 60 }),
    ]);
    expect(others).toEqual([]);
    expect(summary).toMatchObject({
      figure: 'load_power',
      cells: 4,
      trials: 400,
      pairs: { held: 96, of: 100 },
      absent: null,
      said: null,
    });
    expect(summary!.interval).toEqual({
      present: { held: 260, of: 400 },
      all: { held: 140, of: 160 },
      least: { cell: 'few', held: 91, of: 100 },
      most: { cell: 'many', held: 48, of: 50 },
      beyond: { cell: 'slow', held: 30, of: 100 },
      ratio: [1.2, 1.5],
      why: ['Few.', 'No log can know.'],
    });
  });

  test('bounds and absences are counted by what is right; sayings that are judged otherwise stay apart', () => {
    const summaries = summariesOf([
      row({ absent: 100, caused: 99, bounds: 20, falseBounds: 1 }),
      row({ asked: 'told', figure: null, said: 3, atMost: 0.05 }),
      row({ asked: 'told', figure: null, said: 97, atLeast: 0.95 }),
    ]);
    expect(summaries.map(({ bounds, absent, said }) => ({ bounds, absent, said }))).toEqual([
      { bounds: { held: 19, of: 20 }, absent: { held: 99, of: 100 }, said: null },
      { bounds: null, absent: null, said: { held: 3, of: 100, atMost: 0.05 } },
      { bounds: null, absent: null, said: { held: 97, of: 100, atLeast: 0.95 } },
    ]);
  });

  test('a figure that no family asks for has none', () => {
    expect(heldInFamilies('no_such_figure')).toEqual([]);
    expect(heldInFamilies('idle_power').map(({ family }) => family)).toContain('level');
  });
});
