import { describe, expect, test } from 'vitest';
import { accuracyModel } from '../../../src/compute/pages/accuracy.ts';
import { methodModel } from '../../../src/compute/pages/method.ts';
import { CATALOGUE } from '../../../src/figures/catalogue.ts';
import { COVERAGE } from '../../../src/figures/checks/coverage.ts';
import { checkTables } from '../../../src/figures/checks/results.ts';

describe('compute/pages/method', () => {
  const tables = checkTables();
  const entries = methodModel(tables).subjects.flatMap((subject) => subject.entries);

  test('has every figure with a definition, a formula without scripting, its absences, a source and a check', () => {
    expect(entries.map(({ name }) => name).sort()).toEqual(CATALOGUE.map(({ name }) => name).sort());
    for (const entry of entries) {
      expect(entry.formula).toMatch(/^<span class="katex"><math /);
      expect(entry.formula).not.toMatch(/ style=|<script/);
      for (const text of [entry.definition, entry.unit, entry.source, entry.check]) expect(text).not.toBe('');
      expect(entry.absentWhen.length + entry.assumptions.length).toBeGreaterThan(0);
    }
  });

  test('names the published values of a figure with the fewest digits reached, by anchors of the accuracy page', () => {
    const anchors = accuracyModel(tables).tables.map(({ id }) => id);
    const timeConstant = entries.find(({ name }) => name === 'time_constant')!;
    expect(timeConstant.checks.map(({ id }) => id)).toContain('step-response');
    for (const { id, digits } of entries.flatMap(({ checks }) => checks)) {
      expect(anchors).toContain(id);
      expect(Number(digits)).toBeGreaterThan(1);
    }
  });

  test('says how often intervals hold the truth, and what that is', () => {
    const steady = entries.find(({ name }) => name === 'steady_temperature')!;
    expect(steady.coverage!.words).toMatch(/^\d+\.\d % of \d+ where instruments state expanded/);
    expect(steady.coverage!.truth).toBe(COVERAGE.figures.steady_temperature!.truth);
  });
});

describe('compute/pages/accuracy', () => {
  test('has every simulated figure under its label', () => {
    const { coverage, runs } = accuracyModel(checkTables());
    expect(runs).toBe(COVERAGE.runs);
    expect(coverage.find(({ name }) => name === 'peak_power')).toMatchObject({ label: 'peak power', kind: 'extreme' });
    expect(coverage).toHaveLength(Object.keys(COVERAGE.figures).length);
  });
});
