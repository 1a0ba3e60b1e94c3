import { describe, expect, test } from 'vitest';
import { choose, MOST_RUNS, underNewIds } from '../../../src/browser/compare/choice.ts';
import { EMPTY_VIEW } from '../../../src/browser/compare/view.ts';

describe('which runs of an address are shown', () => {
  const known = new Set(['a', 'b', 'c']);

  test('those that are there, in the reader’s order, against the first or the one that is named', () => {
    expect(choose({ runs: ['b', 'x', 'a'], reference: null }, known)).toEqual({
      shown: ['b', 'a'],
      gone: ['x'],
      reference: 'b',
      remarks: [],
    });
    expect(choose({ runs: ['b', 'a'], reference: 'a' }, known).reference).toBe('a');
    expect(choose({ runs: ['x'], reference: null }, known)).toEqual({ shown: [], gone: ['x'], reference: null, remarks: [] });
  });

  test('another stands in for a reference that is gone, and that is said', () => {
    expect(choose({ runs: ['x', 'b'], reference: 'x' }, known)).toMatchObject({
      reference: 'b',
      remarks: ['The reference x cannot be shown: b stands in for it.'],
    });
  });

  test('no more than one plot can tell apart', () => {
    const many = Array.from({ length: MOST_RUNS + 2 }, (_, k) => `r${k}`);
    const { shown, remarks } = choose({ runs: many, reference: null }, new Set(many));
    expect(shown).toEqual(many.slice(0, MOST_RUNS));
    expect(remarks).toEqual([
      `At most ${MOST_RUNS} runs can be told apart in one plot: r${MOST_RUNS}, r${MOST_RUNS + 1} are left out.`,
    ]);
  });

  test('a run that is called otherwise now is found under its former id, once', () => {
    const view = { ...EMPTY_VIEW, runs: ['old', 'b', 'a'], reference: 'old' };
    expect(underNewIds(view, new Map([['old', 'a']]))).toEqual({
      view: { ...EMPTY_VIEW, runs: ['a', 'b'], reference: 'a' },
      remarks: ['The run old is called a now.'],
    });
    expect(underNewIds(view, new Map())).toEqual({ view, remarks: [] });
  });
});
