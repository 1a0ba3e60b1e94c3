import { linearLeastSquares } from './linear-least-squares.ts';
import { numericDerivatives } from './numeric-derivatives.ts';
import { requirePairs } from './require-pairs.ts';

/** A curve y = model(x, parameters). */
export type Model = (x: number, parameters: readonly number[]) => number;

export interface LeastSquaresProblem {
  readonly model: Model;
  /** Where the search begins, one a parameter. */
  readonly start: readonly number[];
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
  /** Derivatives of the model by each parameter; by central differences when left out. */
  readonly jacobian?: (x: number, parameters: readonly number[]) => readonly number[];
  /** Steps at most; 500 when left out. */
  readonly maxIterations?: number;
}

export interface LeastSquaresFit {
  readonly parameters: readonly number[];
  /** Of the parameters; NaN where it is unknown (no degrees of freedom, or parameters that the data cannot tell apart). */
  readonly covariance: readonly (readonly number[])[];
  readonly rss: number;
  /** Unit of y; NaN without degrees of freedom. */
  readonly residualDeviation: number;
  readonly dof: number;
  /** True where no step makes the sum of squares smaller any more, and the slope there is zero but for rounding. */
  readonly converged: boolean;
  readonly iterations: number;
}

/** First damping tried, and the one that a search caught in a flat valley is begun again with. */
const DAMPINGS = [1e-3, 1, 1e3];
/** Steps smaller than this, relative, no longer change the result. */
const STEP = 1e-12;
/** Residuals may lean on the model's derivatives by this much of their length at a minimum (Bates & Watts's relative offset, tightened). */
const OFFSET = 1e-5;
const LARGEST_DAMPING = 1e20;

/**
 * Nonlinear least squares by Levenberg's and Marquardt's method: each step solves the linear problem, damped in proportion to the
 * parameters' own scales; damping falls where the linear prediction holds and rises where it fails. The search is repeated
 * from other dampings, and the smallest sum of squares wins.
 *
 * When: a model that is not linear in its parameters, with a start within an order of magnitude or two. For y = a·xᵇ and
 * for steps use `powerFit` and `riseProfile`, which need no start.
 * @param problem model, start, and pairs of finite numbers (any unit), at least as many as parameters
 * @throws RangeError for fewer pairs than parameters, unequal lengths, a number that is not finite, or a model not finite at the start
 * Source: J. J. Moré, "The Levenberg-Marquardt algorithm: implementation and theory", 1978 (scaling); H. B. Nielsen, report
 *   IMM-REP-1999-05 (damping); Bates & Watts, Technometrics 23, 1981, 179–183 (convergence). Proved on NIST Statistical Reference Datasets.
 * Cost: for each step (2·parameters + 1) × pairs evaluations of the model and 2 × pairs × parameters² products.
 * @example
 * leastSquares({ model: (x, [a]) => a * x, x: [1, 2, 3], y: [2, 4, 6], start: [1] }).parameters // [2]
 */
export function leastSquares(problem: LeastSquaresProblem): LeastSquaresFit {
  requirePairs(problem.x, problem.y, problem.start.length);
  const start = pointAt(problem, problem.start);
  if (!Number.isFinite(start.rss)) throw new RangeError(`the model is not finite at the start ${problem.start.join(', ')}`);
  const searches = DAMPINGS.map((damping) => search(problem, start, damping));
  const best = searches.reduce((least, found) => (better(found, least) ? found : least));
  return report(
    problem,
    best,
    searches.reduce((total, { iterations }) => total + iterations, 0),
  );
}

/** Where a search stands. Residuals are y − model; columns are the model's derivatives. */
interface Point {
  readonly parameters: readonly number[];
  readonly residuals: Float64Array;
  readonly rss: number;
}

interface Search extends Point {
  readonly columns: readonly Float64Array[];
  readonly converged: boolean;
  readonly iterations: number;
}

function better(a: Search, b: Search): boolean {
  if (Math.abs(a.rss - b.rss) <= 1e-9 * b.rss) return a.converged && !b.converged;
  return a.rss < b.rss;
}

function search(problem: LeastSquaresProblem, start: Point, firstDamping: number): Search {
  let point = start;
  let columns = derivatives(problem, point.parameters);
  let scales = columns.map(length);
  let damping = firstDamping;
  let factor = 2;
  let iterations = 0;
  while (iterations++ < (problem.maxIterations ?? 500)) {
    const step = dampedStep(columns, point.residuals, scales, damping);
    if (step && negligible(step, point.parameters)) break;
    const next = step ? pointAt(problem, sum(point.parameters, step)) : null;
    if (!(step && next && next.rss < point.rss)) {
      damping *= factor;
      factor *= 2;
      if (damping > LARGEST_DAMPING) break;
      continue;
    }
    const gain = (point.rss - next.rss) / (point.rss - predicted(columns, point.residuals, step));
    damping *= Math.max(1 / 10, 1 - (2 * gain - 1) ** 3);
    factor = 2;
    point = next;
    columns = derivatives(problem, point.parameters);
    scales = columns.map((column, k) => Math.max(scales[k]!, length(column)));
  }
  return polished(problem, point, columns, iterations);
}

