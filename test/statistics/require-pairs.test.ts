import { describe, expect, test } from 'vitest';
import { requirePairs } from '../../src/statistics/require-pairs.ts';

describe('statistics/require-pairs', () => {
  test('says what was found and what was expected', () => {
    expect(() => requirePairs([1, 2], [3, 4], 2)).not.toThrow();
    expect(() => requirePairs([1, 2], [3], 1)).toThrow('x has 2 values and y has 1, expected as many of both');
    expect(() => requirePairs([1], [3], 2)).toThrow('found 1 pairs, expected at least 2');
    expect(() => requirePairs([1, Number.POSITIVE_INFINITY], [3, 4], 1)).toThrow('x[1] is Infinity, expected a finite number');
    expect(() => requirePairs([1, 2], [Number.NaN, 4], 1)).toThrow('y[0] is NaN, expected a finite number');
  });
});
