import { describe, expect, test } from 'vitest';
import type { QuantityKind } from '../../../src/intake/log.ts';
import { extent, valueScale } from '../../../src/plots/drawing/value-scale.ts';

const of = (kind: QuantityKind, values: readonly number[], limit?: number, rise = false) =>
  valueScale({ kind, rise, lines: [{ label: 'a', y: Float64Array.from(values), ...(limit === undefined ? {} : { limit }) }] }, 6);

describe('plots/drawing/value-scale', () => {
  test('power begins at zero, a temperature does not, a rise does', () => {
    expect(of('power', [5, 7]).from).toBe(0);
    expect(of('temperature', [35, 80]).from).toBe(30);
    expect(of('temperature', [12, 50], undefined, true).from).toBe(0);
  });

  test('a clock that falls below half begins at zero, one that hardly moves does not', () => {
    expect(of('clock', [0.6, 2.4]).from).toBe(0);
    expect(of('clock', [2.2, 2.4]).from).toBeGreaterThan(1);
  });

  test('noise does not fill the axis', () => {
    const { from, to } = of('temperature', [40, 40.4]);
    expect(to - from).toBeGreaterThanOrEqual(8);
  });

  test('a near limit is inside with room for its name, a far one is not', () => {
    expect(of('temperature', [35, 70], 80).to).toBe(90);
    expect(of('temperature', [35, 45], 105).to).toBeLessThan(105);
  });

  test('a flag is down or up', () => {
    expect(of('throttle_flag', [0, 0])).toMatchObject({ from: 0, to: 1, ticks: [0, 1] });
  });

  test('the extent of all lines', () => {
    expect(extent([{ y: Float64Array.of(3, 1) }, { y: Float64Array.of(9) }])).toEqual([1, 9]);
  });
});
