import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findGaps, medianStep, orderRows, stepChange } from '../../../src/intake/time/time-order.ts';

const times = (...values: number[]) => Float64Array.from(values);

describe('intake/time/time-order', () => {
  it('keeps what never falls and names every other row', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 30 })), (values) => {
        const { kept, disordered } = orderRows(times(...values));
        const all = [...kept, ...disordered.map(({ index }) => index)].sort((a, b) => a - b);
        expect(all).toEqual(values.map((_, k) => k));
        for (let k = 1; k < kept.length; k++) {
          expect(kept[k]).toBeGreaterThan(kept[k - 1]!);
          expect(values[kept[k]!]).toBeGreaterThanOrEqual(values[kept[k - 1]!]!);
        }
      }),
    );
  });

  it('sets aside the rows after a clock was put back, until it has caught up', () => {
    expect(orderRows(times(0, 1, 2, 3, 1, 2, 3, 4)).disordered).toEqual([
      { index: 4, why: 'backward' },
      { index: 5, why: 'backward' },
    ]);
  });

  it('sets aside one row that is ahead, not all that follow it', () => {
    expect(orderRows(times(0, 1, 900, 3, 4, 5)).disordered).toEqual([{ index: 2, why: 'ahead' }]);
  });

  it('finds gaps over five steps, and the step itself', () => {
    const seconds = times(0, 1, 2, 3, 8, 9, 15.5, 16.5);
    expect(medianStep(seconds)).toBe(1);
    expect(findGaps(seconds, 1)).toEqual([{ row: 6, length: 6.5 }]);
    expect(findGaps(times(0, 1, 6, 11.000001), 1)).toEqual([{ row: 3, length: 11.000001 - 6 }]);
    expect(medianStep(times(5))).toBeNull();
  });

  it('finds where the step changes for good', () => {
    const seconds = Float64Array.from({ length: 80 }, (_, k) => (k < 40 ? k : 40 + (k - 40) * 5));
    const change = stepChange(seconds)!;
    expect(change).toMatchObject({ before: 1, after: 5 });
    expect(Math.abs(change.row - 40)).toBeLessThan(8);
    expect(stepChange(Float64Array.from({ length: 80 }, (_, k) => k))).toBeNull();
  });
});
