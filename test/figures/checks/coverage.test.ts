import { describe, expect, test } from 'vitest';
import { CATALOGUE, definitionOf } from '../../../src/figures/catalogue.ts';
import { BAND, COVERAGE, type Held, inBand, shareOf, surelyOutside, whyOutside } from '../../../src/figures/checks/coverage.ts';
import { FAMILIES } from '../../../src/figures/checks/families.ts';

/** Of figures of this table: those of families alone are judged there. */
const WHY = Object.fromEntries(
  CATALOGUE.flatMap(({ name, outside }) => (outside === undefined || !(name in COVERAGE.figures) ? [] : [[name, outside]])),
);

describe('figures/checks/coverage', () => {
  test('the table is of 250 runs or more, and it or a family has every figure but those that say why not', () => {
    const inFamilies = new Set(Object.values(FAMILIES).flatMap(({ rows }) => rows.map(({ figure }) => figure)));
    const counted = ({ name }: { readonly name: string }) => Object.hasOwn(COVERAGE.figures, name) || inFamilies.has(name);
    const uncounted = CATALOGUE.filter((definition) => !counted(definition));
    expect(COVERAGE.runs).toBeGreaterThanOrEqual(250);
    for (const { name, uncounted: why } of uncounted) expect(why, name).toMatch(/^[A-Z].*\.$/);
    for (const name of Object.keys(COVERAGE.figures)) expect(definitionOf(name), name).toBeDefined();
  });

  test('every figure was present often enough to tell', () => {
    for (const [name, { limits, expanded }] of Object.entries(COVERAGE.figures)) {
      expect(Math.min(limits.of, expanded.of), name).toBeGreaterThanOrEqual(COVERAGE.runs / 10);
    }
  });

  test('what lies outside the band by more than chance says why, and nothing that is surely inside does', () => {
    const rows = Object.entries(COVERAGE.figures);
    const below = ({ held, of }: Held) => held / of < BAND[0];
    const must = rows.filter(([, { limits, expanded }]) => surelyOutside(expanded) || (surelyOutside(limits) && below(limits)));
    expect(Object.keys(WHY)).toEqual(expect.arrayContaining(must.map(([name]) => name)));
    const outside = rows.filter(([, row]) => !inBand(row.expanded) || !inBand(row.limits)).map(([name]) => name);
    expect(outside).toEqual(expect.arrayContaining(Object.keys(WHY)));
    for (const name of outside) expect(whyOutside(name), name).toMatch(/^[A-Z].*\.$/);
  });

  test('limits that outweigh all else are said, and what chance alone does', () => {
    const others = Object.entries(COVERAGE.figures).filter(([name]) => !(name in WHY));
    for (const [name, { limits, expanded }] of others) {
      const within = inBand(limits) && inBand(expanded);
      const said = within ? /^$/ : surelyOutside(limits) ? /^Where several errors within limits meet/ : /chance alone/;
      expect(whyOutside(name), name).toMatch(said);
    }
    expect(whyOutside('peak_power')).toBe(WHY.peak_power);
    expect(whyOutside('no_such_figure')).toBe('');
  });

  test('shares, and the band about 95 %', () => {
    expect(BAND).toEqual([0.93, 0.97]);
    expect(shareOf({ held: 19, of: 20 })).toBe('95.0 %');
    expect(shareOf({ held: 0, of: 0 })).toBe('–');
    expect([92, 93, 97, 98].map((held) => inBand({ held, of: 100 }))).toEqual([false, true, true, false]);
    // Binomial with 5 %: 1000 cases miss 72 times or more once in 650 times, 71 or more once in 430.
    expect([928, 929, 950].map((held) => surelyOutside({ held, of: 1000 }, 1000))).toEqual([true, false, false]);
    // Of 100, none misses once in 169 times; 150 miss never once in 2,200.
    expect(surelyOutside({ held: 100, of: 100 }, 100)).toBe(false);
    expect(surelyOutside({ held: 150, of: 150 }, 150)).toBe(true);
    expect(surelyOutside({ held: 150, of: 150 }, 75)).toBe(false);
    expect(surelyOutside({ held: 0, of: 0 })).toBe(false);
    expect(inBand({ held: 0, of: 0 })).toBe(false);
  });
});
