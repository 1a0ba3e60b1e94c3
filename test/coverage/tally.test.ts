/** A small sample of the coverage table, with bands so wide that only a broken interval leaves them. */
import { describe, expect, test } from 'vitest';
import { COVERAGE } from '../../src/figures/checks/coverage.ts';
import { holds } from './holds.ts';
import { ASKED, joined, tally } from './tally.ts';

const seeds = (from: number, count: number) => Array.from({ length: count }, (_, k) => from + k);

describe('coverage/tally', () => {
  const sample = joined(tally(seeds(9001, 36), 'k = 2'), tally(seeds(9101, 24), 'limits'));

  test.each(Object.keys(ASKED))('%s: intervals of 60 runs hold the truth', (name) => {
    const { held, of } = sample[name]!;
    expect(of).toBeGreaterThan(0);
    // Of 60 intervals of 95 %, fewer than 50 hold but once in a hundred thousand times (binomial).
    expect(held / of).toBeGreaterThanOrEqual(0.83);
  });

  test('equal seeds give equal counts', () => {
    // 8 and 9 are of two pairs; 7 and 8 are one, which counts more together than apart.
    expect(tally([8, 9], 'limits')).toEqual(joined(tally([8], 'limits'), tally([9], 'limits')));
    expect(tally([7, 8], 'limits').power_delta!.of).toBe(1);
  });

  test('the stored table asks for the truths as they are written here', () => {
    const words = Object.entries(ASKED).map(([name, truth]) => [name, truth.kind, truth.words]);
    expect(Object.entries(COVERAGE.figures).map(([name, row]) => [name, row.kind, row.truth])).toEqual(words);
  });

  test('an interval holds what lies between its ends', () => {
    const figure = { name: 'energy' as const, quantity: { value: 1, unit: 'W', parts: [] }, from: { columns: [], rows: null } };
    expect(holds({ ...figure, interval: [1, 2] }, 2)).toBe(true);
    expect(holds({ ...figure, interval: [1, 2] }, 2.001)).toBe(false);
    expect(holds(figure, 1)).toBe(true);
    expect(holds(figure, 1.1)).toBe(false);
  });
});
