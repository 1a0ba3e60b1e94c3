/** A pivot this far below its diagonal, relative, is rounding: the column repeats what the ones before it say. */
const ROUNDING = 1e-12;

/**
 * Lower Cholesky factor L of a symmetric matrix, L·Lᵀ = matrix. A matrix without full rank (fully correlated quantities) gets zero
 * columns, so that the product still holds.
 *
 * When: to turn a fit's covariance into independent sources: column k of L holds what source k gives to each parameter.
 * @param matrix square, symmetric, positive semidefinite; only its lower half is read. Unit of element i, j: that of i times that of j.
 * @returns L as rows, zero above the diagonal; row i has the unit of quantity i
 * @throws RangeError for a matrix that is not square, not finite, or not positive semidefinite
 * Source: Golub & Van Loan, Matrix Computations, 4th ed., 4.2.5 and, for semidefinite matrices, 4.2.8 (from memory: section numbers).
 * Cost: n³/6 products.
 * @example
 * cholesky([[4, 2], [2, 5]]) // [[2, 0], [1, 2]]
 */
export function cholesky(matrix: readonly (readonly number[])[]): number[][] {
  const n = matrix.length;
  const lower = matrix.map(() => new Array<number>(n).fill(0));
  for (let row = 0; row < n; row++) {
    if (matrix[row]!.length !== n) throw new RangeError(`row ${row} has ${matrix[row]!.length} elements, expected ${n}`);
    for (let column = 0; column <= row; column++) lower[row]![column] = element(matrix, lower, row, column);
  }
  return lower;
}

function element(matrix: readonly (readonly number[])[], lower: readonly number[][], row: number, column: number): number {
  const given = matrix[row]![column]!;
  if (!Number.isFinite(given)) throw new RangeError(`element ${row}, ${column} is ${given}, expected a finite number`);
  let rest = given;
  for (let k = 0; k < column; k++) rest -= lower[row]![k]! * lower[column]![k]!;
  const scale = ROUNDING * Math.sqrt(Math.abs(matrix[row]![row]! * matrix[column]![column]!));
  if (row === column) {
    if (rest < -scale) throw new RangeError(`the matrix is not positive semidefinite: pivot ${row} is ${rest}`);
    return rest > scale ? Math.sqrt(rest) : 0;
  }
  const pivot = lower[column]![column]!;
  if (pivot > 0) return rest / pivot;
  if (Math.abs(rest) > Math.sqrt(ROUNDING) * Math.sqrt(Math.abs(matrix[row]![row]! * matrix[column]![column]!))) {
    throw new RangeError(`the matrix is not positive semidefinite: element ${row}, ${column} has no pivot`);
  }
  return 0;
}
