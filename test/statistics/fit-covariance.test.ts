import { describe, expect, test } from 'vitest';
import { fitCovariance } from '../../src/statistics/fit-covariance.ts';
import { lineFit } from '../../src/statistics/line-fit.ts';
import { linearLeastSquares } from '../../src/statistics/linear-least-squares.ts';
import { studentQuantile } from '../../src/statistics/student-quantile.ts';
import { expectNear } from './near.ts';
import { nist } from './nist.ts';
import { autoregressive, gaussian } from './noise.ts';

describe('statistics/fit-covariance', () => {
  test('residuals that alternate count as independent: the usual covariance', () => {
    const x = Float64Array.from({ length: 200 }, (_, i) => i);
    const y = x.map((at) => 3 + 0.1 * at + (at % 2 ? 0.5 : -0.5));
    const line = lineFit(x, y);
    const { parameters, inverse } = linearLeastSquares([x.map(() => 1), x], y)!;
    const found = fitCovariance(
      y.map((value, i) => value - parameters[0]! - parameters[1]! * x[i]!),
      inverse,
    );
    expectNear(Math.sqrt(found.covariance[1]![1]!), line.uSlope, 1e-9);
    expectNear(found.residualDeviation, line.residualDeviation, 1e-9);
    expect([found.dof, found.effectiveCount]).toEqual([198, 200]);
  });

  test('slope of slow noise: the interval covers where that of independent residuals fails', () => {
    const x = Float64Array.from({ length: 600 }, (_, i) => i / 600);
    const ones = x.map(() => 1);
    const normal = gaussian(12);
    let [honest, naive] = [0, 0];
    for (let run = 0; run < 300; run++) {
      const y = autoregressive(600, 0.9, normal);
      const { parameters, inverse } = linearLeastSquares([ones, x], y)!;
      const residuals = y.map((value, i) => value - parameters[0]! - parameters[1]! * x[i]!);
      const { covariance, dof } = fitCovariance(residuals, inverse);
      if (Math.abs(parameters[1]!) <= studentQuantile(0.975, dof) * Math.sqrt(covariance[1]![1]!)) honest++;
      if (Math.abs(parameters[1]!) <= 1.96 * lineFit(x, y).uSlope) naive++;
    }
    expect(honest / 300).toBeGreaterThan(0.91);
    expect(naive / 300).toBeLessThan(0.6);
  });

  test('a known data set keeps its certified deviation (NIST Norris)', () => {
    const { x, y, certified } = nist('Norris');
    const { parameters, inverse } = linearLeastSquares([x.map(() => 1), x], y)!;
    const found = fitCovariance(
      Float64Array.from(y, (value, i) => value - parameters[0]! - parameters[1]! * x[i]!),
      inverse,
    );
    expectNear(found.residualDeviation, certified.residualSd, 1e-11);
  });
});
