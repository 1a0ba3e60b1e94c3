import { describe, expect, it } from 'vitest';
import { CRITERIA, criterionInBrief } from '../../../src/figures/thermal/criteria.ts';

describe('figures/thermal/criteria', () => {
  it('says in a few words what each allows, each its own', () => {
    const brief = CRITERIA.map((criterion) => criterionInBrief(criterion));
    expect(brief).toEqual([
      'at most 1 K in 15 min',
      'at most 3 K in 30 min',
      'at most 1 K in 5 min',
      'at most 2 K in 1 h',
      'at most 1 K in 1 h',
      'at most 2 K in 1 h',
      'at most 2 K per hour',
      'at most 1 K per hour',
      'three readings 5 min apart within 1 K',
      'three readings without an increase above 0.1 K',
      'three readings without an increase above 0.1 K',
      'within 3 K of its end value',
      'within 2 % of the step of its end value',
    ]);
  });
});
