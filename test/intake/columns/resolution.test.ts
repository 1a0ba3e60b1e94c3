import { describe, expect, it } from 'vitest';
import { readingStep } from '../../../src/intake/columns/resolution.ts';

const values = (count: number, of: (k: number) => number) => Float64Array.from({ length: count }, (_, k) => of(k));

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

  it('takes the last decimal where there are only a few levels', () => {
    expect(
      readingStep(
        values(50, (k) => (k % 2 === 0 ? 12.1 : 12.6)),
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
        values(50, (k) => (k % 2 === 0 ? 600e6 : 2400e6)),
        -6,
      ),
    ).toBe(1e6);
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
