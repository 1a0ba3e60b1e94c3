import { describe, expect, it } from 'vitest';
import { readingStep } from '../../../src/intake/columns/resolution.ts';
import { random } from '../../simulator/random.ts';

const values = (count: number, of: (k: number) => number) => Float64Array.from({ length: count }, (_, k) => of(k));

const pulses = (low: number, high: number) => values(200, (k) => (k % 20 < 10 ? low : high));

describe('intake/columns/resolution', () => {
  it('finds the step of a sensor that is coarser than its digits', () => {
    expect(
      readingStep(
        values(200, (k) => 40 + ((k * 7) % 31) * 0.5),
        1,
      ),
    ).toBe(0.5);
    expect(
      readingStep(
        values(200, (k) => Math.round((48 + ((k * 7) % 31) * 0.487) * 1000) / 1000),
        3,
      ),
    ).toBe(0.487);
  });

  it('takes the last decimal where there are only a few levels that share nothing', () => {
    expect(
      readingStep(
        values(50, (k) => (k % 2 === 0 ? 12.13 : 12.61)),
        2,
      ),
    ).toBe(0.01);
    expect(
      readingStep(
        values(50, () => 12.1),
        2,
      ),
    ).toBe(0.01);
    expect(
      readingStep(
        values(50, () => 12),
        1,
      ),
    ).toBe(0.1);
    expect(
      readingStep(
        values(50, (k) => (k < 25 ? 8 : 8.6)),
        1,
      ),
    ).toBe(0.1);
    expect(
      readingStep(
        values(29, (k) => (k % 2 === 0 ? 2 : 8)),
        2,
      ),
    ).toBe(0.01);
  });

  // Meters whose step is coarser than what they write: between two levels they never show another.
  it.each([
    [0.5, 1, [2, 8, 8.5]],
    [0.25, 2, [2, 8.25, 8.5]],
    [0.2, 1, [8.2, 8.4]],
    [0.05, 2, [2, 8.3, 8.35, 8.4]],
    [1, 1, [2, 8, 9]],
    [1, 2, [2, 8]],
    [10, -0, [120, 130]],
  ])('a step of %f is told by what is written with %i decimals', (step, decimals, levels) => {
    expect(
      readingStep(
        values(200, (k) => levels[(k >> 1) % levels.length]!),
        decimals,
        true,
      ),
    ).toBe(step);
  });

  it('a step is a fifth of the largest reading at most: a load that comes and goes between two levels is none', () => {
    expect(readingStep(pulses(2, 8), 1, true)).toBe(1);
    expect(readingStep(pulses(2.1, 8.3), 1, true)).toBe(0.1);
  });

  it('what is no meter, and a meter that stands at zero, tell none by two levels', () => {
    expect(readingStep(pulses(50, 60), 1)).toBe(0.1);
    expect(readingStep(pulses(0, 3000), 0)).toBe(1);
    expect(readingStep(pulses(0, 2.55), 2, true)).toBe(0.01);
  });

  // A meter of 0.01 W whose readings stand at so many levels, any of them as likely as another.
  it.each([2, 3, 4, 6])('%i levels at random are hardly ever taken for a coarser step', (count) => {
    const chance = random(count);
    let coarser = 0;
    for (let trial = 0; trial < 2000; trial++) {
      const levels = Array.from({ length: count }, () => Math.round(100 + 900 * chance.uniform()) / 100);
      if (
        readingStep(
          values(40, (k) => levels[(k >> 3) % count]!),
          2,
          true,
        )! > 0.01
      )
        coarser++;
    }
    expect(coarser).toBeLessThanOrEqual(2000 * 0.06);
  });

  it('leaves missing readings out', () => {
    expect(
      readingStep(
        values(100, (k) => (k % 3 === 0 ? Number.NaN : (k % 40) / 10)),
        1,
      ),
    ).toBe(0.1);
    expect(
      readingStep(
        values(3, () => Number.NaN),
        1,
      ),
    ).toBeNull();
    expect(readingStep(new Float64Array(0), 1)).toBeNull();
  });

  it('sorts where readings have too many digits to be marked', () => {
    expect(
      readingStep(
        values(100, (k) => k * 0.123456789012),
        12,
      ),
    ).toBeCloseTo(0.123456789012, 10);
  });
});
