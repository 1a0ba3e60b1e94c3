import { describe, expect, it } from 'vitest';
import { thinned } from '../../../src/plots/thermal/thin.ts';

/** An image of a size that divides by no side of a block. */
const WIDTH = 1024;
const HEIGHT = 768;
const image = (value: (x: number, y: number) => number) => ({
  width: WIDTH,
  height: HEIGHT,
  values: Float64Array.from({ length: WIDTH * HEIGHT }, (_, index) => value(index % WIDTH, Math.floor(index / WIDTH))),
});

describe('plots/thermal/thin', () => {
  it('keeps hot pixels of every edge', () => {
    const { width, height, values } = thinned(image((x, y) => (x === WIDTH - 1 || y === HEIGHT - 1 ? 80 : 20)));
    expect(width * height).toBeLessThan(WIDTH * HEIGHT);
    expect(values[width - 1]).toBeGreaterThan(25);
    expect(values[(height - 1) * width]).toBeGreaterThan(25);
    expect(values[0]).toBe(20);
  });

  it('leaves everything where it was: a ramp is read at the same share of the width and height', () => {
    for (const along of ['x', 'y'] as const) {
      const { width, height, values } = thinned(image((x, y) => (along === 'x' ? (x + 0.5) / WIDTH : (y + 0.5) / HEIGHT)));
      const off = Array.from(values, (value, index) => {
        const share = along === 'x' ? ((index % width) + 0.5) / width : (Math.floor(index / width) + 0.5) / height;
        return Math.abs(value - share);
      });
      // Half a pixel of the image.
      expect(off.reduce((most, each) => Math.max(most, each))).toBeLessThan(0.5 / HEIGHT);
    }
  });

  it('leaves a small image as it is', () => {
    const small = { width: 100, height: 80, values: new Float64Array(8000) };
    expect(thinned(small)).toBe(small);
  });
});
