import { describe, expect, test } from 'vitest';
import { correlationWindow } from '../../src/statistics/correlation-window.ts';

describe('statistics/correlation-window', () => {
  test('by hand: 2, 1, −1, −2 has products 10, 3, −4', () => {
    expect(correlationWindow([2, 1, -1, -2])).toEqual({ lag: 1, sum: 10 + 2 * 3 });
  });

  test('alternating: no lag; all of one sign: every lag', () => {
    expect(correlationWindow([1, -1, 1, -1])).toEqual({ lag: 0, sum: 4 });
    expect(correlationWindow([1, 1, 1])).toEqual({ lag: 2, sum: 9 });
  });
});
