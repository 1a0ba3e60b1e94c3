import { describe, expect, test } from 'vitest';
import { cutAt, presentReadings, segments } from '../../../../src/plots/drawing/lines/segments.ts';

describe('plots/drawing/lines/segments', () => {
  test('breaks where a step is more than five median steps', () => {
    expect(segments(Float64Array.of(0, 1, 2, 3, 9, 10, 11))).toEqual([
      { start: 0, end: 4 },
      { start: 4, end: 7 },
    ]);
  });

  test('does not break at five median steps, nor at equal times', () => {
    expect(segments(Float64Array.of(0, 1, 2, 2, 7, 8))).toEqual([{ start: 0, end: 6 }]);
  });

  test('one reading is a segment, none is none', () => {
    expect(segments(Float64Array.of(4))).toEqual([{ start: 0, end: 1 }]);
    expect(segments(new Float64Array())).toEqual([]);
  });

  test('a channel that is logged in every third row is one line', () => {
    const x = Float64Array.from({ length: 30 }, (_, i) => i);
    const y = x.map((at) => (at % 3 === 0 ? at : Number.NaN));
    const present = presentReadings(x, y);
    expect([...present.x]).toEqual([0, 3, 6, 9, 12, 15, 18, 21, 24, 27]);
    expect(segments(present.x)).toHaveLength(1);
  });

  test('stretches are cut where phases begin, and the last reading stays in its phase', () => {
    const x = Float64Array.of(0, 1, 2, 3, 4);
    expect(cutAt(x, [{ start: 0, end: 5 }], [4, 2, 2, 0])).toEqual([
      { start: 0, end: 2 },
      { start: 2, end: 5 },
    ]);
    expect(
      cutAt(
        x,
        [
          { start: 0, end: 2 },
          { start: 2, end: 5 },
        ],
        [2],
      ),
    ).toEqual([
      { start: 0, end: 2 },
      { start: 2, end: 5 },
    ]);
  });
});
