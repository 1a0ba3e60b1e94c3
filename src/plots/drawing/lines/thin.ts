/**
 * Thinning for drawing: M4 keeps the first, the last, the lowest and the highest reading of every pixel column, which
 * draws the same line as all readings would (Jugel, Jerzak, Hackenbroich & Markl, "M4: A Visualization-Oriented Time
 * Series Data Aggregation", PVLDB 7(10), 2014, 797-808). Figures are never computed from thinned data.
 */

export interface ColumnGrid {
  /** x of the left edge of the first column and of the right edge of the last. */
  readonly from: number;
  readonly to: number;
  /** Number of pixel columns. */
  readonly columns: number;
}

/**
 * Indices of the readings to draw, ascending: at most four for each pixel column, all of one unbroken line.
 * `x` never decreases; `y` has no NaN between `start` and `end` (exclusive). Equal extremes keep the earliest. O(n).
 */
export function thin(x: ArrayLike<number>, y: ArrayLike<number>, grid: ColumnGrid, start = 0, end = x.length): number[] {
  const kept: number[] = [];
  let index = start;
  while (index < end) {
    const column = columnOf(x[index]!, grid);
    const first = index;
    let low = index;
    let high = index;
    for (index += 1; index < end && columnOf(x[index]!, grid) === column; index += 1) {
      if (y[index]! < y[low]!) low = index;
      if (y[index]! > y[high]!) high = index;
    }
    kept.push(...distinct(first, Math.min(low, high), Math.max(low, high), index - 1));
  }
  return kept;
}

/** Column of an x; what lies outside the grid counts to its outermost columns. */
function columnOf(x: number, grid: ColumnGrid): number {
  const column = Math.floor(((x - grid.from) / (grid.to - grid.from)) * grid.columns);
  return Math.min(Math.max(column, 0), grid.columns - 1);
}

function distinct(...ascending: number[]): number[] {
  return ascending.filter((value, position) => value !== ascending[position - 1]);
}
