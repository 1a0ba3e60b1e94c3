import { describe, expect, test } from 'vitest';
import { wilson } from '../../../src/figures/clock/shares.ts';
import { derive } from '../../../src/figures/derive.ts';
import { contextOf, every, logOf, noise, phase, presentAt } from '../build.ts';

const LOAD = [phase('load', 0, 2000)];

function figuresOf(values: (t: number) => number, step: number | null = null) {
  const core = { quantity: 'clock' as const, values, step };
  return derive(logOf(every(1, 1999), { core }), contextOf({ phases: LOAD })).figures;
}

describe('percentiles of the clock', () => {
  test('a ramp of 1000 to 2999 MHz, shuffled, has its percentiles by definition, each within its interval', () => {
    const figures = figuresOf((t) => 1e9 + ((t * 937) % 2000) * 1e6);
    for (const [name, share] of [
      ['clock_percentile_1', 0.01],
      ['clock_percentile_5', 0.05],
      ['median_clock', 0.5],
    ] as const) {
      const { quantity, interval } = presentAt(figures, name);
      expect(Math.abs(quantity.value - (1e9 + 2e9 * share))).toBeLessThan(2e6);
      const half = 1.96 * Math.sqrt(share * (1 - share) * 2000) * 1e6;
      expect(quantity.value - interval![0]).toBeGreaterThan(0.7 * half);
      expect(quantity.value - interval![0]).toBeLessThan(1.3 * half);
      expect(interval![1] - quantity.value).toBeGreaterThan(0.7 * half);
    }
  });

  test('readings that follow each other are worth fewer: the 1st percentile of a slow wandering is absent, its median wide', () => {
    const random = noise(4);
    let wander = 0;
    const figures = figuresOf(() => {
      wander = 0.99 * wander + random();
      return 2e9 + 1e8 * wander;
    });
    expect(figures.get('clock_percentile_1')).toMatchObject({ absent: 'too-short', of: { needed: 368 } });
    const [low, high] = presentAt(figures, 'median_clock').interval!;
    expect(high - low).toBeGreaterThan(1e8);
  });

  test('noise of a constant clock is not taken for the load', () => {
    const random = noise(6);
    const [low, high] = presentAt(
      figuresOf(() => 2.4e9 + 1e7 * random(), 1e5),
      'clock_percentile_5',
    ).interval!;
    expect(low).toBeLessThan(2.4e9 - 4e6);
    expect(high).toBeGreaterThan(2.4e9);
    expect(high).toBeLessThan(2.4e9 + 2e6);
  });

  test('the steps of a clock are no noise: a tenth of the readings at a lower one', () => {
    const random = noise(8);
    const { quantity, interval } = presentAt(
      figuresOf(() => (random() > -0.4 ? 2.4e9 : 2.3e9), 1e6),
      'clock_percentile_5',
    );
    expect(quantity.value).toBe(2.3e9);
    expect(interval![1]).toBeLessThan(2.301e9);
  });

  test('a constant clock is known to its step', () => {
    const { quantity, interval } = presentAt(
      figuresOf(() => 2.4e9, 1e6),
      'clock_percentile_1',
    );
    expect(quantity.value).toBe(2.4e9);
    expect((interval![1] - interval![0]) / 1e6).toBeCloseTo(0.95, 6);
  });

  test('absent without a load phase', () => {
    const figures = derive(
      logOf(every(1, 60), { core: { quantity: 'clock', values: () => 1e9 } }),
      contextOf({ phases: [] }),
    ).figures;
    expect(figures.get('median_clock')).toMatchObject({ absent: 'no-phase' });
    expect(figures.get('clock_share')).toMatchObject({ absent: 'no-phase' });
  });
});

describe('shares of time at the steps of a clock', () => {
  test('by step where these are few: a quarter at 1.8 GHz', () => {
    const figures = figuresOf((t) => (t % 4 === 0 ? 1.8 : 2.4) * 1e9);
    expect(presentAt(figures, 'clock_share.at_1800_MHz').quantity.value).toBeCloseTo(0.25, 3);
    expect(presentAt(figures, 'clock_share.at_2400_MHz').quantity.value).toBeCloseTo(0.75, 3);
  });

  test('in classes of equal width where readings scatter, and they add to 1', () => {
    const random = noise(2);
    const shares = [...figuresOf(() => 2.4e9 + 5e8 * random())].filter(([address]) => address.startsWith('clock_share.'));
    expect(shares.length).toBeGreaterThan(4);
    expect(shares.length).toBeLessThanOrEqual(12);
    const sum = shares.reduce((total, [, figure]) => total + ('quantity' in figure ? figure.quantity.value : 0), 0);
    expect(sum).toBeCloseTo(1, 9);
  });

  // Of ten, none: the upper end is z²/(n + z²).
  test("Wilson's interval stays within 0 and 1", () => {
    const [low, high] = wilson(0, 10);
    expect(low).toBe(0);
    expect(high).toBeCloseTo(3.841459 / 13.841459, 6);
    expect(wilson(0.5, 100)[0]).toBeCloseTo(0.403832, 5);
  });
});
