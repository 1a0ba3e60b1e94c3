import { expect, test } from 'vitest';
import { offersOf } from '../../../src/browser/compare/offers.ts';
import { browserRun } from './published.ts';

test('what can be drawn: the primary channel of each quantity, and others by name', () => {
  const offers = offersOf([browserRun('larch-rated').gathered, browserRun('larch-first-try').gathered]);
  expect(offers.map(({ token }) => token)).toEqual(
    expect.arrayContaining(['temperature', 'temperature.board', 'ambient', 'clock', 'current']),
  );
  expect(offers.map(({ label }) => label).slice(0, 2)).toEqual(['Temperature', 'Temperature of board']);
  expect(new Set(offers.map(({ token }) => token)).size).toBe(offers.length);
  expect(offersOf([])).toEqual([]);
});
