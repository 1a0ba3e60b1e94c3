import { describe, expect, it } from 'vitest';
import { condenser } from '../../src/intake/condense.ts';

/** Integral over time by the trapezoidal rule. */
function integral(seconds: ArrayLike<number>, values: ArrayLike<number>): number {
  let sum = 0;
  for (let k = 1; k < seconds.length; k++) sum += ((values[k]! + values[k - 1]!) / 2) * (seconds[k]! - seconds[k - 1]!);
  return sum;
}

const CHANNELS = [{ quantity: 'power' }, { quantity: 'throttle_flag' }] as const;
const power = (row: number) => 5 + 3 * Math.sin(row / 700) + (row % 7) / 10;

function condensed(rows: number, most: number, gapAt = -1, keep = most) {
  const into = condenser(CHANNELS, { keep, leave: most });
  const at = (row: number) => row * 0.5 + (gapAt >= 0 && row >= gapAt ? 100 : 0);
  for (let row = 0; row < rows; row++)
    into.add(
      row + 2,
      at(row),
      (channel) => (channel === 0 ? power(row) : row === 4321 ? 2 ** 40 + 4 : row % 1000 === 0 ? 1 : 0),
      row === gapAt,
    );
  return { ...into.finish(), at };
}

describe('a log with more rows than are kept', () => {
  it('keeps every row where all fit', () => {
    const { seconds, values, lines, condensed: told } = condensed(100, 200);
    expect(told).toBeUndefined();
    expect(Array.from(seconds)).toEqual(Array.from({ length: 100 }, (_, row) => row * 0.5));
    expect(Array.from(values[0]!)).toEqual(Array.from({ length: 100 }, (_, row) => power(row)));
    expect(lines[99]).toBe(101);
  });

  it('keeps first and last row, the integral and every bit of a flag', () => {
    const rows = 20_000;
    const { seconds, values, lines, condensed: told, at } = condensed(rows, 500);
    expect(told).toEqual({ rows, longest: 64 });
    expect(seconds.length).toBeLessThan(500);
    expect([seconds[0], seconds.at(-1), lines[0], lines.at(-1)]).toEqual([0, (rows - 1) * 0.5, 2, rows + 1]);
    const all = Array.from({ length: rows }, (_, row) => row);
    const whole = integral(all.map(at), all.map(power));
    expect(Math.abs(integral(seconds, values[0]!) / whole - 1)).toBeLessThan(2e-4);
    const bits = values[1]!.filter((value) => value > 1);
    expect(bits.some((value) => value === 2 ** 40 + 4 || value === 2 ** 40 + 5)).toBe(true);
    expect(values[1]!.filter((value) => value % 2 === 1).length).toBe(20);
  });

  it('keeps every row up to one limit, and leaves fewer of one row more', () => {
    const [kept, left] = [condensed(3998, 500, -1, 4000), condensed(4000, 500, -1, 4000)];
    expect(kept.condensed).toBeUndefined();
    expect(kept.seconds.length).toBe(3998);
    expect(left.condensed).toEqual({ rows: 4000, longest: 16 });
    expect(left.seconds.length).toBeLessThan(500);
    const all = Array.from({ length: 4000 }, (_, row) => row);
    expect(Math.abs(integral(left.seconds, left.values[0]!) / integral(all.map(left.at), all.map(power)) - 1)).toBeLessThan(2e-3);
  });

  it('joins nothing over a gap', () => {
    const { seconds, at } = condensed(20_000, 500, 7001);
    const within = Array.from(seconds).filter((second) => second > at(7000) && second < at(7001));
    expect(within).toEqual([]);
  });

  it('stays bounded where there is a gap before every row', () => {
    const into = condenser(CHANNELS, { keep: 64, leave: 64 });
    for (let row = 0; row < 5000; row++) into.add(row, row * 60, () => 1, true);
    expect(into.finish().lines.length).toBeLessThan(64);
  });

  it('gives a row without a reading no weight', () => {
    const cycle = [20, Number.NaN, Number.NaN, Number.NaN, 2, 2, 2, 2];
    const into = condenser([{ quantity: 'power' }], { keep: 64, leave: 64 });
    for (let row = 0; row < 4096; row++) into.add(row + 2, row * 0.5, () => cycle[row % 8]!, false);
    const inner = Array.from(into.finish().values[0]!).slice(1, -3);
    for (const mean of inner) expect(Math.abs(mean - 28 / 5)).toBeLessThan(0.2);
  });

  it('says whether rows followed each other at one step, gaps aside', () => {
    const evenOf = (step: (row: number) => number, gap: (row: number) => boolean = () => false) => {
      const into = condenser([{ quantity: 'power' }], { keep: 64, leave: 64 });
      let at = 0;
      for (let row = 0; row < 5000; row++) {
        at += step(row);
        into.add(row + 2, at, () => 1, gap(row));
      }
      return into.finish().even;
    };
    expect(evenOf((row) => 0.5 + (row % 3) / 100)).toBe(true);
    expect(
      evenOf(
        (row) => (row === 2000 ? 600 : 0.5),
        (row) => row === 2000,
      ),
    ).toBe(true);
    expect(evenOf((row) => (row % 10 < 6 ? 0.1 : 0.5))).toBe(false);
    expect(evenOf((row) => (row < 2500 ? 30 : 1))).toBe(false);
  });
});
