import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dodge } from '../../../../src/plots/drawing/labels/dodge.ts';

const labels = fc.array(fc.record({ at: fc.double({ min: 0, max: 300, noNaN: true }), size: fc.integer({ min: 8, max: 30 }) }), {
  minLength: 1,
  maxLength: 8,
});

describe('plots/drawing/labels/dodge', () => {
  test('labels never overlap, keep their order, and stay in bounds where there is room', () => {
    fc.assert(
      fc.property(labels, (all) => {
        const sizes = all.map(({ size }) => size);
        const placed = dodge(
          all.map(({ at }) => at),
          sizes,
          0,
          300,
        );
        const order = [...all.keys()].sort((a, b) => all[a]!.at - all[b]!.at || a - b);
        order.slice(1).forEach((index, k) => {
          const before = order[k]!;
          expect(placed[index]! - placed[before]!).toBeGreaterThanOrEqual((sizes[index]! + sizes[before]!) / 2 - 1e-9);
        });
        expect(placed[order[0]!]! - sizes[order[0]!]! / 2).toBeGreaterThanOrEqual(-1e-9);
        expect(placed[order.at(-1)!]! + sizes[order.at(-1)!]! / 2).toBeLessThanOrEqual(300 + 1e-9);
      }),
    );
  });

  test('labels with room stay where they are wanted', () => {
    expect(dodge([20, 200, 100], [10, 10, 10], 0, 300)).toEqual([20, 200, 100]);
  });

  test('two that collide move apart equally, the least sum of squares', () => {
    expect(dodge([100, 100], [20, 20], 0, 300)).toEqual([90, 110]);
    expect(dodge([100, 104, 250], [20, 20, 20], 0, 300)).toEqual([92, 112, 250]);
  });

  test('no label, no place', () => {
    expect(dodge([], [], 0, 10)).toEqual([]);
  });
});
