import { describe, expect, test } from 'vitest';
import { copiesOf, readCopies } from '../../../src/browser/compare/missing-runs.ts';

describe('record copies of runs that are gone', () => {
  const text = JSON.stringify({
    format: 1,
    copies: [
      { id: 'a', title: 'A', path: 'record-copies/a/', date: '2026-03-14', runs: ['x', 'y'] },
      { id: 'b', title: 'B', path: 'record-copies/b/', date: '2026-03-14', runs: ['z'] },
    ],
  });

  test('are those that hold any of them, each with those that it holds', () => {
    expect(copiesOf(['y', 'w'], readCopies(text)!)).toEqual([{ title: 'A', path: 'record-copies/a/', runs: ['y'] }]);
    expect(copiesOf(['w'], readCopies(text)!)).toEqual([]);
  });

  test.each(['', '{}', '{"format":2,"copies":[]}', '{"format":1,"copies":[{"title":1}]}'])('cannot be told from %j', (broken) => {
    expect(readCopies(broken)).toBeNull();
  });
});
