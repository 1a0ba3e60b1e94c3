import { describe, expect, it } from 'vitest';
import { ranksOf } from '../../../src/compute/discovery/main-figures.ts';

describe('compute/discovery/main-figures', () => {
  it('ranks without gaps, equal numbers alike, and leaves out what is absent', () => {
    expect(ranksOf([71.3, null, 65, 71.3, 90])).toEqual([1, null, 0, 1, 2]);
    expect(ranksOf([])).toEqual([]);
    expect(ranksOf([null])).toEqual([null]);
    expect(ranksOf([-3, 10, 2])).toEqual([0, 2, 1]);
  });
});
