/** Sustained scores: closed forms, and the share of simulated soaks whose interval holds the truth. */
import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { readScores } from '../../../src/figures/scores/read-scores.ts';
import { interval95 } from '../../../src/quantities/uncertainty.ts';
import { random } from '../../simulator/random.ts';
import { contextOf, every, logOf, presentAt } from '../build.ts';
import { correlated } from './correlated.ts';

/** A soak of repeats of three minutes, one after the other. */
function figuresOf(values: readonly number[], better = 'higher', timed = true, each = 180) {
  const rows = values.map((value, k) => `mix,${value},points,${better}${timed ? `,${each * k} s,${each * (k + 1)} s` : ''}`);
  const text = `test,value,unit,better${timed ? ',start,end' : ''}\n${rows.join('\n')}\n`;
  const { scores, problems } = readScores(new TextEncoder().encode(text), 'data/scores.csv');
  expect(problems).toEqual([]);
  return derive(logOf(every(1, 100), {}), contextOf(), { scores }).figures;
}

describe('sustained score', () => {
  test('of 100 points and then 80 is 0.8, whichever way is better', () => {
    const slower = [100.1, 99.9, 100, 90, 89, 91, 80.1, 79.9, 80];
    const { quantity, of } = presentAt(figuresOf(slower), 'sustained_score.mix');
    expect(quantity).toMatchObject({ unit: '1' });
    expect(quantity.value).toBeCloseTo(0.8, 12);
    expect(of).toMatchObject({ averaging: 'last 3 repeats over the first 3', n: 9 });
    const times = [80, 80.1, 79.9, 90, 89, 91, 100.1, 99.9, 100];
    expect(presentAt(figuresOf(times, 'lower'), 'sustained_score.mix').quantity.value).toBeCloseTo(0.8, 12);
  });

  test('is absent with few repeats or a short soak, and not listed without times', () => {
    expect(figuresOf([100, 99, 98, 97, 96]).get('sustained_score.mix')).toMatchObject({
      absent: 'too-short',
      why: 'It takes 6 repeats with times to tell first from last; mix has 5.',
    });
    expect(figuresOf([100, 99, 98, 97, 96, 95], 'higher', true, 60).get('sustained_score.mix')).toMatchObject({
      absent: 'too-short',
    });
    expect(figuresOf([100, 99, 98, 97, 96, 95], 'higher', false).has('sustained_score.mix')).toBe(false);
  });

  // 95 % of 400, less three standard deviations of such a count.
  test.each([7, 12, 30])('of %i repeats that scatter by a hundredth the interval holds the truth', (count) => {
    let held = 0;
    for (let seed = 1; seed <= 400; seed++) {
      const chance = random(seed);
      const values = Array.from({ length: count }, (_, k) =>
        Number(((k < count / 2 ? 1000 : 850) * (1 + 0.01 * chance.normal())).toFixed(1)),
      );
      const { quantity, interval } = presentAt(figuresOf(values), 'sustained_score.mix');
      expect(interval).toBeUndefined();
      const [low, high] = interval95(quantity)!;
      if (low <= 0.85 && 0.85 <= high) held++;
    }
    expect(held).toBeGreaterThanOrEqual(367);
  });

  test('of 30 repeats that each go with the one before the interval has room for it', () => {
    let held = 0;
    for (let seed = 1; seed <= 200; seed++) {
      const chance = random(seed);
      const off = correlated(30, 0.7, () => chance.normal());
      const values = off.map((each, k) => Number(((k < 15 ? 1000 : 850) * (1 + 0.01 * each)).toFixed(1)));
      const [low, high] = interval95(presentAt(figuresOf(values), 'sustained_score.mix').quantity)!;
      if (low <= 0.85 && 0.85 <= high) held++;
    }
    // Without it, 115; independent repeats, 190. So few repeats don't show all of it.
    expect(held).toBeGreaterThanOrEqual(140);
  });
});
