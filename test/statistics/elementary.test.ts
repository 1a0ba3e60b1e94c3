import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exp, log, log1p } from '../../src/statistics/elementary.ts';

/** Fixed point with so many binary places: the truth, by exact integers, to 60 decimals and more. */
const PLACES = 260n;
const ONE = 1n << PLACES;

const bits = new DataView(new ArrayBuffer(8));

/** A double as it is, times 2^260; those below 2^-200 lose digits. */
function fixed(x: number): bigint {
  bits.setFloat64(0, Math.abs(x));
  const raw = bits.getBigUint64(0);
  const exponent = (raw >> 52n) - 1075n + PLACES;
  const mantissa = (raw & 0xfffffffffffffn) | 0x10000000000000n;
  const value = exponent >= 0n ? mantissa << exponent : mantissa >> -exponent;
  return x < 0 ? -value : value;
}

function times(a: bigint, b: bigint): bigint {
  return (a * b) >> PLACES;
}

/** e^x by its power series, of x divided by 2^20 and then squared twenty times. */
function trueExp(x: bigint): bigint {
  const small = x >> 20n;
  let [term, sum] = [ONE, ONE];
  for (let n = 1n; term !== 0n && term !== -1n; n += 1n) {
    term = times(term, small) / n;
    sum += term;
  }
  for (let k = 0; k < 20; k += 1) sum = times(sum, sum);
  return sum;
}

/** ln x by Newton's method on e^y = x, from a double's worth of digits. */
function trueLog(x: bigint, near: number): bigint {
  let y = fixed(near);
  for (let k = 0; k < 4; k += 1) y += (x << PLACES) / trueExp(y) - ONE;
  return y;
}

/** By how many units in its last place a double is off the truth. */
function ulpsOff(got: number, truth: bigint): number {
  bits.setFloat64(0, Math.abs(got));
  bits.setBigUint64(0, bits.getBigUint64(0) + 1n);
  const unit = fixed(bits.getFloat64(0)) - fixed(Math.abs(got));
  return Number(((fixed(got) - truth) * 1000n) / unit) / 1000;
}

const among = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('statistics/elementary, against exact integers', () => {
  test('exp is within 1 ulp', () => {
    fc.assert(
      fc.property(fc.oneof(among(-1, 1), among(-60, 60)), (x) => {
        fc.pre(Math.abs(x) > 1e-30);
        expect(Math.abs(ulpsOff(exp(x), trueExp(fixed(x)))), `exp(${x})`).toBeLessThan(1);
      }),
      { numRuns: 2000, seed: 1 },
    );
  });

  test('log is within 1 ulp', () => {
    fc.assert(
      fc.property(fc.oneof(among(0.5, 2), among(1e-20, 1e20)), (x) => {
        fc.pre(x !== 1);
        expect(Math.abs(ulpsOff(log(x), trueLog(fixed(x), Math.log(x)))), `log(${x})`).toBeLessThan(1);
      }),
      { numRuns: 1000, seed: 2 },
    );
  });

  test('log1p is within 3 ulp, near zero too', () => {
    fc.assert(
      fc.property(fc.oneof(among(-0.9, 10), among(-1e-6, 1e-6)), (x) => {
        fc.pre(Math.abs(x) > 1e-30);
        expect(Math.abs(ulpsOff(log1p(x), trueLog(ONE + fixed(x), Math.log1p(x)))), `log1p(${x})`).toBeLessThan(3);
      }),
      { numRuns: 1000, seed: 3 },
    );
  });
});

describe('statistics/elementary', () => {
  /** M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, Table 1.1 (from memory). */
  test('has the constants of the handbook', () => {
    expect(exp(1)).toBeCloseTo(Math.E, 15);
    expect(exp(-1)).toBe(0.36787944117144233);
    expect(log(10)).toBe(Math.LN10);
    expect(log(2)).toBe(Math.LN2);
    expect(log(Math.PI)).toBeCloseTo(1.1447298858494002, 15);
  });

  test('ends where doubles end', () => {
    expect([exp(0), exp(-0), exp(709.8), exp(-746), exp(Number.NEGATIVE_INFINITY), exp(Number.POSITIVE_INFINITY)]).toEqual([
      1,
      1,
      Infinity,
      0,
      0,
      Infinity,
    ]);
    expect(exp(-745)).toBe(5e-324);
    expect(exp(709.78)).toBe(1.7928227943945155e308);
    expect([log(0), log(-0), log(1), log(Number.POSITIVE_INFINITY)]).toEqual([-Infinity, -Infinity, 0, Infinity]);
    expect(log(5e-324)).toBe(-744.4400719213812);
    expect(log(Number.MAX_VALUE)).toBe(709.782712893384);
    expect([exp(Number.NaN), log(Number.NaN), log(-1), log1p(-2), log1p(Number.NaN)]).toEqual([NaN, NaN, NaN, NaN, NaN]);
    expect([log1p(0), log1p(-0), log1p(-1), log1p(1e-300), log1p(Number.POSITIVE_INFINITY)]).toEqual([
      0,
      -0,
      -Infinity,
      1e-300,
      Infinity,
    ]);
    expect(log1p(Number.MAX_VALUE)).toBe(709.782712893384);
  });
});
