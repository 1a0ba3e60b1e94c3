/** GUM H.2 and H.3: correlated inputs, and a line with its covariance. */
import { divide, multiply } from '../../quantities/arithmetic.ts';
import { combine } from '../../quantities/combine.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { standardUncertainty } from '../../quantities/uncertainty.ts';
import { cholesky } from '../../statistics/cholesky.ts';
import { lineFit } from '../../statistics/line-fit.ts';
import { mean } from '../../statistics/mean.ts';
import { sampleDeviation } from '../../statistics/sample-deviation.ts';
import { asPrinted, type Check, type CheckedValue } from './check.ts';
import { FROM_MEMORY, got, source, u } from './gum.ts';
import { CORRECTIONS, CURRENTS, PHASES, READINGS, VOLTAGES } from './gum-data.ts';

const GUM = 'JCGM 100:2008 (GUM)';

export const CORRELATED_CHECKS: readonly Check[] = [
  {
    id: 'gum-h-2',
    title: 'GUM H.2: resistance, reactance and impedance from correlated readings',
    source: `${GUM}, H.2, Tables H.2 to H.4; ${FROM_MEMORY}`,
    compare: () => {
      const [volt, ampere, angle] = [observed(VOLTAGES, 'V'), observed(CURRENTS, 'A'), observed(PHASES, '1')];
      return [
        asPrinted('correlation of V and I', '-0.36', correlation(volt, ampere)),
        asPrinted('correlation of V and φ', '0.86', correlation(volt, angle)),
        asPrinted('correlation of I and φ', '-0.65', correlation(ampere, angle)),
        ...comparedImpedance(impedance(volt, ampere, angle), { r: '127.732', x: '219.847', z: '254.260' }, [
          '0.071',
          '0.296',
          '0.236',
        ]),
      ];
    },
  },
  {
    id: 'gum-h-2-rounded',
    title: 'GUM H.2 from means, standard uncertainties and correlations alone, rounded as in its Table H.2',
    source: `${GUM}, H.2; results as in the public repository MSLNZ/GTC, docs/API/GUM_H2.rst`,
    compare: () =>
      comparedImpedance(
        fromMoments(),
        { r: '127.732', x: '219.85', z: '254.26' },
        ['0.070', '0.30', '0.24'],
        ['-0.59', '-0.49', '0.99'],
      ),
  },
  {
    id: 'gum-h-2-second',
    title: 'GUM H.2, second approach: each row transformed, then averaged',
    source: `${GUM}, H.2.4, Table H.4; ${FROM_MEMORY}`,
    compare: rowByRow,
  },
  {
    id: 'gum-h-3',
    title: 'GUM H.3: correction of a thermometer by a line',
    source: `${GUM}, H.3; results as in the public repository MSLNZ/GTC, docs/API/GUM_H3.rst`,
    compare: thermometer,
  },
];

/** Mean of n observations; every row of simultaneous observations is one source, which carries the covariances exactly. */
function observed(values: readonly number[], unit: string): Quantity {
  const n = values.length;
  const centre = mean(values);
  const scale = Math.sqrt(n * (n - 1));
  const parts = values.map((value, row) => ({ source: source(`row/${row}`, n - 1), share: (value - centre) / scale }));
  return { value: centre, unit, parts };
}

interface Impedance {
  readonly r: Quantity;
  readonly x: Quantity;
  readonly z: Quantity;
}

function impedance(volt: Quantity, ampere: Quantity, angle: Quantity): Impedance {
  const z = got(divide(volt, ampere));
  const cosine = combine(Math.cos(angle.value), '1', [{ quantity: angle, sensitivity: -Math.sin(angle.value) }]);
  const sine = combine(Math.sin(angle.value), '1', [{ quantity: angle, sensitivity: Math.cos(angle.value) }]);
  return { r: got(multiply(z, cosine)), x: got(multiply(z, sine)), z };
}

/** Correlation through shared sources (JCGM 100:2008, 5.2.2). */
function correlation(a: Quantity, b: Quantity): number {
  const shares = new Map((b.parts ?? []).map(({ source: { id }, share }) => [id, share]));
  const covariance = (a.parts ?? []).reduce((sum, { source: { id }, share }) => sum + share * (shares.get(id) ?? 0), 0);
  return covariance / ((standardUncertainty(a) ?? Number.NaN) * (standardUncertainty(b) ?? Number.NaN));
}

