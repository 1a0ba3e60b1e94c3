/** A pivot this small beside its column's length, relative, is rounding: the column depends on the ones before it. */
const DEPENDENT = 1e-14;

/** Solution of a linear least-squares problem. */
export interface LinearSolution {
  /** One a column. */
  readonly parameters: number[];
  /** (AᵀA)⁻¹: times the variance of a residual it is the covariance of the parameters. */
  readonly inverse: number[][];
  readonly rss: number;
  /** By how much each column made the sum of squares smaller, after the ones before it. */
  readonly explained: number[];
}

/**
 * Linear least squares by Householder's orthogonal triangularisation of the columns scaled to length one: it loses half as many
 * digits as normal equations would.
 *
 * When: a model that is linear in its parameters, or one step of a model that is not.
 * @param columns one a parameter, each as long as `right`. Unit: any.
 * @param right what the columns are to add up to
 * @returns null where the columns are not independent (or there are more of them than rows)
 * Source: Golub & Van Loan, Matrix Computations, 4th ed., 5.3.2 (from memory: section number).
 * Cost: 2 rows × columns² products.
 * @example
 * linearLeastSquares([[1, 1, 1], [1, 2, 3]], [3, 5, 7]).parameters.map(Math.round) // [1, 2]
 */
export function linearLeastSquares(columns: readonly ArrayLike<number>[], right: ArrayLike<number>): LinearSolution | null {
  const rows = right.length;
  const count = columns.length;
  const lengths = columns.map(norm);
  if (count > rows || !lengths.every((length) => length > 0 && Number.isFinite(length))) return null;
  const work = columns.map((column, j) => scaled(column, 1 / lengths[j]!));
  const rest = new Float64Array(right);
  const diagonal = new Array<number>(count);
  for (let k = 0; k < count; k++) {
    diagonal[k] = reflect(work, rest, k);
    if (!(Math.abs(diagonal[k]!) > DEPENDENT)) return null;
  }
  const triangle = inverseTriangle(work, diagonal);
  let rss = 0;
  for (let i = count; i < rows; i++) rss += rest[i]! * rest[i]!;
  return {
    parameters: triangle.map((row, i) => row.reduce((sum, value, j) => sum + value * rest[j]!, 0) / lengths[i]!),
    inverse: triangle.map((a, i) =>
      triangle.map((b, j) => a.reduce((sum, value, k) => sum + value * b[k]!, 0) / (lengths[i]! * lengths[j]!)),
    ),
    rss,
    explained: lengths.map((_, k) => rest[k]! * rest[k]!),
  };
}

function scaled(column: ArrayLike<number>, factor: number): Float64Array {
  const result = new Float64Array(column);
  for (let i = 0; i < result.length; i++) result[i]! *= factor;
  return result;
}

/** Euclidean length; squares that would overflow or vanish are scaled first. */
function norm(column: ArrayLike<number>): number {
  const plain = rootOfSquares(column, 1);
  if (plain > 1e-140 && plain < 1e140) return plain;
  let largest = 0;
  for (let i = 0; i < column.length; i++) largest = Math.max(largest, Math.abs(column[i]!));
  return largest > 0 && largest < Number.POSITIVE_INFINITY ? largest * rootOfSquares(column, 1 / largest) : largest;
}

function rootOfSquares(column: ArrayLike<number>, factor: number): number {
  let squares = 0;
  for (let i = 0; i < column.length; i++) {
    const value = column[i]! * factor;
    squares += value * value;
  }
  return Math.sqrt(squares);
}

/** Turns column k into one element on the diagonal (returned) and the later columns and the right side with it. */
function reflect(work: readonly Float64Array[], rest: Float64Array, k: number): number {
  const mirror = work[k]!;
  const length = norm(mirror.subarray(k));
  if (length === 0) return 0;
  const diagonal = mirror[k]! > 0 ? -length : length;
  mirror[k]! -= diagonal;
  const half = -diagonal * mirror[k]!;
  for (let j = k + 1; j < work.length; j++) apply(mirror, half, work[j]!, k);
  apply(mirror, half, rest, k);
  return diagonal;
}

function apply(mirror: Float64Array, half: number, column: Float64Array, from: number): void {
  let product = 0;
  for (let i = from; i < column.length; i++) product += mirror[i]! * column[i]!;
  const factor = product / half;
  for (let i = from; i < column.length; i++) column[i]! -= factor * mirror[i]!;
}

/** Inverse of the upper triangle that `reflect` left: above the diagonal in `work`, on it in `diagonal`. */
function inverseTriangle(work: readonly Float64Array[], diagonal: readonly number[]): number[][] {
  const count = diagonal.length;
  const inverse = diagonal.map(() => new Array<number>(count).fill(0));
  for (let j = 0; j < count; j++) {
    inverse[j]![j] = 1 / diagonal[j]!;
    for (let i = j - 1; i >= 0; i--) {
      let sum = 0;
      for (let k = i + 1; k <= j; k++) sum += work[k]![i]! * inverse[k]![j]!;
      inverse[i]![j] = -sum / diagonal[i]!;
    }
  }
  return inverse;
}
