import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import katex from 'katex';
import { describe, expect, test } from 'vitest';
import { absent, noChannel } from '../../src/figures/absent.ts';
import { type FigureSubject, SUBJECTS, subject } from '../../src/figures/catalogue/subject.ts';
import { CATALOGUE, definitionOf, type FigureName, figuresIn, figuresOf } from '../../src/figures/catalogue.ts';
import { SIDE_BY_SIDE } from '../../src/figures/comparison/side-by-side.ts';
import { derive } from '../../src/figures/derive.ts';
import { type FigureMap, nameIn } from '../../src/figures/figure.ts';
import { contextOf, every, logOf } from './build.ts';

describe('the catalogue', () => {
  test('has each figure once: no subject takes a name that another has', () => {
    expect(new Set(CATALOGUE.map(({ name }) => name)).size).toBe(CATALOGUE.length);
    expect(SUBJECTS.flatMap((subject) => figuresOf(subject))).toEqual(CATALOGUE.map(({ name }) => name));
  });

  test('a test asks for each figure by its name', () => {
    const tests = globSync('**/*.test.ts', { cwd: import.meta.dirname, exclude: ['catalogue.test.ts', 'checks/**'] });
    const texts = tests.map((path) => readFileSync(join(import.meta.dirname, path), 'utf8')).join('\n');
    const asked = new Set(texts.match(/\b[a-z0-9]+(?:_[a-z0-9]+)*\b/g));
    expect(CATALOGUE.map(({ name }) => name).filter((name) => !asked.has(name))).toEqual([]);
  });

  test('names are told apart by the compiler: one that the catalogue does not have is an error where it is written out', () => {
    const figures: FigureMap = new Map([['peak_temperature.ssd', absent('peak_temperature', noChannel('temperature'))]]);
    expect(figures.get('peak_temperature.ssd')).toBeDefined();
    // @ts-expect-error misspelt
    expect(figures.get('peak_temprature.ssd')).toBeUndefined();
    // @ts-expect-error misspelt
    expect(absent('peak_temprature', noChannel('temperature')).absent).toBe('no-channel');
  });

  test('a figure whose definition leaves something out, or a subject that nothing makes, does not compile', () => {
    const { lists: _lists, ...without } = definitionOf('load_power')!;
    // @ts-expect-error nothing says which lists show it
    subject('power', { median_power: without });
    // @ts-expect-error nothing is said to be left uncovered
    subject('power', { median_power: { ...definitionOf('load_power')!, notCovered: [] } });
    // @ts-expect-error every subject is in the catalogue
    const subjects: Record<FigureSubject, object> = { thermal: {} };
    expect(Object.keys(subjects)).toEqual(['thermal']);
  });

  test('every figure of a log is made, present or absent', () => {
    const names = new Set([...derive(logOf(every(1, 60), {}), contextOf()).figures.values()].map(({ name }) => name));
    const ofLogs = [...figuresOf('thermal'), ...figuresOf('clock'), ...figuresOf('power')];
    expect([...names]).toEqual(expect.arrayContaining(ofLogs));
  });

  test('lists stand in the order of the catalogue', () => {
    expect(figuresIn('runs')).toEqual(['peak_temperature', 'steady_temperature', 'mean_clock', 'load_power']);
    expect(SIDE_BY_SIDE.map(nameIn)).toEqual([...figuresIn('side by side'), 'energy' as const].sort(byCatalogue));
  });

  test.each(CATALOGUE.map((definition) => [definition.name, definition] as const))(
    '%s is whole, and its formula is sound TeX',
    (_, definition) => {
      expect(SUBJECTS).toContain(definition.subject);
      expect(definition.label).toMatch(/^[a-z]/);
      expect(definition.definition).toMatch(/^[A-Z].*\.$/);
      expect(definition.source).not.toBe('');
      expect(definition.check).not.toBe('');
      expect(definition.absentWhen.length).toBeGreaterThan(0);
      expect(definition.assumptions.length).toBeGreaterThan(0);
      for (const text of definition.notCovered) expect(text).toMatch(/^[A-Z].*\.$/);
      expect(() =>
        katex.renderToString(definition.formula, { output: 'mathml', throwOnError: true, strict: 'error' }),
      ).not.toThrow();
    },
  );

  test('finds a definition by name, and none for an unknown one', () => {
    expect(definitionOf('peak_temperature')?.label).toBe('peak temperature');
    expect(definitionOf('toString')).toBeUndefined();
  });
});

function byCatalogue(a: FigureName, b: FigureName): number {
  const order = CATALOGUE.map(({ name }) => name);
  return order.indexOf(a) - order.indexOf(b);
}
