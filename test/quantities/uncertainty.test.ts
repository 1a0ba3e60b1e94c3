import { describe, expect, test } from 'vitest';
import { multiply } from '../../src/quantities/arithmetic.ts';
import type { Quantity, Source } from '../../src/quantities/quantity.ts';
import {
  degreesOfFreedom,
  exact,
  expandedUncertainty,
  independent,
  interval95,
  standardUncertainty,
  unknown,
} from '../../src/quantities/uncertainty.ts';
import { expectClose, got, source } from './helpers.ts';

describe('quantities/uncertainty', () => {
  // JCGM 100:2008, G.4.1, example: relative uncertainties 0.25, 0.57 and 0.82 % from 10, 5 and 15 observations; prints 1.03 %, 19.0, 2.09, 2.2 %.
  test('a product of three estimates', () => {
    const factors = [
      independent(1, '1', 0.0025, source('x1', 9)),
      independent(1, '1', 0.0057, source('x2', 4)),
      independent(1, '1', 0.0082, source('x3', 14)),
    ];
    const product = factors.reduce((all, factor) => got(multiply(all, factor)));
    expectClose(standardUncertainty(product)!, 0.0102947, 1e-5);
    expectClose(degreesOfFreedom(product)!, 18.9987, 1e-5);
    expectClose(expandedUncertainty(product)!, 0.021547, 1e-4);
    const [low, high] = interval95(product)!;
    expectClose(high - 1, 0.021547, 1e-4);
    expectClose(1 - low, 0.021547, 1e-4);
  });

  // Normal quantile 1.959964: JCGM 100:2008, Table G.1, prints 1.960.
  test('stated limits have infinitely many degrees of freedom', () => {
    const stated = independent(22.4, '°C', 0.5, source('room'));
    expect(degreesOfFreedom(stated)).toBeNull();
    expectClose(expandedUncertainty(stated)!, 0.98, 1e-4);
  });

  // JCGM 100:2008, G.1.3 (from memory): limits taken as rectangular hold 95 % within 1.65 u, that is 0.95 of the limit (4.3.7).
  test('limits alone: 0.95 of them, and the shares of one source add before', () => {
    const limits: Source = { id: 'limits', title: '', dof: null, distribution: 'rectangular' };
    const half = independent(22.4, '°C', 0.5 / Math.sqrt(3), limits);
    expectClose(expandedUncertainty(half)!, 0.475, 1e-12);
    expectClose(
      expandedUncertainty(got(multiply(exact(3, '1'), independent(1, 'W', 0.1, limits))))!,
      3 * 0.95 * 0.1 * Math.sqrt(3),
      1e-12,
    );
  });

  // Two equal rectangular errors have a triangular distribution: 95 % within 2a(1 − √0.05), in closed form.
  test('limits beside limits and beside scatter of few readings', () => {
    const limits = (id: string): Source => ({ id, title: '', dof: null, distribution: 'rectangular' });
    const u = 1 / Math.sqrt(3);
    const two: Quantity = {
      value: 0,
      unit: 'K',
      parts: [
        { source: limits('a'), share: u },
        { source: limits('b'), share: -u },
      ],
    };
    expectClose(expandedUncertainty(two)!, 2 * (1 - Math.sqrt(0.05)), 0.009);
    const beside: Quantity = {
      value: 0,
      unit: 'K',
      parts: [
        { source: limits('a'), share: u },
        { source: source('s', 4), share: 1 },
      ],
    };
    expectClose(expandedUncertainty(beside)!, 2.9647276172365995, 1e-11);
  });

  // Two unequal ones, of half widths a > b, have a trapezoidal distribution: 95 % within 0.95 a while b ≤ 0.05 a, else within
  // a + b − √(0.2 a b), in closed form.
  test('of two limits the larger one keeps its distribution, whichever it is and whatever its sign', () => {
    const limits = (id: string): Source => ({ id, title: '', dof: null, distribution: 'rectangular' });
    for (let percent = 5; percent <= 100; percent += 5) {
      const b = percent / 100;
      const halves = [
        { source: limits('a'), share: -1 / Math.sqrt(3) },
        { source: limits('b'), share: b / Math.sqrt(3) },
      ];
      const exactly = 1 + b - Math.sqrt(0.2 * b);
      for (const parts of [halves, halves.toReversed()]) {
        const ours = expandedUncertainty({ value: 0, unit: 'K', parts })!;
        expect(ours / exactly, `b is ${b}`).toBeGreaterThan(1 - 0.014);
        expect(ours / exactly, `b is ${b}`).toBeLessThan(1 + 0.009);
      }
    }
  });

  // t at 2 degrees of freedom, 95 %: JCGM 100:2008, Table G.2, prints 4.30; Miller & Miller, 3rd ed., p. 54: mean 37.8, s 0.964365, n 3, ± 2.396.
  test('three observations', () => {
    const mean = independent(37.8, 'points', 0.964365 / Math.sqrt(3), source('repeats', 2));
    const [low, high] = interval95(mean)!;
    expectClose(low, 35.40438, 1e-6);
    expectClose(high, 40.19562, 1e-6);
  });

  test('columns of one covariance are one estimate, not independent ones', () => {
    const estimate = (ids: readonly string[]): Quantity => ({
      value: 1,
      unit: 'K',
      parts: ids.map((id) => ({ source: source(id, 9), share: 0.1 })),
    });
    expectClose(degreesOfFreedom(estimate(['run:a/line/1', 'run:a/line/2']))!, 9, 1e-12);
    expectClose(degreesOfFreedom(estimate(['run:a/line/1', 'run:b/line/1']))!, 18, 1e-12);
    expectClose(degreesOfFreedom(estimate(['run:a/x/sampling', 'run:a/y/sampling']))!, 18, 1e-12);
  });

  test('exact and unknown', () => {
    expect(standardUncertainty(exact(3, 'W'))).toBe(0);
    expect(degreesOfFreedom(exact(3, 'W'))).toBeNull();
    expect(interval95(exact(3, 'W'))).toEqual([3, 3]);
    expect(standardUncertainty(unknown(3, 'W'))).toBeNull();
    expect(degreesOfFreedom(unknown(3, 'W'))).toBeNull();
    expect(expandedUncertainty(unknown(3, 'W'))).toBeNull();
    expect(interval95(unknown(3, 'W'))).toBeNull();
  });

  test('an uncertainty of zero is exactness, one below zero a fault', () => {
    expect(independent(3, 'W', 0, source('a'))).toEqual(exact(3, 'W'));
    expect(() => independent(3, 'W', -1, source('a'))).toThrow('0 or above and finite, got -1');
    expect(() => independent(3, 'W', Number.NaN, source('a'))).toThrow(RangeError);
    expect(() => independent(3, 'W', Number.POSITIVE_INFINITY, source('a'))).toThrow(RangeError);
  });
});
