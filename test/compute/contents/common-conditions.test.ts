import { describe, expect, it } from 'vitest';
import { commonConditions } from '../../../src/compute/contents/common-conditions.ts';

const conditions = (ambient: string, workload: string) => [
  { name: 'ambient', text: ambient },
  { name: 'workload', text: workload },
];

describe('compute/contents/common-conditions', () => {
  it('says once what most runs share, and of each run what departs', () => {
    const runs = [conditions('22 °C', 'mix'), conditions('23 °C', 'mix'), conditions('24 °C', 'sort')];
    const { common, departures } = commonConditions(runs);
    expect(common).toEqual([{ name: 'workload', text: 'mix' }]);
    expect(runs.map((run) => departures(run).map(({ text }) => text))).toEqual([['22 °C'], ['23 °C'], ['24 °C', 'sort']]);
  });

  it('needs more than half of the runs, and takes all of one', () => {
    expect(commonConditions([conditions('22 °C', 'mix'), conditions('23 °C', 'sort')]).common).toEqual([]);
    expect(commonConditions([conditions('22 °C', 'mix')]).common).toHaveLength(2);
    expect(commonConditions([]).common).toEqual([]);
  });
});
