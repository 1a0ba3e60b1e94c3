import { describe, test } from 'vitest';
import { riseStart } from '../../src/statistics/rise-start.ts';
import { expectNear } from './near.ts';

const s = Float64Array.from({ length: 300 }, (_, i) => 2 * i);
const y = s.map((at) => 20 - 8 * Math.exp(-at / 90));

describe('statistics/rise-start', () => {
  test('one: within a grid step of the best; two: both within reach', () => {
    const [near] = riseStart(s, y, 1)!;
    expectNear(near!, 90, 0.3);
    const double = s.map((at) => 20 - 8 * Math.exp(-at / 150) - 5 * Math.exp(-at / 12));
    const [fast, slow] = riseStart(s, double, 2)!;
    expectNear(fast!, 12, 0.5);
    expectNear(slow!, 150, 0.5);
  });
});
