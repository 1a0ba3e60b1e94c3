import { describe, expect, test } from 'vitest';
import type { Register } from '../../../src/register/register.ts';
import { tellTwoTests } from '../../../src/register/resolved/two-tests.ts';
import { Report } from '../../../src/register/yaml/report.ts';

function registerOf(noteRuns: Record<string, string>, comparedFast: string): Register {
  const runs = new Map([
    ['rated', {}],
    ['fast', {}],
    ['fast-2', { follows: 'fast' }],
  ]);
  const comparison = { id: 'steps', file: 'content/comparisons/steps.md', runs: new Map(), repeats: [] };
  const settings = new Map([
    ['rated', 'rated'],
    ['fast', comparedFast],
  ]);
  const note = {
    runs: new Map(Object.entries(noteRuns)),
    comparisons: new Map([['steps', 'steps']]),
    placeOf: () => ({ file: 'content/notes/x.md', line: 7, column: 1 }),
  };
  return {
    runs,
    comparisons: new Map([['steps', { ...comparison, runs: settings }]]),
    notes: new Map([['notes/x', note]]),
  } as unknown as Register;
}

function told(noteRuns: Record<string, string>, comparedFast: string): string[] {
  const report = new Report();
  tellTwoTests(registerOf(noteRuns, comparedFast), report);
  return report.problems.map(({ rule, found, remedy }) => `${rule}: ${found} | ${remedy}`);
}

describe('register/resolved/two-tests: two tests in one note', () => {
  test('a retest beside a comparison of the run before it is warned of', () => {
    expect(told({ rated: 'rated', fast: 'fast-2' }, 'fast')).toEqual([
      'two-tests: `runs` names `fast-2`, and `steps` still compares `fast`, the test before it | name `fast-2` in content/comparisons/steps.md, with `retests: follow` there for the next one; or name `fast` under `runs`',
    ]);
  });

  test('a comparison that followed, one of the same run, and a note that names both on purpose are not', () => {
    expect(told({ rated: 'rated', fast: 'fast-2' }, 'fast-2')).toEqual([]);
    expect(told({ rated: 'rated', fast: 'fast' }, 'fast')).toEqual([]);
    expect(told({ fast: 'fast', again: 'fast-2' }, 'fast')).toEqual([]);
  });
});
