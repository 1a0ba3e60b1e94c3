/** A number estimated from points that are themselves uncertain: their sources go through the fit, what the fit leaves over is added. */
import { combine } from '../../quantities/combine.ts';
import type { Part, Quantity } from '../../quantities/quantity.ts';
import { standardUncertainty } from '../../quantities/uncertainty.ts';
import { quantityOf } from '../sources.ts';

export interface Point {
  readonly x: Quantity;
  readonly y: Quantity;
}

/** What an estimator makes of bare numbers. */
export interface Estimate {
  readonly value: number;
  /** From the scatter about the fit; NaN where there is none. */
  readonly u: number;
  readonly dof: number;
}

export type Estimator = (x: readonly number[], y: readonly number[]) => Estimate;

/** Relative step of the central differences: their error is some 1e-10 of the sensitivity, and that of the estimator ÷ this. */
const STEP = 1e-5;

/**
 * The estimate with its uncertainty. Sources of the points are carried through by numeric sensitivities (JCGM 100:2008, 5.1.3, note 2).
 * Where the scatter about the fit says more than they explain, the excess is a source of its own, so that u is the larger of the
 * two (the idea of R. T. Birge, Physical Review 40, 1932, 207; from memory). Where a point's uncertainty is unknown, the scatter alone tells.
 */
export function throughFit(points: readonly Point[], estimate: Estimator, source: { id: string; title: string }): Quantity {
  const x = points.map((point) => point.x.value);
  const y = points.map((point) => point.y.value);
  const fit = estimate(x, y);
  const terms = points.flatMap((point, i) => [
    { quantity: point.x, sensitivity: isExact(point.x) ? 0 : slope(x, i, (moved) => estimate(moved, y).value) },
    { quantity: point.y, sensitivity: isExact(point.y) ? 0 : slope(y, i, (moved) => estimate(x, moved).value) },
  ]);
  const carried = combine(fit.value, '1', terms);
  const known = standardUncertainty(carried);
  if (!Number.isFinite(fit.u)) return withoutStep(carried);
  const excess = Math.sqrt(Math.max(0, fit.u * fit.u - (known ?? 0) ** 2));
  const misfit: Part = { source: { ...source, dof: fit.dof }, share: excess };
  const { repeatabilityOnly } = carried;
  return quantityOf(fit.value, '1', [...(carried.parts ?? []), misfit], { stated: !repeatabilityOnly, step: 0 });
}

/** The step of a score says nothing about an exponent: the uncertainty alone rounds it. */
function withoutStep({ step: _step, ...rest }: Quantity): Quantity {
  return rest;
}

function isExact({ parts }: Quantity): boolean {
  return parts !== null && parts.length === 0;
}

function slope(values: readonly number[], index: number, result: (values: readonly number[]) => number): number {
  const h = STEP * Math.abs(values[index]!);
  const moved = (by: number) => result(values.map((value, i) => (i === index ? value + by : value)));
  return (moved(h) - moved(-h)) / (2 * h);
}
