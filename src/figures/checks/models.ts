/** Models of clock, power and energy with textbook numbers, through the functions that the figures use. */
import { divide, subtract } from '../../quantities/arithmetic.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { exact } from '../../quantities/uncertainty.ts';
import { trapezoid } from '../../statistics/trapezoid.ts';
import { exponentOf, independentShareOf } from '../scaling/estimators.ts';
import { asPrinted, type Check, type CheckedValue, toDigits } from './check.ts';
import { got } from './gum.ts';

export const MODEL_CHECKS: readonly Check[] = [
  {
    id: 'clock-model',
    title: 'T = a/f + b with 160 s at 1.2 GHz and 100 s at 2.4 GHz: b = 40 s',
    source:
      'C.-H. Hsu and U. Kremer, PLDI 2003, for the model (from memory): β = a/(f·T) is 0.6; the rest by hand from the two times: 1.6 over 2, 0.6 over 1, ln 1.6 over ln 2',
    compare: clockModel,
  },
  {
    id: 'switching-power',
    title: 'Voltage and clock both lowered by 15 %: P = A·C·V²·f',
    source:
      'J. L. Hennessy and D. A. Patterson, Computer Architecture: A Quantitative Approach (from memory): 0.61 of the power; by hand 0.85³, and 0.85² of the energy of a task',
    compare: () => {
      const less = 0.85;
      const power = exact(less ** 2 * less, '1');
      const speed = exact(less, '1');
      return [
        asPrinted('power', '0.61', power.value),
        toDigits('power', '0.614125', power.value, 12),
        toDigits('energy of a task: power over speed', '0.7225', got(divide(power, speed)).value, 12),
      ];
    },
  },
  {
    id: 'trapezoidal-rule',
    title: 'Composite trapezoidal rule: uneven steps, and a sine over half a period',
    source:
      'R. L. Burden and J. D. Faires, Numerical Analysis, table of the Romberg integration of a sine (from memory); uneven steps by hand',
    compare: integrals,
  },
];

function clockModel(): CheckedValue[] {
  const [slow, fast] = [160, 100];
  const speedup = exact(slow / fast, '1');
  const ratio = exact(2.4 / 1.2, '1');
  const overOne = (quantity: Quantity) => got(subtract(quantity, exact(1, '1')));
  // Against the fast setting as reference the slow one has half its clock.
  const share = independentShareOf([1, 1.2 / 2.4], [1, fast / slow]).value;
  return [
    toDigits('share of the time at 2.4 GHz that no clock shortens', '0.4', share, 12),
    toDigits('scaling efficiency', '0.8', got(divide(speedup, ratio)).value, 12),
    toDigits('gain per clock', '0.6', got(divide(overOne(speedup), overOne(ratio))).value, 12),
    asPrinted('exponent', '0.678072', exponentOf([1, ratio.value], [1, speedup.value]).value),
  ];
}

const SINE: readonly (readonly [panels: number, printed: string])[] = [
  [2, '1.570796327'],
  [4, '1.896118898'],
  [8, '1.974231602'],
  [16, '1.993570344'],
];

function integrals(): CheckedValue[] {
  const sine = (panels: number) => {
    const t = Array.from({ length: panels + 1 }, (_, k) => (k * Math.PI) / panels);
    return trapezoid(t, t.map(Math.sin));
  };
  return [
    toDigits('2, 4, 4, 6, 3 W at 0, 1, 2, 4, 7 s, J', '30.5', trapezoid([0, 1, 2, 4, 7], [2, 4, 4, 6, 3]), 14),
    ...SINE.map(([panels, printed]) => asPrinted(`${panels} panels`, printed, sine(panels))),
  ];
}