/** Undamped steps for as long as they shrink: the sum of squares is flat at its minimum, the step is not. */
function polished(problem: LeastSquaresProblem, from: Point, fromColumns: readonly Float64Array[], iterations: number): Search {
  let [point, columns, left] = [from, fromColumns, offset(fromColumns, from.residuals)];
  for (let turn = 0; turn < 5; turn++) {
    const step = linearLeastSquares(columns, point.residuals)?.parameters;
    const next = step ? pointAt(problem, sum(point.parameters, step)) : null;
    if (!next || !(next.rss <= point.rss * (1 + 1e-9))) break;
    const nextColumns = derivatives(problem, next.parameters);
    const nextLeft = offset(nextColumns, next.residuals);
    if (!(nextLeft < left)) break;
    [point, columns, left] = [next, nextColumns, nextLeft];
  }
  return { ...point, columns, converged: left < OFFSET, iterations };
}

function pointAt({ model, x, y }: LeastSquaresProblem, parameters: readonly number[]): Point {
  const residuals = new Float64Array(x.length);
  let rss = 0;
  for (let i = 0; i < x.length; i++) {
    residuals[i] = y[i]! - model(x[i]!, parameters);
    rss += residuals[i]! ** 2;
  }
  return { parameters, residuals, rss };
}

function derivatives({ model, jacobian, x }: LeastSquaresProblem, parameters: readonly number[]): Float64Array[] {
  if (!jacobian) return numericDerivatives(model, x, parameters);
  const columns = parameters.map(() => new Float64Array(x.length));
  for (let i = 0; i < x.length; i++) {
    const row = jacobian(x[i]!, parameters);
    for (let k = 0; k < columns.length; k++) columns[k]![i] = row[k]!;
  }
  return columns;
}

/** Step that makes |residuals − J·step|² + damping·|scales·step|² least; null where it cannot be told. */
function dampedStep(columns: readonly Float64Array[], residuals: Float64Array, scales: readonly number[], damping: number) {
  const rows = residuals.length;
  const longer = columns.map((column, k) => {
    const extended = new Float64Array(rows + columns.length);
    extended.set(column);
    extended[rows + k] = Math.sqrt(damping) * (scales[k]! || 1);
    return extended;
  });
  const right = new Float64Array(rows + columns.length);
  right.set(residuals);
  return linearLeastSquares(longer, right)?.parameters ?? null;
}

/** Sum of squares that the linear model expects after a step. */
function predicted(columns: readonly Float64Array[], residuals: Float64Array, step: readonly number[]): number {
  let rss = 0;
  for (let i = 0; i < residuals.length; i++) {
    rss += step.reduce((rest, move, k) => rest - columns[k]![i]! * move, residuals[i]!) ** 2;
  }
  return rss;
}

/** Share of the residuals' length that lies along the model's derivatives: 0 at a minimum. */
function offset(columns: readonly Float64Array[], residuals: Float64Array): number {
  const total = length(residuals) ** 2;
  const linear = linearLeastSquares(columns, residuals);
  if (total === 0) return 0;
  return linear ? Math.sqrt(Math.max(0, 1 - linear.rss / total)) : Number.NaN;
}

function report(problem: LeastSquaresProblem, best: Search, iterations: number): LeastSquaresFit {
  const dof = problem.x.length - problem.start.length;
  const variance = dof > 0 ? best.rss / dof : Number.NaN;
  const inverse = linearLeastSquares(best.columns, best.residuals)?.inverse;
  const covariance = best.parameters.map((_, i) =>
    best.parameters.map((_, j) => (inverse ? variance * inverse[i]![j]! : Number.NaN)),
  );
  const { parameters, rss, converged } = best;
  return { parameters, covariance, rss, residualDeviation: Math.sqrt(variance), dof, converged, iterations };
}

function length(values: Float64Array): number {
  return Math.sqrt(values.reduce((total, value) => total + value * value, 0));
}

function sum(a: readonly number[], b: readonly number[]): number[] {
  return a.map((value, k) => value + b[k]!);
}

function negligible(step: readonly number[], parameters: readonly number[]): boolean {
  return step.every((move, k) => Math.abs(move) <= STEP * Math.abs(parameters[k]!));
}
