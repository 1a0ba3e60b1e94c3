/** Peaks of a known course under noise that lasts from reading to reading. */
import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { wandering } from '../../simulator/noise.ts';
import { random } from '../../simulator/random.ts';
import { contextOf, every, logOf, phase, presentAt } from '../build.ts';

const LOAD = 3600;

describe('peak temperature', () => {
  // The last lasts a tenth of the load, which is as far as the page of the figure goes.
  test.each([
    [10, 26],
    [36, 26],
    [120, 26],
    [360, 25],
  ])(
    'under noise with a correlation time of %i s: the interval holds the peak of the course in %i of 30 seeds or more',
    (memory, least) => {
      let held = 0;
      for (let seed = 1; seed <= 30; seed++) {
        const chance = wandering(random(seed), 0.5, memory, 5);
        const values = (t: number) => 62 - 40 * Math.exp(-t / 300) + chance();
        const log = logOf(every(5, LOAD), { soc: { quantity: 'temperature', values } });
        const { interval } = presentAt(derive(log, contextOf({ phases: [phase('load', 0, LOAD)] })).figures, 'peak_temperature');
        const truth = 62 - 40 * Math.exp(-LOAD / 300);
        if (interval![0] <= truth && truth <= interval![1]) held++;
      }
      expect(held).toBeGreaterThanOrEqual(least);
    },
  );
});
