import { describe, expect, test } from 'vitest';
import { powerFit } from '../../src/statistics/power-fit.ts';
import { expectNear } from './near.ts';
import { nist } from './nist.ts';

describe('statistics/power-fit', () => {
  test('DanWood: NIST certified parameters and deviations, not those of a log-log line (0.7499, 3.9172)', () => {
    const { x, y, certified } = nist('DanWood');
    const fit = powerFit(x, y);
    expectNear(fit.coefficient, certified.params[0]!, 1e-10);
    expectNear(fit.exponent, certified.params[1]!, 1e-10);
    expectNear(fit.uCoefficient, certified.sd[0]!, 1e-8);
    expectNear(fit.uExponent, certified.sd[1]!, 1e-8);
    expectNear(fit.rss, certified.rss, 1e-10);
    expectNear(fit.residualDeviation, certified.residualSd, 1e-10);
    expectNear(fit.covariance[1]![1]!, certified.sd[1]! ** 2, 1e-8);
    expect([fit.dof, fit.converged]).toEqual([certified.df, true]);
  });

  test('the covariance is the residual variance times (JᵀJ)⁻¹ at the certified parameters, its off-diagonal too', () => {
    const { x, y, certified } = nist('DanWood');
    const [coefficient, exponent] = certified.params as [number, number];
    const rows = x.map((at) => [at ** exponent, coefficient * at ** exponent * Math.log(at)] as const);
    const total = (of: (row: (typeof rows)[number]) => number) => rows.reduce((sum, row) => sum + of(row), 0);
    const [a, b, d] = [total(([u]) => u * u), total(([u, v]) => u * v), total(([, v]) => v * v)];
    const scale = certified.residualSd ** 2 / (a * d - b * b);
    const { covariance } = powerFit(x, y);
    expectNear(covariance[0]![0]!, scale * d, 1e-7);
    expectNear(covariance[0]![1]!, -scale * b, 1e-7);
    expectNear(covariance[1]![0]!, -scale * b, 1e-7);
  });

  test('the unit of x does not touch the exponent: hertz and gigahertz agree', () => {
    const gigahertz = [0.6, 1.2, 1.8, 2.4];
    const y = [10.2, 19.7, 30.4, 39.1];
    const small = powerFit(gigahertz, y);
    const large = powerFit(
      gigahertz.map((value) => value * 1e9),
      y,
    );
    expectNear(large.exponent, small.exponent, 1e-12);
    expectNear(large.uExponent, small.uExponent, 1e-10);
    expectNear(large.coefficient * 1e9 ** large.exponent, small.coefficient, 1e-10);
  });

  test('an exact law comes back; two pairs leave the uncertainty unknown', () => {
    const x = [1, 2, 3, 5];
    const fit = powerFit(
      x,
      x.map((value) => 4 * value ** -1.5),
    );
    expectNear(fit.coefficient, 4, 1e-13);
    expectNear(fit.exponent, -1.5, 1e-13);
    expect(powerFit([1, 2], [3, 6]).uExponent).toBeNaN();
  });

  test('numbers that are not above zero are refused', () => {
    expect(() => powerFit([1, 0], [1, 2])).toThrow('x[1] is 0');
    expect(() => powerFit([1, 2], [-1, 2])).toThrow('y[0] is -1');
  });
});
