import fc from 'fast-check';
import { expect, test } from 'vitest';
import { movingMean, smoothingSpan } from '../../src/figures/smooth.ts';
import { apart, every } from './build.ts';

test('is the mean of the readings within half a span to each side, by the plain definition', () => {
  const steps = fc.array(fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: -100, max: 100 })), {
    minLength: 1,
    maxLength: 60,
  });
  fc.assert(
    fc.property(steps, fc.integer({ min: 1, max: 100 }), (rows, span) => {
      let now = 0;
      const t = Float64Array.from(rows, ([step]) => {
        now += step;
        return now;
      });
      const y = Float64Array.from(rows, ([, value]) => value);
      const smooth = movingMean(t, y, span);
      t.forEach((middle, i) => {
        const near = y.filter((_, k) => Math.abs(t[k]! - middle) <= span / 2);
        const mean = near.reduce((sum, value) => sum + value, 0) / near.length;
        expect(Math.abs(smooth[i]! - mean)).toBeLessThan(1e-9);
      });
    }),
  );
});

test('an exponential keeps its shape: smoothing scales it by sinh(x)/x', () => {
  const t = every(1, 3600);
  const y = t.map((s) => Math.exp(-s / 600));
  const x = 30.5 / 600;
  expect(apart(movingMean(t, y, 60)[1800]! / y[1800]!, Math.sinh(x) / x)).toBeLessThan(1e-5);
});

test('the span is a minute or five readings, at most a third of the window', () => {
  expect([smoothingSpan(1, 900), smoothingSpan(30, 900), smoothingSpan(120, 900)]).toEqual([60, 150, 300]);
});
