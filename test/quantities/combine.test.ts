import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CURRENTS, PHASES, VOLTAGES } from '../../src/figures/checks/gum-data.ts';
import { divide, multiply, subtract, sum } from '../../src/quantities/arithmetic.ts';
import { combine, sumSorted } from '../../src/quantities/combine.ts';
import type { Quantity } from '../../src/quantities/quantity.ts';
import { degreesOfFreedom, exact, independent } from '../../src/quantities/uncertainty.ts';
import { cholesky } from '../../src/statistics/cholesky.ts';
import { studentQuantile } from '../../src/statistics/student-quantile.ts';
import { anyQuantity, correlation, expectClose, got, source, u } from './helpers.ts';

const rectangular = (halfWidth: number) => halfWidth / Math.sqrt(3);

describe('quantities/combine', () => {
  // JCGM 100:2008, 5.2.2, example: ten nominally 1 kΩ resistors in series, each u = 100 mΩ; prints 1 Ω and 0.32 Ω.
  test('ten resistors in series, calibrated by one standard or each by its own', () => {
    const resistor = (id: string) => independent(1000, 'V/A', 0.1, source(id));
    const numbers = Array.from({ length: 10 }, (_, i) => i);
    expectClose(u(sum(numbers.map(() => resistor('standard')))), 1, 1e-14);
    expectClose(u(sum(numbers.map((i) => resistor(`standard-${i}`)))), 0.316227766, 1e-9);
  });

  // JCGM 100:2008, H.1; inputs and l = 50 000 838 nm, uc = 32 nm also in the public example GUM_H1 of the GTC library (MSL New Zealand).
  test('end gauge calibration', () => {
    const standard = independent(50_000_623e-9, 'm', 25e-9, source('standard', 18));
    const d = {
      value: 215e-9,
      unit: 'm',
      parts: [
        { source: source('d/comparator-random', 5), share: 3.9e-9 },
        { source: source('d/comparator-systematic', 8), share: 6.7e-9 },
        { source: source('d/repeated', 24), share: 5.8e-9 },
      ],
    };
    const expansion = independent(11.5e-6, '1/K', rectangular(2e-6), source('expansion'));
    const expansionDifference = independent(0, '1/K', rectangular(1e-6), source('expansion-difference', 50));
    const deviation = combine(-0.1, 'K', [
      { quantity: independent(-0.1, 'K', 0.2, source('bed')), sensitivity: 1 },
      { quantity: independent(0, 'K', 0.5 / Math.sqrt(2), source('cycling')), sensitivity: 1 },
    ]);
    const temperatureDifference = independent(0, 'K', rectangular(0.05), source('temperature-difference', 2));
    const byExpansion = got(multiply(standard, got(multiply(expansionDifference, deviation))));
    const byTemperature = got(multiply(standard, got(multiply(expansion, temperatureDifference))));
    const length = got(subtract(got(subtract(got(sum([standard, d])), byExpansion)), byTemperature));

    expect(Math.round(length.value * 1e9)).toBe(50_000_838);
    expectClose(u(d), 9.68194e-9, 1e-6);
    expectClose(degreesOfFreedom(d)!, 25.447, 1e-4);
    expectClose(u(deviation), 0.406202, 1e-6);
    expectClose(u(byExpansion), 2.88679e-9, 1e-4);
    expectClose(u(byTemperature), 16.599e-9, 1e-4);
    expectClose(u(length), 31.6639e-9, 1e-5);
    expectClose(degreesOfFreedom(length)!, 16.752, 1e-4);
    // U99 = 93 nm from the rounded uc = 32 nm and 16 degrees of freedom.
    expectClose(studentQuantile(0.995, Math.floor(degreesOfFreedom(length)!)) * 32, 93.465, 1e-5);
  });

  /** Mean of n observations; every row of simultaneous observations is one source, which carries the covariances exactly. */
  function observed(values: readonly number[], unit: string): Quantity {
    const n = values.length;
    const mean = values.reduce((total, value) => total + value, 0) / n;
    const parts = values.map((value, row) => ({
      source: source(`row/${row}`, n - 1),
      share: (value - mean) / Math.sqrt(n * (n - 1)),
    }));
    return { value: mean, unit, parts };
  }

  function impedance(volt: Quantity, ampere: Quantity, angle: Quantity): { r: Quantity; x: Quantity; z: Quantity } {
    const z = got(divide(volt, ampere));
    const cosine = combine(Math.cos(angle.value), '1', [{ quantity: angle, sensitivity: -Math.sin(angle.value) }]);
    const sine = combine(Math.sin(angle.value), '1', [{ quantity: angle, sensitivity: Math.cos(angle.value) }]);
    return { r: got(multiply(z, cosine)), x: got(multiply(z, sine)), z };
  }

  // JCGM 100:2008, H.2, approach 1; it prints R 127.732(71), X 219.847(296), Z 254.260(236), r −0.588, −0.485, 0.993 (from memory).
  test('resistance and reactance from correlated observations', () => {
    const volt = observed(VOLTAGES, 'V');
    const ampere = observed(CURRENTS, 'A');
    const angle = observed(PHASES, '1');
    expectClose(correlation(volt, ampere), -0.355311, 1e-5);
    expectClose(correlation(volt, angle), 0.857624, 1e-5);
    expectClose(correlation(ampere, angle), -0.645111, 1e-5);
    const { r, x, z } = impedance(volt, ampere, angle);
    expect(r.unit).toBe('V/A');
    expectClose(r.value, 127.73217, 1e-7);
    expectClose(x.value, 219.84651, 1e-7);
    expectClose(z.value, 254.2597, 1e-7);
    expectClose(u(r), 0.0710714, 1e-5);
    expectClose(u(x), 0.2955817, 1e-5);
    expectClose(u(z), 0.2363361, 1e-5);
    expectClose(correlation(r, x), -0.58843, 1e-5);
    expectClose(correlation(r, z), -0.485259, 1e-5);
    expectClose(correlation(x, z), 0.992512, 1e-5);
    expectClose(degreesOfFreedom(r)!, 4, 1e-12);
  });

  // The rounded inputs of JCGM 100:2008, Table H.2; results as in the public example GUM_H2 of the GTC library: 127.732(70), 219.85(30), 254.26(24).
  test('the same from means, uncertainties and correlations alone', () => {
    const us = [3.2e-3, 9.5e-6, 7.5e-4];
    const rs = [
      [1, -0.36, 0.86],
      [-0.36, 1, -0.65],
      [0.86, -0.65, 1],
    ];
    const factor = cholesky(rs.map((row, i) => row.map((r, j) => r * us[i]! * us[j]!)));
    const input = (value: number, unit: string, row: number): Quantity => ({
      value,
      unit,
      parts: factor[row]!.map((share, k) => ({ source: source(`inputs/${k + 1}`), share })).filter(({ share }) => share !== 0),
    });
    const { r, x, z } = impedance(input(4.999, 'V', 0), input(19.661e-3, 'A', 1), input(1.04446, '1', 2));
    expectClose(u(r), 0.0699787, 1e-5);
    expectClose(u(x), 0.2957168, 1e-5);
    expectClose(u(z), 0.236603, 1e-5);
  });

  test('what ignoring the correlation would give: other numbers', () => {
    const apart = (quantity: Quantity, id: string) => independent(quantity.value, quantity.unit, u(quantity), source(id));
    const { r, x, z } = impedance(
      apart(observed(VOLTAGES, 'V'), 'v'),
      apart(observed(CURRENTS, 'A'), 'i'),
      apart(observed(PHASES, '1'), 'phi'),
    );
    expectClose(u(r), 0.194544, 1e-5);
    expectClose(u(x), 0.200909, 1e-5);
    expectClose(u(z), 0.204076, 1e-5);
  });

  // JCGM 100:2008, H.3: y1 = −0.1712(29) °C, y2 = 0.00218(67), r = −0.930; b(30 °C) = −0.1494(41) °C; more digits by the GTC example GUM_H3.
  test("a thermometer's correction at 30 °C from a line and its covariance", () => {
    const [u1, u2, r] = [0.0028776, 0.00066793877, -0.9304296];
    const factor = cholesky([
      [u1 * u1, r * u1 * u2],
      [r * u1 * u2, u2 * u2],
    ]);
    const parts = (row: number) =>
      factor[row]!.map((share, k) => ({ source: source(`line/${k + 1}`, 9), share })).filter(({ share }) => share !== 0);
    const intercept = { value: -0.17120379013, unit: 'K', parts: parts(0) };
    const slope = { value: 0.00218269774, unit: '1', parts: parts(1) };
    const correction = combine(intercept.value + 10 * slope.value, 'K', [
      { quantity: intercept, sensitivity: 1 },
      { quantity: slope, sensitivity: 10 },
    ]);
    expectClose(correction.value, -0.14937681, 1e-7);
    expectClose(u(correction), 0.0041386, 1e-5);
    expectClose(degreesOfFreedom(correction)!, 9, 1e-12);
  });

  test('the order of the operands does not reach the last bit', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(anyQuantity(), fc.double({ min: -9, max: 9, noNaN: true })), { minLength: 2, maxLength: 8 }),
        (drawn) => {
          const terms = drawn.map(([quantity, sensitivity]) => ({ quantity, sensitivity }));
          expect(combine(0, 'W', [...terms].reverse()).parts).toEqual(combine(0, 'W', terms).parts);
          expect(u(combine(0, 'W', [...terms].reverse()))).toBe(u(combine(0, 'W', terms)));
        },
      ),
    );
  });

  test('parts come sorted by source, one each, none of zero', () => {
    const a = independent(1, 'W', 1, source('b'));
    const b = independent(1, 'W', 2, source('a'));
    const combined = combine(0, 'W', [
      { quantity: a, sensitivity: 1 },
      { quantity: b, sensitivity: 3 },
      { quantity: a, sensitivity: 1 },
    ]);
    expect(combined.parts!.map(({ source: { id }, share }) => [id, share])).toEqual([
      ['a', 6],
      ['b', 2],
    ]);
    expect(combine(0, 'W', [{ quantity: a, sensitivity: 0 }]).parts).toEqual([]);
  });

  test('unknown and repeatability only spread; the step grows with the sensitivity', () => {
    const known = { ...independent(1, 'W', 1, source('a')), step: 0.1 };
    const other = { value: 1, unit: 'W', parts: null, repeatabilityOnly: true, step: 0.01 };
    const both = [
      { quantity: known, sensitivity: -2 },
      { quantity: other, sensitivity: 30 },
    ];
    expect(combine(0, 'W', both)).toEqual({ value: 0, unit: 'W', parts: null, repeatabilityOnly: true, step: 0.3 });
    expect(combine(0, 'W', [{ quantity: exact(1, 'W'), sensitivity: 1 }])).toEqual({ value: 0, unit: 'W', parts: [] });
  });

  test('a sum in ascending order does not mind the order it came in', () => {
    expect(sumSorted([1e16, 1, -1e16, 1])).toBe(sumSorted([1, 1, 1e16, -1e16]));
    expect(sumSorted([])).toBe(0);
  });
});
