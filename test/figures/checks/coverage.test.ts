import { describe, expect, test } from 'vitest';
import { CATALOGUE, definitionOf } from '../../../src/figures/catalogue.ts';
import { BAND, COVERAGE, inBand, shareOf, tooNarrow, whyOutside } from '../../../src/figures/checks/coverage.ts';
import { FAMILIES } from '../../../src/figures/checks/families.ts';

/** Of figures of this table: those of families alone are judged there. */
const WHY = Object.fromEntries(
  CATALOGUE.flatMap(({ name, outside }) => (outside === undefined || !(name in COVERAGE.figures) ? [] : [[name, outside]])),
);

describe('figures/checks/coverage', () => {
  test('the table is of 2,000 runs, and it or a family has every figure but those that say why not', () => {
    const inFamilies = new Set(Object.values(FAMILIES).flatMap(({ rows }) => rows.map(({ figure }) => figure)));
    const counted = ({ name }: { readonly name: string }) => Object.hasOwn(COVERAGE.figures, name) || inFamilies.has(name);
    const uncounted = CATALOGUE.filter((definition) => !counted(definition));
    expect(COVERAGE.runs).toBe(2000);
    for (const { name, uncounted: why } of uncounted) expect(why, name).toMatch(/^[A-Z].*\.$/);
    for (const name of Object.keys(COVERAGE.figures)) expect(definitionOf(name), name).toBeDefined();
  });

  test('every figure was present often enough to tell', () => {
    for (const [name, { limits, expanded }] of Object.entries(COVERAGE.figures)) {
      expect(Math.min(limits.of, expanded.of), name).toBeGreaterThanOrEqual(200);
    }
  });

  test('what lies outside the band says why, and nothing inside does', () => {
    const rows = Object.entries(COVERAGE.figures);
    const must = rows.filter(([, row]) => !inBand(row.expanded) || tooNarrow(row.limits)).map(([name]) => name);
    const may = rows.filter(([, row]) => !inBand(row.expanded) || !inBand(row.limits)).map(([name]) => name);
    expect(Object.keys(WHY)).toEqual(expect.arrayContaining(must));
    expect(may).toEqual(expect.arrayContaining(Object.keys(WHY)));
    for (const name of may) expect(whyOutside(name), name).not.toBe('');
  });

  test('limits that outweigh all else are said too', () => {
    const outweighed = Object.entries(COVERAGE.figures).filter(([name, row]) => !(name in WHY) && !inBand(row.limits));
    for (const [name] of outweighed) expect(whyOutside(name), name).toMatch(/^Where several errors within limits meet/);
    expect(whyOutside('load_power')).toBe('');
    expect(whyOutside('peak_power')).toBe(WHY.peak_power);
    expect(whyOutside('no_such_figure')).toBe('');
  });

  test('shares, and the band about 95 %', () => {
    expect(BAND).toEqual([0.93, 0.97]);
    expect(shareOf({ held: 19, of: 20 })).toBe('95.0 %');
    expect(shareOf({ held: 0, of: 0 })).toBe('–');
    expect([92, 93, 97, 98].map((held) => inBand({ held, of: 100 }))).toEqual([false, true, true, false]);
    expect([92, 93].map((held) => tooNarrow({ held, of: 100 }))).toEqual([true, false]);
    expect(inBand({ held: 0, of: 0 })).toBe(false);
  });
});
