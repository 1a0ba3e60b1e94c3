/** Fewer pixels for a picture of a thermal image, which still covers all of it. */
import type { Matrix } from '../../figures/surface/matrix.ts';

/** An image of more pixels than this is drawn by means of blocks of them: nobody sees single ones, and a page is not to carry them. */
const MOST = 40_000;

/**
 * Means of blocks of pixels, where there are too many. Each pixel lies in one block, so that an edge counts as much as the middle, and marks
 * placed by shares of the full size stand where they belong.
 */
export function thinned(matrix: Pick<Matrix, 'width' | 'height' | 'values'>): Pick<Matrix, 'width' | 'height' | 'values'> {
  const side = Math.ceil(Math.sqrt((matrix.width * matrix.height) / MOST));
  if (side <= 1) return matrix;
  const columns = bounds(matrix.width, side);
  const rows = bounds(matrix.height, side);
  const [width, height] = [columns.length - 1, rows.length - 1];
  const values = Float64Array.from({ length: width * height }, (_, index) => {
    const [column, row] = [index % width, Math.floor(index / width)];
    const [left, right, top, bottom] = [columns[column]!, columns[column + 1]!, rows[row]!, rows[row + 1]!];
    let sum = 0;
    for (let y = top; y < bottom; y += 1) for (let x = left; x < right; x += 1) sum += matrix.values[y * matrix.width + x]!;
    return sum / ((right - left) * (bottom - top));
  });
  return { width, height, values };
}

/** Where blocks of about `side` pixels begin and end, spread evenly over `count`. */
function bounds(count: number, side: number): number[] {
  const blocks = Math.ceil(count / side);
  return Array.from({ length: blocks + 1 }, (_, index) => Math.round((index * count) / blocks));
}
