/** A standard deviation over a few runs or specimens, and how little a few can say of it. */
import { chiSquareQuantile } from '../../statistics/chi-square-quantile.ts';
import { sampleDeviation } from '../../statistics/sample-deviation.ts';
import type { Of } from '../absent.ts';
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