function comparedImpedance(
  { r, x, z }: Impedance,
  values: { readonly r: string; readonly x: string; readonly z: string },
  us: readonly [string, string, string],
  correlations: readonly [string, string, string] = ['-0.588', '-0.485', '0.993'],
): CheckedValue[] {
  return [
    asPrinted('resistance R, Ω', values.r, r.value),
    asPrinted('u(R), Ω', us[0], u(r)),
    asPrinted('reactance X, Ω', values.x, x.value),
    asPrinted('u(X), Ω', us[1], u(x)),
    asPrinted('impedance Z, Ω', values.z, z.value),
    asPrinted('u(Z), Ω', us[2], u(z)),
    asPrinted('correlation of R and X', correlations[0], correlation(r, x)),
    asPrinted('correlation of R and Z', correlations[1], correlation(r, z)),
    asPrinted('correlation of X and Z', correlations[2], correlation(x, z)),
  ];
}

/** Means, standard uncertainties and correlations as rounded in the GUM, made into sources by Cholesky's factor. */
function fromMoments(): Impedance {
  const us = [3.2e-3, 9.5e-6, 7.5e-4];
  const rs = [
    [1, -0.36, 0.86],
    [-0.36, 1, -0.65],
    [0.86, -0.65, 1],
  ];
  const factor = cholesky(rs.map((row, i) => row.map((r, j) => r * us[i]! * us[j]!)));
  const input = (value: number, unit: string, row: number) => correlatedInput('inputs', value, unit, factor[row]!);
  return impedance(input(4.999, 'V', 0), input(19.661e-3, 'A', 1), input(1.04446, '1', 2));
}

function correlatedInput(id: string, value: number, unit: string, row: readonly number[], dof: number | null = null): Quantity {
  const parts = row.map((share, k) => ({ source: source(`${id}/${k + 1}`, dof), share }));
  return { value, unit, parts: parts.filter(({ share }) => share !== 0) };
}

function rowByRow(): CheckedValue[] {
  const rows = VOLTAGES.map((volt, k) => ({ z: volt / CURRENTS[k]!, angle: PHASES[k]! }));
  const of = (value: (row: (typeof rows)[number]) => number) => observed(rows.map(value), 'V/A');
  const three = { r: of(({ z, angle }) => z * Math.cos(angle)), x: of(({ z, angle }) => z * Math.sin(angle)), z: of(({ z }) => z) };
  const spread = sampleDeviation(rows.map(({ z }) => z)) / Math.sqrt(rows.length);
  return [
    ...comparedImpedance(three, { r: '127.732', x: '219.847', z: '254.260' }, ['0.071', '0.295', '0.236']),
    asPrinted('u(Z) by the scatter of the five, Ω', '0.236', spread),
  ];
}

/** Intercept and slope against t − 20 °C, and the correction predicted at 30 °C. */
function thermometer(): CheckedValue[] {
  const fit = lineFit(
    READINGS.map((t) => t - 20),
    CORRECTIONS,
  );
  const factor = cholesky([
    [fit.uIntercept ** 2, fit.covariance],
    [fit.covariance, fit.uSlope ** 2],
  ]);
  const intercept = correlatedInput('line', fit.intercept, 'K', factor[0]!, fit.dof);
  const slope = correlatedInput('line', fit.slope, '1', factor[1]!, fit.dof);
  const at30 = combine(intercept.value + 10 * slope.value, 'K', [
    { quantity: intercept, sensitivity: 1 },
    { quantity: slope, sensitivity: 10 },
  ]);
  return [
    asPrinted('intercept, °C', '-0.1712', fit.intercept),
    asPrinted('u of the intercept, °C', '0.0029', fit.uIntercept),
    asPrinted('slope', '0.00218', fit.slope),
    asPrinted('u of the slope', '0.00067', fit.uSlope),
    asPrinted('correlation of both', '-0.930', fit.correlation),
    asPrinted('residual standard deviation, °C', '0.0035', fit.residualDeviation),
    asPrinted('correction at 30 °C, °C', '-0.1494', at30.value),
    asPrinted('its standard uncertainty, °C', '0.0041', u(at30)),
  ];
}
