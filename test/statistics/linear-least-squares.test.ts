import { describe, expect, test } from 'vitest';
import { linearLeastSquares } from '../../src/statistics/linear-least-squares.ts';
import { expectAllNear, expectNear } from './near.ts';

describe('statistics/linear-least-squares', () => {
  // Three points of a line, solved by hand: y = −1/3 + 3/2·x through x = 1, 2, 3 and y = 1, 3, 4.
  test('parameters, inverse, residual and explained sums of squares of a line by hand', () => {
    const solution = linearLeastSquares(
      [
        [1, 1, 1],
        [1, 2, 3],
      ],
      [1, 3, 4],
    )!;
    expectAllNear(solution.parameters, [-1 / 3, 3 / 2], 1e-14);
    expectAllNear(solution.inverse.flat(), [7 / 3, -1, -1, 1 / 2], 1e-14);
    expectNear(solution.rss, 1 / 6, 1e-14);
    expectAllNear(solution.explained, [64 / 3, 9 / 2], 1e-14);
  });

  test('columns 300 orders of magnitude apart', () => {
    const solution = linearLeastSquares(
      [
        [1e-150, 1e-150, 1e-150],
        [1e150, 2e150, 3e150],
      ],
      [1, 3, 4],
    )!;
    expectNear(solution.parameters[0], -1e150 / 3, 1e-14);
    expectNear(solution.parameters[1], 1.5e-150, 1e-14);
  });

  test('dependent or empty columns, or more columns than rows, have no solution', () => {
    const [a, b] = [
      [1, 2, 3],
      [2, 4, 6],
    ];
    expect(linearLeastSquares([a!, b!], [1, 2, 3])).toBeNull();
    expect(linearLeastSquares([[0, 0, 0]], [1, 2, 3])).toBeNull();
    expect(linearLeastSquares([[1], [2]], [1])).toBeNull();
  });
});
