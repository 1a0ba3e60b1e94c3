/** A number estimated from points that are themselves uncertain: their sources go through the fit, what the fit leaves over is added. */
import { combine } from '../../quantities/combine.ts';
import type { Part, Quantity } from '../../quantities/quantity.ts';
import { standardUncertainty } from '../../quantities/uncertainty.ts';
import { chiSquareQuantile } from '../../statistics/chi-square-quantile.ts';
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
/** A ratio near 1 is moved by this share of what it differs by: at 1 itself an exponent has a pole. */
const NEAR = 1e-3;

/**
 * The estimate with its uncertainty. Sources of the points are carried through by numeric sensitivities (JCGM 100:2008, 5.1.3, note 2).
 * Where the points scatter about the fit by more than these explain (χ² beyond its 95 % point), the excess is a source of its own, so
 * that u is that of the scatter (the ratio of R. T. Birge, Physical Review 40, 1932, 207; from memory). Where a point's uncertainty
 * is unknown, the scatter alone tells.
 */
export function throughFit(points: readonly Point[], estimate: Estimator, source: { id: string; title: string }): Quantity {
  const x = points.map((point) => point.x.value);
  const y = points.map((point) => point.y.value);
  const fit = estimate(x, y);
  const terms = points.flatMap((point, i) => [
    { quantity: point.x, sensitivity: isExact(point.x) ? 0 : slope(x, i, (moved) => estimate(moved, y).value) },
    { quantity: point.y, sensitivity: isExact(point.y) ? 0 : slope(y, i, (moved) => estimate(x, moved).value) },
  ]);
  const { step: _step, ...carried } = combine(fit.value, '1', terms);
  const known = standardUncertainty(carried) ?? 0;
  if (!explains(known, fit)) {
    const misfit: Part = { source: { ...source, dof: fit.dof }, share: Math.sqrt(fit.u * fit.u - known * known) };
    const stated = !carried.repeatabilityOnly;
    return quantityOf(fit.value, '1', [...(carried.parts ?? []), misfit], { stated, step: 0 });
  }
  return carried;
}

/** Whether the scatter about a fit is no larger than the uncertainty of its points lets expect; there is none without degrees of freedom. */
function explains(known: number, { u, dof }: Estimate): boolean {
  if (!(dof > 0) || !Number.isFinite(u) || u <= known) return true;
  return known > 0 && (u / known) ** 2 * dof <= chiSquareQuantile(0.95, dof);
}

function isExact({ parts }: Quantity): boolean {
  return parts !== null && parts.length === 0;
}

function slope(values: readonly number[], index: number, result: (values: readonly number[]) => number): number {
  const value = values[index]!;
  const away = Math.abs(value - 1);
  const h = away > 0 ? Math.min(STEP * Math.abs(value), NEAR * away) : STEP * Math.abs(value);
  const moved = (by: number) => result(values.map((each, i) => (i === index ? each + by : each)));
  return (moved(h) - moved(-h)) / (2 * h);
}
