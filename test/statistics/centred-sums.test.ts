import { describe, expect, test } from 'vitest';
import { centredSums } from '../../src/statistics/centred-sums.ts';
import { expectAllNear } from './near.ts';

describe('statistics/centred-sums', () => {
  test('by hand', () => {
    expect(centredSums([1, 2, 6], [2, 0, 1])).toEqual({ meanX: 3, meanY: 1, sxx: 14, sxy: -1, syy: 2 });
  });

  test('an offset of a billion changes nothing', () => {
    const far = centredSums(
      [1, 2, 6].map((value) => value + 1e9),
      [2, 0, 1].map((value) => value - 1e9),
    );
    expectAllNear([far.sxx, far.sxy, far.syy], [14, -1, 2], 1e-15);
  });
});
