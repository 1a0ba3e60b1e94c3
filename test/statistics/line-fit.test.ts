import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { CORRECTIONS, CURRENTS, PHASES, READINGS, VOLTAGES } from '../../src/figures/checks/gum-data.ts';
import { lineFit } from '../../src/statistics/line-fit.ts';
import { expectNear } from './near.ts';
import { nist } from './nist.ts';

describe('statistics/line-fit', () => {
  test('Norris: NIST certified estimates, deviations, R²', () => {
    const { x, y, certified } = nist('Norris');
    const fit = lineFit(x, y);
    expectNear(fit.intercept, certified.params[0]!, 1e-12);
    expectNear(fit.slope, certified.params[1]!, 1e-14);
    expectNear(fit.uIntercept, certified.sd[0]!, 1e-12);
    expectNear(fit.uSlope, certified.sd[1]!, 1e-12);
    expectNear(fit.residualDeviation, certified.residualSd, 1e-12);
    expectNear(fit.rss, certified.rss, 1e-12);
    expectNear(fit.rSquared, certified.rSquared, 1e-14);
    expect(fit.dof).toBe(certified.df);
  });

  // JCGM 100:2008, H.3: calibration of a thermometer; digits from the public repository MSLNZ/GTC, `examples/GUM_H3.py`.
  test('GUM H.3: intercept, slope, their correlation, and the correction at 30 °C', () => {
    const fit = lineFit(
      READINGS.map((reading) => reading - 20),
      CORRECTIONS,
    );
    expectNear(fit.intercept, -0.17120379013, 1e-10);
    expectNear(fit.uIntercept, 0.0028776, 1e-6);
    expectNear(fit.slope, 0.00218269774, 1e-8);
    expectNear(fit.uSlope, 0.00066793877, 1e-7);
    expectNear(fit.correlation, -0.9304296, 1e-7);
    expectNear(fit.residualDeviation, 0.00349756, 1e-5);
    expectNear(fit.rss, 1.100965831e-4, 1e-9);
    expectNear(fit.covariance, fit.correlation * fit.uIntercept * fit.uSlope, 1e-12);
    expectNear(fit.intercept + 10 * fit.slope, -0.14937681, 1e-7);
    expectNear(Math.sqrt(fit.uIntercept ** 2 + 100 * fit.uSlope ** 2 + 20 * fit.covariance), 0.0041386, 1e-5);
  });

  // JCGM 100:2008, H.2, table H.2: correlation coefficients of voltage, current and phase.
  test('GUM H.2: R² is the square of the correlation coefficient', () => {
    expectNear(Math.sqrt(lineFit(VOLTAGES, CURRENTS).rSquared), 0.355311, 2e-6);
    expectNear(Math.sqrt(lineFit(VOLTAGES, PHASES).rSquared), 0.857624, 1e-6);
    expectNear(Math.sqrt(lineFit(CURRENTS, PHASES).rSquared), 0.645111, 1e-6);
  });

  // Anscombe, The American Statistician 27, 1973; data of the package vega-datasets; results of NumPy's polyfit on those data.
  test.each([
    ['I', 0.5002727273, 2.997545455, 0.6661603281],
    ['II', 0.5, 3.000909091, 0.6662420337],
    ['III', 0.4997272727, 3.002454545, 0.6663240411],
    ['IV', 0.4999090909, 3.001727273, 0.6667072569],
  ])('Anscombe %s', (series, slope, intercept, rSquared) => {
    const rows = anscombe().filter((row) => row.Series === series);
    const fit = lineFit(
      rows.map((row) => row.X),
      rows.map((row) => row.Y),
    );
    expectNear(fit.slope, slope, 1e-8);
    expectNear(fit.intercept, intercept, 1e-8);
    expectNear(fit.rSquared, rSquared, 1e-8);
  });

  test('ten-millisecond steps of epoch milliseconds keep the slope: 1 in a thousand comes back as that', () => {
    const start = 1_771_000_000_000;
    const x = Float64Array.from({ length: 1000 }, (_, i) => start + 10 * i);
    const y = x.map((at) => 20 + 1e-3 * (at - start));
    const fit = lineFit(x, y);
    expectNear(fit.slope, 1e-3, 1e-12);
    expectNear(fit.intercept + fit.slope * start, 20, 1e-6);
  });

  test('two pairs: exact line, unknown uncertainty', () => {
    const fit = lineFit([1, 3], [2, 8]);
    expect([fit.slope, fit.intercept, fit.dof]).toEqual([3, -1, 0]);
    expect(fit.uSlope).toBeNaN();
    expect(fit.residualDeviation).toBeNaN();
  });

  test('constant y has no R²; constant x no line', () => {
    expect(lineFit([1, 2, 3], [5, 5, 5]).rSquared).toBeNaN();
    expect(() => lineFit([2, 2, 2], [1, 2, 3])).toThrow('all 3 x are 2');
    expect(() => lineFit([1], [1])).toThrow('found 1 pairs, expected at least 2');
    expect(() => lineFit([1, 2], [1])).toThrow('x has 2 values and y has 1');
  });
});

function anscombe(): { Series: string; X: number; Y: number }[] {
  const file = new URL('../../node_modules/vega-datasets/data/anscombe.json', import.meta.url);
  return JSON.parse(readFileSync(file, 'utf8'));
}
