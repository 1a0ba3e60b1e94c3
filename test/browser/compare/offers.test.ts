import { expect, test } from 'vitest';
import { missingOf, offersOf } from '../../../src/browser/compare/offers.ts';
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

test('what is asked for and cannot be had is named', () => {
  const runs = [browserRun('larch-rated').gathered];
  const [clock, soc, fan, board] = [
    { quantity: 'clock', channel: null },
    { quantity: 'temperature', channel: 'soc' },
    { quantity: 'fan', channel: null },
    { quantity: 'clock', channel: 'board' },
  ] as const;
  expect(missingOf([clock, soc], runs)).toEqual([]);
  expect(missingOf([clock, fan, board], runs)).toEqual(['Not drawn, since no chosen run has such readings: fan, clock of board.']);
});
