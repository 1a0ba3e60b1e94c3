import { describe, expect, test } from 'vitest';
import type { TraceReadings } from '../../../src/plots/drawing/lines/trace-run.ts';
import { readingsWithin } from '../../../src/plots/trace/window.ts';

function readings(t: readonly number[], y: readonly number[], more: Partial<TraceReadings> = {}): TraceReadings {
  return {
    t: Float64Array.from(t),
    y: Float64Array.from(y),
    segments: [{ start: 0, end: t.length }],
    count: t.length,
    means: null,
    ...more,
  };
}
const points = ({ t, y }: TraceReadings) => [...t].map((time, i) => [time, y[i]]);

describe('plots/trace/window', () => {
  const ramp = readings([0, 10, 20, 30, 40], [0, 1, 2, 3, 4]);

  test('readings from end to end, both included, counted from the origin', () => {
    expect(points(readingsWithin(ramp, [10, 30], 0))).toEqual([
      [10, 1],
      [20, 2],
      [30, 3],
    ]);
    expect(points(readingsWithin(ramp, [-5, 15], 15))).toEqual([
      [10, 1],
      [20, 2],
      [30, 3],
    ]);
    expect(readingsWithin(ramp, [10, 30], 0)).toMatchObject({ count: 3, segments: [{ start: 0, end: 3 }] });
  });

  test('nothing is invented between readings that differ', () => {
    expect(points(readingsWithin(ramp, [12, 18], 0))).toEqual([]);
    expect(readingsWithin(ramp, [100, 200], 0)).toMatchObject({ count: 0, segments: [] });
  });

  test('what repeats on both sides of an end was read there too: thinning left it out', () => {
    const flat = readings([0, 100, 200, 300], [5, 5, 5, 7]);
    expect(points(readingsWithin(flat, [50, 150], 0))).toEqual([
      [50, 5],
      [100, 5],
      [150, 5],
    ]);
    expect(points(readingsWithin(flat, [120, 180], 0))).toEqual([
      [120, 5],
      [180, 5],
    ]);
    expect(points(readingsWithin(flat, [250, 300], 0))).toEqual([[300, 7]]);
  });

  test('stretches stay apart, one that lies outside is gone, and a gap is not bridged', () => {
    const segments = [
      { start: 0, end: 2 },
      { start: 2, end: 4 },
      { start: 4, end: 5 },
    ];
    const broken = readings([0, 10, 50, 60, 90], [1, 1, 1, 2, 3], { segments });
    const within = readingsWithin(broken, [5, 70], 0);
    expect(points(within)).toEqual([
      [5, 1],
      [10, 1],
      [50, 1],
      [60, 2],
    ]);
    expect(within.segments).toEqual([
      { start: 0, end: 2 },
      { start: 2, end: 4 },
    ]);
    expect(points(readingsWithin(broken, [20, 40], 0))).toEqual([]);
  });

  test('means that came along are those inside', () => {
    const means = { span: 10, scatter: 1, means: [5, 15, 25].map((x) => ({ x, y: x, segment: 0 })) };
    expect(readingsWithin({ ...ramp, means }, [10, 20], 0).means).toMatchObject({ span: 10, means: [{ x: 15 }] });
    expect(readingsWithin({ ...ramp, means: 'all' }, [10, 20], 0).means).toBe('all');
  });
});
