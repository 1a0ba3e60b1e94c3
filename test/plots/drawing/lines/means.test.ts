import { describe, expect, test } from 'vitest';
import { scatterMeans, spanOfMeans } from '../../../../src/plots/drawing/lines/means.ts';

const x = Float64Array.from({ length: 40 }, (_, i) => i / 10 - 1);
const zigzag = x.map((_, i) => (i % 2 === 0 ? 1 : 3));
const whole = [{ start: 0, end: 40 }];

describe('plots/drawing/lines/means', () => {
  test('means of time and reading in spans that begin at 0', () => {
    const means = scatterMeans(x, zigzag, whole, 1, 20)!;
    expect(means).toHaveLength(4);
    expect(means.map(({ y }) => y)).toEqual([2, 2, 2, 2]);
    expect(means.map((mean) => mean.x)).toEqual([-0.55, 0.45, 1.45, 2.45].map((at) => expect.closeTo(at, 10)));
  });

  test('readings that hardly scatter beside the axis are their own line', () => {
    expect(scatterMeans(x, zigzag, whole, 1, 1000)).toBeNull();
    expect(
      scatterMeans(
        x,
        x.map(() => 7),
        whole,
        1,
        10,
      ),
    ).toBeNull();
  });

  test('too few readings in a span are their own line', () => {
    expect(scatterMeans(x, zigzag, whole, 0.2, 20)).toBeNull();
  });

  test('a stretch gives its own means, and its last few readings join the span before', () => {
    const parts = [
      { start: 0, end: 22 },
      { start: 22, end: 40 },
    ];
    const means = scatterMeans(x, zigzag, parts, 1, 20)!;
    expect(means.map(({ segment }) => segment)).toEqual([0, 0, 1, 1]);
  });

  test.each([
    [4500, 30],
    [3600, 30],
    [100, 1],
    [86_400, 600],
  ])('a time axis of %d s has means over %d s', (length, span) => {
    expect(spanOfMeans(length)).toBe(span);
  });
});
