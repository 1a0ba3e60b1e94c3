import { describe, expect, test } from 'vitest';
import { leastSquares, type Model } from '../../src/statistics/least-squares.ts';
import { expectAllNear, expectNear } from './near.ts';
import { nist } from './nist.ts';

const rise: Model = (x, [b1, b2]) => b1! * (1 - Math.exp(-b2! * x));
const MODELS: Record<string, Model> = {
  Misra1a: rise,
  BoxBOD: rise,
  DanWood: (x, [b1, b2]) => b1! * x ** b2!,
  Lanczos3: (x, [b1, b2, b3, b4, b5, b6]) => b1! * Math.exp(-b2! * x) + b3! * Math.exp(-b4! * x) + b5! * Math.exp(-b6! * x),
  Misra1b: (x, [b1, b2]) => b1! * (1 - (1 + (b2! * x) / 2) ** -2),
  Chwirut2: (x, [b1, b2, b3]) => Math.exp(-b1! * x) / (b2! + b3! * x),
};
const RUNS = Object.keys(MODELS).flatMap((name) => [
  [name, 1],
  [name, 2],
]) as [string, 1 | 2][];

describe('statistics/least-squares', () => {
  // NIST Statistical Reference Datasets, nonlinear regression; start 1 is the far one. Certified to eleven digits.
  test.each(RUNS)('%s from start %i: eight certified digits of parameters and deviations', (name, start) => {
    const { x, y, starts, certified } = nist(name);
    const fit = leastSquares({ model: MODELS[name]!, start: starts[start - 1]!, x, y });
    expectAllNear(fit.parameters, certified.params, 1e-8);
    expectAllNear(
      fit.covariance.map((row, k) => Math.sqrt(row[k]!)),
      certified.sd,
      1e-8,
    );
    expectNear(fit.rss, certified.rss, 1e-9);
    expectNear(fit.residualDeviation, certified.residualSd, 1e-9);
    expect([fit.dof, fit.converged]).toEqual([certified.df, true]);
  });

  test('given derivatives do as well as numeric ones', () => {
    const { x, y, starts, certified } = nist('BoxBOD');
    const jacobian = (at: number, [b1, b2]: readonly number[]) => [1 - Math.exp(-b2! * at), b1! * at * Math.exp(-b2! * at)];
    const fit = leastSquares({ model: rise, jacobian, start: starts[0]!, x, y });
    expectAllNear(fit.parameters, certified.params, 1e-8);
  });

  // τ = 1/b2 of y = b1(1 − e^(−x/τ)): the reciprocals of the certified b2.
  test.each([
    ['Misra1a', 1817.66483527],
    ['BoxBOD', 1.82736019853],
  ])('%s read as a step response has its time constant', (name, timeConstant) => {
    const { x, y, starts } = nist(name);
    expectNear(1 / leastSquares({ model: rise, start: starts[1]!, x, y }).parameters[1]!, timeConstant, 1e-8);
  });

  test('parameters that the data cannot tell apart have no covariance', () => {
    const fit = leastSquares({ model: (x, [a, b]) => (a! + b!) * x, start: [1, 1], x: [1, 2, 3], y: [2, 4.1, 5.9] });
    expect(fit.covariance[0]![0]).toBeNaN();
    expectNear(fit.parameters[0]! + fit.parameters[1]!, 27.9 / 14, 1e-8);
  });

  test('as many pairs as parameters: exact, uncertainty unknown', () => {
    const fit = leastSquares({ model: rise, start: [5, 1], x: [1, 2], y: [3, 4] });
    expect([fit.dof, fit.converged]).toEqual([0, true]);
    expectAllNear(fit.parameters, [4.5, Math.log(3)], 1e-10);
    expect(fit.residualDeviation).toBeNaN();
  });

  test('a start where the model is not finite, or too few pairs, is refused', () => {
    expect(() => leastSquares({ model: (x, [a]) => Math.log(a! * x), start: [-1], x: [1], y: [1] })).toThrow(
      'not finite at the start -1',
    );
    expect(() => leastSquares({ model: rise, start: [1, 1], x: [1], y: [1] })).toThrow('found 1 pairs, expected at least 2');
  });
});
