import { describe, expect, test } from 'vitest';
import { isCount } from '../../../src/words/expression/counts.ts';
import type { Subject } from '../../../src/words/written.ts';
import { FAST, quantity, TWO } from '../subjects.ts';

/** Two runs, of which one has throttle events, and attempts of which one restarted. */
const SUBJECTS: ReadonlyMap<string, Subject> = new Map([
  ...TWO,
  [
    'fast',
    {
      ...FAST,
      figures: new Map([
        ...FAST.figures,
        [
          'throttle_events',
          { name: 'throttle_events', quantity: quantity(3, '1', 0, 'x'), from: { columns: ['clock'], rows: [2, 3601] }, of: {} },
        ],
      ]),
    } as Subject,
  ],
  ['ladder', { ...FAST, kind: 'attempts', figures: new Map(), facts: new Map([['outcome.restarted', quantity(1, '1', 0, 'y')]]) }],
]);

describe('words/expression/counts', () => {
  test.each([
    'fast.throttle_events',
    'ladder.outcome.restarted',
    'max(fast.throttle_events, 0)',
    'fast.throttle_events - 1',
    '-fast.throttle_events + 4',
    'count(*.peak_temperature)',
  ])('%s is a whole number of things', (expression) => {
    expect(isCount(expression, SUBJECTS)).toBe(true);
  });

  test.each([
    'fast.load_power',
    'fast.throttle_events + 0.5',
    'fast.throttle_events / 2',
    'mean(fast.throttle_events, 0)',
    '-fast.load_power',
    'max(fast.peak_temperature, 60 °C)',
  ])('%s is none', (expression) => {
    expect(isCount(expression, SUBJECTS)).toBe(false);
  });
});
