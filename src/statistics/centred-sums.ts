import { mean } from './mean.ts';

/**
 * Means of x and y, and the sums of squares and products of the deviations from them, corrected for the rounding of the means.
 *
 * When: wherever a formula says Σx² − (Σx)²/n, which loses all digits for a small spread on a large offset.
 * @param x one or more finite numbers. Unit: any.
 * @param y as many finite numbers. Unit: any.
 * @throws RangeError when there are none, or one is not finite
 * Source: Chan, Golub & LeVeque, The American Statistician 37 (1983) 242–247, eq. 1.7 and its form for products.
 * Cost: five passes.
 * @example
 * centredSums([1, 2, 3], [2, 4, 6]) // { meanX: 2, meanY: 4, sxx: 2, sxy: 4, syy: 8 }
 */
export function centredSums(x: ArrayLike<number>, y: ArrayLike<number>) {
  const meanX = mean(x);
  const meanY = mean(y);
  const n = x.length;
  let [sxx, sxy, syy, leftX, leftY] = [0, 0, 0, 0, 0];
  for (let i = 0; i < n; i++) {
    const dx = x[i]! - meanX;
    const dy = y[i]! - meanY;
    sxx += dx * dx;
    sxy += dx * dy;
    syy += dy * dy;
    leftX += dx;
    leftY += dy;
  }
  return { meanX, meanY, sxx: sxx - (leftX * leftX) / n, sxy: sxy - (leftX * leftY) / n, syy: syy - (leftY * leftY) / n };
}
