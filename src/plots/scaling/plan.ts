/** How speed grows with the clock: each run's speedup over its measured clock, with the line of a speed in proportion to the clock. */
import { type Figure, isPresent, type PresentFigure } from '../../figures/figure.ts';
import { type ComparedRun, figureAt, type PlottedComparison, plottedComparison } from '../data/plotted-comparison.ts';
import type { ComparedSubject } from '../drawing/drawn.ts';
import type { Plan, Undrawn } from '../drawing/plan.ts';
import { layOutScaling } from './layout.ts';
import { scalingAlt, scalingCsv, scalingMethod, scalingTable, scalingTitle } from './words.ts';

/** One run: its clock and its speed as multiples of the reference's. */
export interface ScalingRun extends ComparedRun {
  readonly clock: Figure;
  readonly speedup: Figure;
  readonly efficiency: Figure;
}

/** A run that has both. */
export interface ScalingPoint extends ComparedRun {
  readonly clock: PresentFigure;
  readonly speedup: PresentFigure;
}

/** y = coefficient · x^exponent. */
export interface PowerLaw {
  readonly coefficient: number;
  readonly exponent: PresentFigure;
}

export interface Scaling {
  readonly reference: ComparedRun;
  readonly runs: readonly ScalingRun[];
  readonly points: readonly ScalingPoint[];
  /** Null where the comparison has no exponent over all of its runs; `whyNoLaw` then says why. */
  readonly law: PowerLaw | null;
  readonly whyNoLaw: string;
}

/** Plans the speedup over all tests against the ratio of measured clocks. */
export function planScaling(subject: ComparedSubject, title?: string): Plan | Undrawn {
  const compared = plottedComparison(subject);
  const runs = compared.others.map((run) => runOf(compared, run));
  const points = runs.flatMap(pointOf);
  if (points.length === 0) return { why: whyNot(runs) };
  const exponent = figureAt(compared, 'scaling_exponent');
  const law = isPresent(exponent) ? lawOf(exponent, points) : null;
  const whyNoLaw = isPresent(exponent) ? '' : exponent.why;
  const scaling: Scaling = { reference: compared.reference, runs, points, law, whyNoLaw };
  return {
    title: title ?? scalingTitle(scaling),
    alt: scalingAlt(scaling),
    method: scalingMethod(scaling),
    csv: scalingCsv(scaling),
    table: scalingTable(scaling),
    layOut: (size) => layOutScaling(scaling, size),
    shown: [scaling.reference, ...points].map(({ alias, k }) => ({ name: alias, k })),
  };
}

function runOf(compared: PlottedComparison, run: ComparedRun): ScalingRun {
  const at = (name: string) => figureAt(compared, `${name}.${run.alias}`);
  return { ...run, clock: at('clock_ratio'), speedup: at('speedup'), efficiency: at('scaling_efficiency') };
}

function pointOf({ alias, k, clock, speedup }: ScalingRun): ScalingPoint[] {
  return isPresent(clock) && isPresent(speedup) ? [{ alias, k, clock, speedup }] : [];
}

function whyNot([first]: readonly ScalingRun[]): string {
  if (!first) return 'The comparison has one run alone.';
  const absent = isPresent(first.speedup) ? first.clock : first.speedup;
  return isPresent(absent) ? '' : absent.why;
}

/**
 * The power law behind `scaling_exponent`, which is fitted by least squares in the speedup: at the fitted exponent the coefficient is the
 * one that fits best, Σ y·xᵖ ÷ Σ x²ᵖ over the runs and the reference at (1, 1).
 */
function lawOf(exponent: PresentFigure, points: readonly ScalingPoint[]): PowerLaw {
  const power = (x: number) => x ** exponent.quantity.value;
  const pairs = [{ x: 1, y: 1 }, ...points.map(({ clock, speedup }) => ({ x: clock.quantity.value, y: speedup.quantity.value }))];
  const above = pairs.reduce((sum, { x, y }) => sum + y * power(x), 0);
  const below = pairs.reduce((sum, { x }) => sum + power(x) ** 2, 0);
  return { coefficient: above / below, exponent };
}
