import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../../src/figures/catalogue.ts';
import { agrees, digitsReached } from '../../../src/figures/checks/check.ts';
import { CHECKS } from '../../../src/figures/checks/checks.ts';
import { LINEAR, NONLINEAR, UNIVARIATE } from '../../../src/figures/checks/nist-sets.ts';
import { checkTables } from '../../../src/figures/checks/results.ts';
import { CRITERIA } from '../../../src/figures/thermal/criteria.ts';

describe('figures/checks/checks', () => {
  const compared = new Map(CHECKS.map((check) => [check.id, check.compare()]));

  test.each(CHECKS.map(({ id, title }) => [id, title]))('%s: %s', (id) => {
    const rows = compared.get(id)!;
    expect(rows.length).toBeGreaterThan(0);
    expect(rows.filter((row) => !agrees(row))).toEqual([]);
  });

  test('a check can fail: ours moved by twice the tolerance no longer agrees', () => {
    for (const row of [...compared.values()].flat()) {
      expect(agrees({ ...row, ours: Number(row.printed) + 2 * row.tolerance }), row.what).toBe(false);
    }
  });

  test('every certified value of every NIST set is compared: nine digits of linear, seven of nonlinear sets from both starts', () => {
    const fewest = (name: string) => Math.min(...compared.get(`nist-${name.toLowerCase()}`)!.map(digitsReached));
    for (const { name } of [...LINEAR, ...UNIVARIATE]) expect(fewest(name), name).toBeGreaterThanOrEqual(9);
    for (const { name, certified, starts } of NONLINEAR) {
      expect(fewest(name), name).toBeGreaterThanOrEqual(7);
      expect(compared.get(`nist-${name.toLowerCase()}`)).toHaveLength(starts.length * (2 * certified.params.length + 2));
    }
    expect(NONLINEAR.map(({ level }) => level)).toContain('Higher');
  });

  test('every criterion of steady state is compared', () => {
    expect(compared.get('steady-state-criteria')!.map(({ what }) => what)).toEqual(CRITERIA.map(({ name }) => `${name}, s`));
  });

  test('ids are unique, and name a source', () => {
    expect(new Set(CHECKS.map(({ id }) => id)).size).toBe(CHECKS.length);
    for (const { id, source } of CHECKS) {
      expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
      expect(source.length).toBeGreaterThan(20);
    }
  });

  test('figures name checks that there are', () => {
    for (const { name, publishedChecks } of CATALOGUE)
      for (const id of publishedChecks) expect([...compared.keys()], name).toContain(id);
  });

  test('every figure has a published check, or says that there is no source', () => {
    const bare = CATALOGUE.filter(({ publishedChecks }) => publishedChecks.length === 0);
    for (const { name, source } of bare) expect(`${name}: ${source}`).toBe(`${name}: common practice, no source`);
  });

  test('carried out, they are plain text for the command and the pages', () => {
    const pontius = checkTables().find(({ id }) => id === 'nist-pontius')!;
    expect(pontius.rows[4]).toEqual({
      what: 'b2',
      published: '-3.16081871345029e-15',
      ours: expect.stringMatching(/^-3\.16081871345\d*e-15$/),
      reached: expect.stringMatching(/^1[2-5]\.\d$/),
      required: '9.0',
      demand: '9 digits',
      agrees: true,
    });
  });
});
