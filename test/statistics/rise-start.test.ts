import { describe, expect, test } from 'vitest';
import { riseStart } from '../../src/statistics/rise-start.ts';
import { expectNear } from './near.ts';

const s = Float64Array.from({ length: 300 }, (_, i) => 2 * i);
const y = s.map((at) => 20 - 8 * Math.exp(-at / 90));

describe('statistics/rise-start', () => {
  test('within a grid step of the best', () => {
    expectNear(riseStart(s, y)!, 90, 0.3);
  });

  test('readings that are all alike have none', () => {
    expect(riseStart(s, new Float64Array(300).fill(20))).toBeNull();
  });
});
