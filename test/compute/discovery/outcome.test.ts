import { describe, expect, it } from 'vitest';
import { outcomesOf } from '../../../src/compute/discovery/outcome.ts';

describe('compute/discovery/outcome', () => {
  it('says of a setting that did not hold what came of it, of one that passed nothing', () => {
    const derived = { figures: new Map(), phases: [], inferences: [] };
    expect(outcomesOf({ derived, tried: ['restarted', 'passed'] })).toEqual([
      { id: 'restarted-when-tried', title: 'restarted when tried' },
    ]);
  });
});
