/** Our statistics on the data sets of NIST. */
import { autocorrelation } from '../../statistics/autocorrelation.ts';
import { type LeastSquaresFit, leastSquares, type Model } from '../../statistics/least-squares.ts';
import { lineFit } from '../../statistics/line-fit.ts';
import { mean } from '../../statistics/mean.ts';
import { originFit } from '../../statistics/origin-fit.ts';
import { polynomialFit } from '../../statistics/polynomial-fit.ts';
import { powerFit } from '../../statistics/power-fit.ts';
import { sampleDeviation } from '../../statistics/sample-deviation.ts';
import { type Check, type CheckedValue, toDigits } from './check.ts';
import { LINEAR, type LinearSet, NONLINEAR, type NonlinearSet, UNIVARIATE, type UnivariateSet } from './nist-sets.ts';

const STRD = 'NIST Statistical Reference Datasets (StRD), https://www.itl.nist.gov/div898/strd/';
const GSL = 'data and certified values as in the sources of the GNU Scientific Library 2.7.1';
const LMFIT = 'data, starts and certified values as in the public repository lmfit/lmfit-py, folder NIST_STRD';

const LINEAR_DIGITS = 9;
const NONLINEAR_DIGITS = 7;

/** The readings of NumAcc3 are stored as doubles with an error of 1e-10 of their spread, so that no more digits can come out. */
const FLOORS: Readonly<Record<string, { readonly digits: number; readonly why: string }>> = {
  NumAcc3: { digits: 9, why: 'the readings, stored as doubles, hold the spread to 9.4' },
};

function univariateCheck({ name, y, certified }: UnivariateSet): Check {
  const { digits, why } = FLOORS[name] ?? { digits: LINEAR_DIGITS, why: '' };
  return {
    id: `nist-${name.toLowerCase()}`,
    title: `NIST ${name}: mean, standard deviation, lag-1 autocorrelation of ${y.length} values`,
    source: `${STRD}, univariate summary statistics; ${GSL}, statistics/test_nist.c`,
    compare: () => [
      toDigits('mean', String(certified.mean), mean(y), LINEAR_DIGITS),
      toDigits('standard deviation', String(certified.stdDev), sampleDeviation(y), digits, why),
      toDigits('lag-1 autocorrelation', String(certified.lag1), autocorrelation(y, 1), digits, why),
    ],
  };
}

/** What all fits answer with. */
interface Fit {
  readonly params: readonly number[];
  readonly sd: readonly number[];
  readonly rss: number;
  readonly residualSd: number;
}

function linearFit({ name, x, y }: LinearSet): Fit & { readonly rSquared: number } {
  if (name === 'Norris') {
    const fit = lineFit(x, y);
    return { ...fit, params: [fit.intercept, fit.slope], sd: [fit.uIntercept, fit.uSlope], residualSd: fit.residualDeviation };
  }
  if (name === 'NoInt1') {
    const fit = originFit(x, y);
    return { ...fit, params: [fit.slope], sd: [fit.uSlope], residualSd: fit.residualDeviation };
  }
  const fit = polynomialFit(x, y, 2);
  return { ...fit, params: fit.coefficients, sd: fit.u, residualSd: fit.residualDeviation };
}

function linearCheck(set: LinearSet): Check {
  const first = set.name === 'NoInt1' ? 1 : 0;
  return {
    id: `nist-${set.name.toLowerCase()}`,
    title: `NIST ${set.name}: ${set.model.replaceAll('*', ' · ')}`,
    source: `${STRD}, linear regression; ${GSL}, fit/test.c and multifit/test_pontius.c`,
    compare: () => {
      const fit = linearFit(set);
      return [
        ...comparedFit(fit, set.certified, LINEAR_DIGITS, '', first),
        toDigits('R²', String(set.certified.rSquared), fit.rSquared, LINEAR_DIGITS),
      ];
    },
  };
}

function comparedFit(
  fit: Fit,
  certified: LinearSet['certified'] | NonlinearSet['certified'],
  digits: number,
  from: string,
  first: number,
) {
  const parameters = certified.params.flatMap((value, k): CheckedValue[] => [
    toDigits(`b${first + k}${from}`, String(value), fit.params[k]!, digits),
    toDigits(`standard deviation of b${first + k}${from}`, String(certified.sd[k]), fit.sd[k]!, digits),
  ]);
  return [
    ...parameters,
    toDigits(`residual sum of squares${from}`, String(certified.rss), fit.rss, digits),
    toDigits(`residual standard deviation${from}`, String(certified.residualSd), fit.residualSd, digits),
  ];
}

const rise: Model = (x, [b1, b2]) => b1! * (1 - Math.exp(-b2! * x));

/** The models, as NIST gives them. */
const MODELS: Readonly<Record<string, Model>> = {
  Misra1a: rise,
  BoxBOD: rise,
  DanWood: (x, [b1, b2]) => b1! * x ** b2!,
  Lanczos3: (x, [b1, b2, b3, b4, b5, b6]) => b1! * Math.exp(-b2! * x) + b3! * Math.exp(-b4! * x) + b5! * Math.exp(-b6! * x),
  Misra1b: (x, [b1, b2]) => b1! * (1 - (1 + (b2! * x) / 2) ** -2),
  Chwirut2: (x, [b1, b2, b3]) => Math.exp(-b1! * x) / (b2! + b3! * x),
};

/** The fit of a nonlinear set from one of its two starts. */
function nonlinearFit({ name, x, y, starts }: NonlinearSet, start: number): LeastSquaresFit {
  return leastSquares({ model: MODELS[name]!, start: starts[start]!, x, y });
}

function nonlinearCheck(set: NonlinearSet): Check {
  return {
    id: `nist-${set.name.toLowerCase()}`,
    title: `NIST ${set.name}: ${set.model.replaceAll('*', ' · ')}, ${set.level.toLowerCase()} difficulty, from both starts`,
    source: `${STRD}, nonlinear regression; ${LMFIT}`,
    compare: () =>
      set.starts.flatMap((_, start) => {
        const fit = nonlinearFit(set, start);
        return comparedFit(asFit(fit), set.certified, NONLINEAR_DIGITS, ` from start ${start + 1}`, 1);
      }),
  };
}

function asFit({ parameters, covariance, rss, residualDeviation }: LeastSquaresFit): Fit {
  return { params: parameters, sd: covariance.map((row, k) => Math.sqrt(row[k]!)), rss, residualSd: residualDeviation };
}

/** The power law as scores are fitted by it, without a start. */
function powerCheck(): Check {
  const { x, y, certified } = NONLINEAR.find(({ name }) => name === 'DanWood')!;
  return {
    id: 'nist-danwood-power',
    title: 'NIST DanWood through the power law of scaling figures, which needs no start',
    source: `${STRD}, nonlinear regression; ${LMFIT}`,
    compare: () => {
      const { coefficient, exponent, uCoefficient, uExponent, rss, residualDeviation } = powerFit(x, y);
      const fit = { params: [coefficient, exponent], sd: [uCoefficient, uExponent], rss, residualSd: residualDeviation };
      return comparedFit(fit, certified, NONLINEAR_DIGITS, '', 1);
    },
  };
}

export const NIST_CHECKS: readonly Check[] = [
  ...UNIVARIATE.map(univariateCheck),
  ...LINEAR.map(linearCheck),
  ...NONLINEAR.map(nonlinearCheck),
  powerCheck(),
];
