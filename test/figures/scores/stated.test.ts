/** Clock and power that a table of scores states; scores by the watt; drift; outliers. All invented. */
import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { readScores } from '../../../src/figures/scores/read-scores.ts';
import { interval95, standardUncertainty } from '../../../src/quantities/uncertainty.ts';
import { random } from '../../simulator/random.ts';
import { expectNear } from '../../statistics/near.ts';
import { contextOf, every, logOf, presentAt } from '../build.ts';
import { absentAt } from '../comparison/runs.ts';
import { correlated } from './correlated.ts';

function read(table: string) {
  return readScores(new TextEncoder().encode(table), 'data/scores.csv');
}

function figuresOf(rows: readonly string[], better = 'higher', unit = 'points') {
  const lines = rows.map((row, k) => `Mix,${k + 1},${row.split(',')[0]},${unit},${better},${row.split(',').slice(1).join(',')}`);
  const { scores, problems } = read(`test,repeat,value,unit,better,start,end,clock,power\n${lines.join('\n')}\n`);
  expect(problems).toEqual([]);
  return derive(logOf(every(1, 10), {}), contextOf(), { scores }).figures;
}

describe('clock and power as a table states them', () => {
  const figures = figuresOf([
    '98,1000 s,1100 s,2.40 GHz,8.0 W',
    '102,1200 s,1300 s,2.42 GHz,8.2 W',
    '100,1400 s,1500 s,2.41 GHz,7.8 W',
  ]);

  test('the means, of a delivered clock, with the scatter of the repeats', () => {
    const clock = presentAt(figures, 'score_clock.mix');
    expectNear(clock.quantity.value, 2.41e9, 1e-12);
    expectNear(standardUncertainty(clock.quantity)!, 0.01e9 / Math.sqrt(3), 1e-9);
    expect(clock.of).toMatchObject({ clock: 'delivered', as_stated: true, n: 3 });
    expect(clock.from).toMatchObject({ columns: ['clock'], file: 'data/scores.csv' });
    expectNear(presentAt(figures, 'score_power.mix').quantity.value, 8, 1e-12);
    expect(presentAt(figures, 'score_power.mix').quantity.repeatabilityOnly).toBe(true);
  });

  test('energy is power times time; the score by the watt and by the joule', () => {
    expectNear(presentAt(figures, 'energy_per_task.mix').quantity.value, 800, 1e-12);
    expectNear(presentAt(figures, 'score_per_watt.mix').quantity.value, 12.5, 1e-12);
    expectNear(presentAt(figures, 'score_per_joule.mix').quantity.value, 0.125, 1e-12);
  });

  test('where less is better a share of it says nothing', () => {
    const timed = figuresOf(['98,0 s,98 s,2.4 GHz,8 W', '100,200 s,300 s,2.4 GHz,8 W'], 'lower', 's');
    expect(absentAt(timed, 'score_per_watt.mix').why).toContain('less is better');
  });

  test.each([
    ['2.4', 'the clock `2.4`', 'a clock with its unit such as 2.41 GHz, or an empty cell'],
    ['2.4 W', 'the clock `2.4 W`', 'a clock with its unit such as 2.41 GHz, or an empty cell'],
    ['2.4 ± 0.1 GHz', 'the clock `2.4 ± 0.1 GHz`', 'a clock with its unit such as 2.41 GHz, or an empty cell'],
  ])('%s is refused where it stands', (cell, found, expected) => {
    const { problems } = read(`test,value,unit,better,clock\nMix,98,points,higher,${cell}\n`);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ rule: 'score-stated', found, expected });
  });
});

describe('repeats of a score', () => {
  test('median, least and greatest go along; an outlier is named and kept', () => {
    const figures = figuresOf(['100,,,,', '101,,,,', '99,,,,', '100.5,,,,', '99.5,,,,', '140,,,,']);
    const { of, quantity } = presentAt(figures, 'score.mix');
    expect(of).toMatchObject({ n: 6, least: 99, greatest: 140, median: 100.25, outlier: '6' });
    expectNear(quantity.value, 640 / 6, 1e-12);
    expect(presentAt(figuresOf(['100,,,,', '101,,,,', '99,,,,']), 'score.mix').of).not.toHaveProperty('outlier');
  });

  // Values on a straight line, by hand: 1 more with each repeat, of a mean of 102.
  test('the drift is the slope as a share of the mean', () => {
    const drift = presentAt(figuresOf(['100,,,,', '101,,,,', '102,,,,', '103,,,,', '104,,,,']), 'score_drift.mix').quantity;
    expectNear(drift.value, 1 / 102, 1e-12);
    const [low, high] = interval95(drift)!;
    expect(low).toBeGreaterThan(0);
    expect(high - low).toBeLessThan(0.005);
    expect(absentAt(figuresOf(['100,,,,', '101,,,,']), 'score_drift.mix').absent).toBe('too-short');
  });

  test('the drift of 30 repeats that each go with the one before has room for it', () => {
    let held = 0;
    for (let seed = 1; seed <= 200; seed++) {
      const chance = random(seed);
      const rows = correlated(30, 0.7, () => chance.normal()).map((each) => `${(100 + each).toFixed(2)},,,,`);
      const [low, high] = interval95(presentAt(figuresOf(rows), 'score_drift.mix').quantity)!;
      if (low <= 0 && 0 <= high) held++;
    }
    // Without it, 115; independent repeats, 190. So few repeats don't show all of it.
    expect(held).toBeGreaterThanOrEqual(140);
  });
});
