/** A standard deviation over a few runs or specimens, and how little a few can say of it. */
import { chiSquareQuantile } from '../../statistics/chi-square-quantile.ts';
import { sampleDeviation } from '../../statistics/sample-deviation.ts';
import { absent, type Of } from '../absent.ts';
import type { FigureName } from '../catalogue.ts';
import type { Figure, From } from '../figure.ts';
import { quantityOf } from '../sources.ts';

export interface Spread {
  /** Pooled sample standard deviation, in the unit of the values. */
  readonly deviation: number;
  readonly dof: number;
  /** How many values it came from. */
  readonly n: number;
}

/** Pooled standard deviation within lists of values: √(Σ(nⱼ − 1)sⱼ² ÷ Σ(nⱼ − 1)); null where no list has two. */
export function spreadWithin(lists: readonly (readonly number[])[]): Spread | null {
  const usable = lists.filter((list) => list.length > 1);
  const dof = usable.reduce((sum, list) => sum + list.length - 1, 0);
  if (dof === 0) return null;
  const squares = usable.reduce((sum, list) => sum + (list.length - 1) * sampleDeviation(list) ** 2, 0);
  return { deviation: Math.sqrt(squares / dof), dof, n: usable.reduce((sum, list) => sum + list.length, 0) };
}

/** What a variance holds besides what is asked for. */
export interface Within {
  readonly variance: number;
  readonly dof: number;
}

interface Told {
  readonly name: FigureName;
  readonly address: string;
  readonly device: string;
  readonly spread: Spread;
  /** Of the values; K where that is °C. */
  readonly unit: string;
  readonly of: Of;
  readonly from: From;
}

/**
 * The spread with u(s) = s/√(2ν) (JCGM 100:2008, E.4.3) and the 95 % interval of a standard deviation, which is lopsided:
 * s√(ν/χ²₀.₉₇₅) to s√(ν/χ²₀.₀₂₅).
 */
export function spreadFigure({ name, address, device, spread, unit, of, from }: Told): Figure {
  const { deviation, dof, n } = spread;
  const source = { id: `device:${device}/${address}/sampling`, title: `the few values behind ${address} of ${device}`, dof };
  const share = deviation / Math.sqrt(2 * dof);
  const end = (p: number) => deviation * Math.sqrt(dof / chiSquareQuantile(p, dof));
  return {
    name,
    quantity: quantityOf(deviation, unit === '°C' ? 'K' : unit, [{ source, share }], { stated: true, step: 0 }),
    interval: [end(0.975), end(0.025)],
    from,
    of: { ...of, n },
  };
}

/**
 * The spread that is left when what runs repeat is taken off, s² = s²(means) − s²ᵣ·mean(1/nⱼ) (ISO 5725-2:2019, 7.4, from memory), with
 * the interval of a difference of two variances (F. A. Graybill and C.-M. Wang, Journal of the American Statistical Association 75, 1980,
 * 869–873, from memory). Where nothing is left, it is absent, and the upper end is its bound.
 */
export function spreadBeyond(told: Told, within: Within): Figure {
  const { name, address, device, spread, unit, of, from } = told;
  const whole = spread.deviation ** 2;
  const left = whole - within.variance;
  const [own, other] = [limitsOf(spread.dof), limitsOf(within.dof)];
  const high = left + Math.hypot(own.above * whole, other.below * within.variance);
  const low = left - Math.hypot(own.below * whole, other.above * within.variance);
  const inUnit = unit === '°C' ? 'K' : unit;
  const more = { ...of, n: spread.n, repeats_taken_off: true };
  if (!(left > 0)) {
    const bound = { relation: '<', value: Math.sqrt(Math.max(0, high)), unit: inUnit } as const;
    const why = 'The specimens lie no further apart than runs of one specimen do.';
    return absent(name, { absent: 'out-of-range', why, of: more, ...(bound.value > 0 ? { bound } : {}) });
  }
  const source = {
    id: `device:${device}/${address}/sampling`,
    title: `the few values behind ${address} of ${device}`,
    dof: spread.dof,
  };
  const share = Math.hypot(whole * Math.sqrt(2 / spread.dof), within.variance * Math.sqrt(2 / within.dof)) / (2 * Math.sqrt(left));
  return {
    name,
    quantity: quantityOf(Math.sqrt(left), inUnit, [{ source, share }], { stated: true, step: 0 }),
    interval: [Math.sqrt(Math.max(0, low)), Math.sqrt(high)],
    from,
    of: more,
  };
}

/** By which share of itself a variance may be above and below its estimate. */
function limitsOf(dof: number): { readonly above: number; readonly below: number } {
  return { above: dof / chiSquareQuantile(0.025, dof) - 1, below: 1 - dof / chiSquareQuantile(0.975, dof) };
}
