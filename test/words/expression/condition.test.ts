import { describe, expect, test } from 'vitest';
import { judge, type Verdict } from '../../../src/words/expression/condition.ts';
import { isTextProblem, parseCondition } from '../../../src/words/expression/parse-expression.ts';
import type { Subject } from '../../../src/words/written.ts';
import { FAST, TWO } from '../subjects.ts';

function verdict(text: string, subjects: ReadonlyMap<string, Subject> = TWO): Verdict {
  const tree = parseCondition(text);
  if (isTextProblem(tree)) throw new Error(tree.found);
  const judgement = judge(tree, subjects);
  if ('problems' in judgement) throw new Error(JSON.stringify(judgement.problems));
  return judgement.verdict;
}

/** A run with one figure x in W: value, u and degrees of freedom. */
function withX(value: number, u: number, dof: number | null, interval?: readonly [number, number]): ReadonlyMap<string, Subject> {
  const parts = [{ source: { id: 'run:r/x/sampling', title: 'scatter', dof }, share: u }];
  const figure = {
    name: 'load_power' as const,
    quantity: { value, unit: 'W', parts },
    from: { columns: [], rows: null },
    ...(interval ? { interval } : {}),
  };
  return new Map([['r', { ...FAST, figures: new Map([['x', figure]]) }]]);
}

describe('words/expression/condition', () => {
  // Half widths of 95 % intervals: JCGM 100:2008, table G.2, t95 = 1.960 for infinitely many degrees of freedom, 2.23 for ν = 10.
  test.each([
    [null, 1.95, 'cannot be told'],
    [null, 1.97, 'holds'],
    [10, 2.22, 'cannot be told'],
    [10, 2.24, 'holds'],
  ] as const)('with ν = %s a value %s u above its limit: %s', (dof, ratio, expected) => {
    expect(verdict('r.x > 5 W', withX(5 + ratio * 0.1, 0.1, dof))).toBe(expected);
    expect(verdict('not r.x <= 5 W', withX(5 + ratio * 0.1, 0.1, dof))).toBe(expected);
    expect(verdict('r.x < 5 W', withX(5 - ratio * 0.1, 0.1, dof))).toBe(expected);
  });

  test('exact values decide at the limit itself', () => {
    expect(
      ['2 < 2', '2 <= 2', '2 > 2', '2 >= 2', '2 within 1 of 3', '2 within 0.5 of 3', '2 between 2 and 3', '2 between 3 and 2'].map(
        (text) => verdict(text),
      ),
    ).toEqual(['fails', 'holds', 'fails', 'holds', 'holds', 'fails', 'holds', 'fails']);
  });

  test("a figure's own lopsided interval decides against an exact limit", () => {
    expect(verdict('r.x > 5 W', withX(6, 2, null, [5.5, 9]))).toBe('holds');
    expect(verdict('6.8 W > r.x', withX(6, 0.1, null, [5.5, 9]))).toBe('cannot be told');
  });

  test('what its interval reaches further goes into every comparison that a figure takes part in', () => {
    expect(verdict('r.x < 7 W', withX(6, 0.1, null))).toBe('holds');
    expect(verdict('r.x + 0 W < 7 W', withX(6, 0.1, null))).toBe('holds');
    expect(verdict('r.x + 0 W < 7 W', withX(6, 0.1, null, [5.8, 7.5]))).toBe('cannot be told');
    expect(verdict('7 W - r.x > 0 W', withX(6, 0.1, null, [5.8, 7.5]))).toBe('cannot be told');
  });

  test('what both sides share cancels', () => {
    expect(verdict('fast.peak_temperature > rated.peak_temperature + 9 K')).toBe('holds');
    expect(verdict('fast.peak_temperature > 70 °C')).toBe('cannot be told');
  });

  test('unknown uncertainty tells nothing', () => {
    expect(verdict('fast.unknown_drift < 1000 K')).toBe('cannot be told');
  });

  // Kleene's strong logic (Introduction to Metamathematics, 1952, § 64; from memory).
  const T = '1 < 2';
  const F = '2 < 1';
  const U = 'fast.unknown_drift < 5 K';
  test.each([
    [`${T} and ${T}`, 'holds'],
    [`${T} and ${F}`, 'fails'],
    [`${T} and ${U}`, 'cannot be told'],
    [`${F} and ${U}`, 'fails'],
    [`${U} and ${U}`, 'cannot be told'],
    [`${T} or ${U}`, 'holds'],
    [`${F} or ${U}`, 'cannot be told'],
    [`${F} or ${F}`, 'fails'],
    [`not ${U}`, 'cannot be told'],
    [`not ${F}`, 'holds'],
    [`not ${F} and ${F}`, 'fails'],
    [`not (${F} and ${F})`, 'holds'],
    [`${T} or ${F} and ${F}`, 'holds'],
    [`(${T} or ${F}) and ${F}`, 'fails'],
  ] as const)('%s: %s', (text, expected) => {
    expect(verdict(text)).toBe(expected);
  });
});
