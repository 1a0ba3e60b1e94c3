import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { logScale, niceScale, pixelOf, timeScale } from '../../../src/plots/drawing/ticks.ts';

const number = fc.double({ min: -1e4, max: 1e4, noNaN: true });

describe('plots/drawing/ticks', () => {
  test('a value axis holds its data, begins and ends on ticks at even distances of 1, 2 or 5', () => {
    fc.assert(
      fc.property(number, fc.double({ min: 0.1, max: 1e6, noNaN: true }), fc.integer({ min: 2, max: 10 }), (low, span, count) => {
        const { from, to, ticks } = niceScale(low, low + span, count);
        const slack = 1e-6 * Math.max(span, Math.abs(low));
        expect(from).toBeLessThanOrEqual(low + slack);
        expect(to).toBeGreaterThanOrEqual(low + span - slack);
        expect(ticks.length).toBeGreaterThanOrEqual(2);
        expect(ticks.length).toBeLessThanOrEqual(2 * count + 2);
        const step = ticks[1]! - ticks[0]!;
        expect([1, 2, 5]).toContain(Number((step / 10 ** Math.floor(Math.log10(step) + 1e-9)).toPrecision(4)));
      }),
    );
  });

  test('typical axes', () => {
    expect(niceScale(33, 86, 6)).toEqual({ from: 30, to: 90, ticks: [30, 40, 50, 60, 70, 80, 90], decimals: 0 });
    expect(niceScale(0, 2.6, 6)).toMatchObject({ from: 0, to: 3, ticks: [0, 0.5, 1, 1.5, 2, 2.5, 3], decimals: 1 });
    expect(niceScale(5, 5, 4).ticks.length).toBeGreaterThan(1);
  });

  test('time ticks stand on minutes that people count in, inside the axis', () => {
    expect(timeScale(-5, 65, 8)).toEqual({ from: -5, to: 65, ticks: [0, 10, 20, 30, 40, 50, 60], decimals: 0 });
    expect(timeScale(0, 90, 4).ticks).toEqual([0, 30, 60, 90]);
    expect(timeScale(0, 300, 4).ticks).toEqual([0, 120, 240]);
  });

  test('an axis that all but reaches a tick reaches it', () => {
    expect(timeScale(0, 59.98, 8)).toMatchObject({ from: 0, to: 60, ticks: [0, 10, 20, 30, 40, 50, 60] });
  });

  test('a log of one instant has an axis', () => {
    const { from, to } = timeScale(0, 0, 8);
    expect(to).toBeGreaterThan(from);
  });

  test('pixels count from the top', () => {
    const scale = niceScale(0, 10, 5);
    expect(pixelOf(10, scale, 200)).toBe(0);
    expect(pixelOf(0, scale, 200)).toBe(200);
    expect(pixelOf(5, scale, 200)).toBe(100);
  });

  test('a logarithmic axis of near ends has even steps, one of far ends round numbers of the powers of ten', () => {
    expect(logScale(0.98, 1.31, 7)).toEqual({
      from: 0.98,
      to: 1.31,
      ticks: [1, 1.05, 1.1, 1.15, 1.2, 1.25, 1.3],
      decimals: 2,
      log: true,
    });
    expect(logScale(0.4, 50, 6)).toMatchObject({ ticks: [0.5, 1, 2, 5, 10, 20, 50], ragged: true });
    expect(logScale(0.03, 4000, 5)).toMatchObject({ ticks: [0.1, 1, 10, 100, 1000] });
    expect(logScale(1e-9, 1e9, 4).ticks).toEqual([1e-5, 1, 1e5]);
  });

  test('a logarithmic axis keeps its ends, and has ticks inside them, not too many', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
        fc.double({ min: 1.01, max: 1e6, noNaN: true }),
        fc.integer({ min: 3, max: 9 }),
        (low, factor, count) => {
          const { from, to, ticks } = logScale(low, low * factor, count);
          expect([from, to]).toEqual([low, low * factor]);
          expect(ticks.length).toBeLessThanOrEqual(2 * count + 2);
          expect(ticks.length).toBeGreaterThanOrEqual(1);
          for (const tick of ticks) expect(tick >= low * (1 - 1e-6) && tick <= low * factor * (1 + 1e-6)).toBe(true);
        },
      ),
    );
  });
});
