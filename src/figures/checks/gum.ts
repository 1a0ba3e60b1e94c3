/** The worked examples of JCGM 100:2008 (the GUM) through our quantities and statistics. */
import { subtract, sum } from '../../quantities/arithmetic.ts';
import type { Quantity, Source } from '../../quantities/quantity.ts';
import { isRefusal, type Refusal } from '../../quantities/refusal.ts';
import { degreesOfFreedom, independent, standardUncertainty } from '../../quantities/uncertainty.ts';
import { mean } from '../../statistics/mean.ts';
import { sampleDeviation } from '../../statistics/sample-deviation.ts';
import { studentQuantile } from '../../statistics/student-quantile.ts';
import { asPrinted, type Check } from './check.ts';
import { TWENTY_TEMPERATURES } from './gum-data.ts';
import { product } from './gum-product.ts';

const GUM = 'JCGM 100:2008 (GUM)';
export const FROM_MEMORY = 'values as printed, from memory';

export const GUM_CHECKS: readonly Check[] = [
  {
    id: 'gum-4-4-3',
    title: 'GUM 4.4.3: twenty temperatures',
    source: `${GUM}, 4.4.3, Table 1; data and ${FROM_MEMORY}`,
    compare: () => [
      asPrinted('mean, °C', '100.145', mean(TWENTY_TEMPERATURES)),
      asPrinted('standard deviation, °C', '1.489', sampleDeviation(TWENTY_TEMPERATURES)),
      asPrinted('standard uncertainty of the mean, °C', '0.333', sampleDeviation(TWENTY_TEMPERATURES) / Math.sqrt(20)),
    ],
  },
  {
    id: 'gum-5-2-2',
    title: 'GUM 5.2.2: ten resistors of 1 kΩ in series, u = 100 mΩ each',
    source: `${GUM}, 5.2.2, example; ${FROM_MEMORY}`,
    compare: () => [
      asPrinted('calibrated against one standard (fully correlated), Ω', '1.0', u(sum(resistors(() => 'standard')))),
      asPrinted('calibrated independently, Ω', '0.32', u(sum(resistors((k) => `standard-${k}`)))),
    ],
  },
  {
    id: 'gum-g-4-1',
    title: 'GUM G.4.1: effective degrees of freedom of a product of three',
    source: `${GUM}, G.4.1, example; ${FROM_MEMORY}`,
    compare: () => {
      const three = product([factor('x1', 0.0025, 9), factor('x2', 0.0057, 4), factor('x3', 0.0082, 14)]);
      const t = studentQuantile(0.975, Math.round(dof(three)));
      return [
        asPrinted('combined relative standard uncertainty, %', '1.03', 100 * u(three)),
        asPrinted('effective degrees of freedom', '19.0', dof(three)),
        asPrinted('Student factor, 95 %', '2.09', t),
        asPrinted('expanded relative uncertainty, %', '2.2', 100 * t * u(three)),
      ];
    },
  },
  {
    id: 'gum-h-1',
    title: 'GUM H.1: calibration of an end gauge',
    source: `${GUM}, H.1; inputs, l and its standard uncertainties as in the public repository MSLNZ/GTC, examples/GUM_H1.py; the rest ${FROM_MEMORY}`,
    compare: endGauge,
  },
];

export const source = (id: string, dof: number | null = null): Source => ({ id, title: id, dof });

/** The quantity; these inputs all go together. */
export function got(result: Quantity | Refusal): Quantity {
  if (isRefusal(result)) throw new Error(result.refused);
  return result;
}

export function u(result: Quantity | Refusal): number {
  return standardUncertainty(got(result)) ?? Number.NaN;
}

function dof(quantity: Quantity): number {
  return degreesOfFreedom(quantity) ?? Number.POSITIVE_INFINITY;
}

function resistors(standard: (k: number) => string): Quantity[] {
  return Array.from({ length: 10 }, (_, k) => independent(1000, 'V/A', 0.1, source(standard(k))));
}

function factor(id: string, relative: number, freedom: number): Quantity {
  return independent(1, '1', relative, source(id, freedom));
}

/** l = l_s + d − l_s(δα θ + α_s δθ); lengths in nm, so that the numbers are those of the GUM. */
function endGauge() {
  const rectangular = (half: number) => half / Math.sqrt(3);
  const standard = independent(50_000_623e-9, 'm', 25e-9, source('standard', 18));
  const systematic = independent(0, 'm', 6.7e-9, source('comparator, systematic', 8));
  const random = independent(0, 'm', 3.9e-9, source('comparator, random', 5));
  const d = got(sum([independent(215e-9, 'm', 5.8e-9, source('repeated observations', 24)), random, systematic]));
  const cycling = independent(0, 'K', 0.5 / Math.sqrt(2), source('cycling'));
  const deviation = got(sum([independent(-0.1, 'K', 0.2, source('test bed')), cycling]));
  const expansion = independent(11.5e-6, '1/K', rectangular(2e-6), source('expansion'));
  const expansions = independent(0, '1/K', rectangular(1e-6), source('difference of expansions', 50));
  const temperatures = independent(0, 'K', rectangular(0.05), source('difference of temperatures', 2));
  const byExpansion = product([standard, expansions, deviation]);
  const byTemperature = product([standard, expansion, temperatures]);
  const length = got(subtract(got(subtract(got(sum([standard, d])), byExpansion)), byTemperature));
  const second = [u(expansions) * u(deviation), u(expansion) * u(temperatures)].map((each) => each * standard.value);
  const freedom = Math.floor(dof(length));
  return [
    asPrinted('length, nm', '50000838', length.value * 1e9),
    asPrinted('u of the comparator’s difference, nm', '9.7', u(d) * 1e9),
    asPrinted('u of the deviation from 20 °C, °C', '0.41', u(deviation)),
    asPrinted('combined standard uncertainty, nm', '32', u(length) * 1e9),
    asPrinted('effective degrees of freedom, truncated', '16', freedom),
    asPrinted('Student factor, 99 %', '2.92', studentQuantile(0.995, freedom)),
    asPrinted('expanded uncertainty, 99 %, of the rounded 32 nm, nm', '93', studentQuantile(0.995, freedom) * 32),
    asPrinted('with the terms of second order, nm', '34', Math.hypot(u(length), ...second) * 1e9),
  ];
}
