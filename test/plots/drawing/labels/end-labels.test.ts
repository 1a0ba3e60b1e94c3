import { describe, expect, test } from 'vitest';
import { endLabels, marginFor } from '../../../../src/plots/drawing/labels/end-labels.ts';
import { NARROW, WIDE } from '../../../../src/plots/drawing/size.ts';
import { textWidth } from '../../../../src/plots/drawing/text-width.ts';

const area = { width: 600, height: 300, size: WIDE, lines: [] };
const end = (x: number, y: number, k: number, text: string) => ({ x, y, k, text });

describe('plots/drawing/labels/end-labels', () => {
  test('a line that ends at the edge is labelled beside it, without a leader', () => {
    const { labels, leaders } = endLabels([end(600, 120, 0, 'fast')], area);
    expect(labels).toEqual([{ x: 612, y: 120, text: 'fast', size: WIDE.font, fill: 'var(--plot-1)' }]);
    expect(leaders).toEqual([]);
  });

  test('labels of lines that end together move apart and are led to their lines', () => {
    const { labels, leaders } = endLabels([end(600, 120, 0, 'fast'), end(600, 122, 1, 'rated'), end(600, 118, 2, 'slow')], area);
    const y = labels.map((label) => label.y);
    expect(y[2]).toBeLessThan(y[0]!);
    expect(y[0]).toBeLessThan(y[1]!);
    expect(y[1]! - y[0]!).toBeGreaterThanOrEqual(WIDE.font);
    expect(leaders.map(({ stroke }) => stroke)).toEqual(['var(--plot-2)', 'var(--plot-3)']);
  });

  test('a line that ends early is labelled at its end where that place is free, else in the margin', () => {
    const early = [end(300, 100, 0, 'brisk')];
    expect(endLabels(early, area).labels[0]).toMatchObject({ x: 307, y: 100 });
    const below = { x: [0, 600], y: [102, 102] };
    expect(endLabels(early, { ...area, lines: [below] }).labels[0], 'a limit runs there').toMatchObject({
      x: 307,
      y: 100 - 0.9 * WIDE.font,
    });
    const crossing = { x: [310, 340], y: [90, 110] };
    const { labels, leaders } = endLabels(early, { ...area, lines: [crossing] });
    expect(labels[0]).toMatchObject({ x: 612 });
    expect(leaders[0], 'dotted: no reading').toMatchObject({ x: 303, x2: 609, dash: [1, 3] });
  });

  test('labels of lines that end early together do not cover each other', () => {
    const together = [end(300, 100, 0, 'brisk'), end(301, 104, 1, 'rated'), end(300, 102, 2, 'slow')];
    const { labels, leaders } = endLabels(together, area);
    expect(labels).toMatchObject([
      { text: 'brisk', x: 307, y: 100 },
      { text: 'rated', x: 308, y: 104 + 0.9 * WIDE.font },
      { text: 'slow', x: 612 },
    ]);
    expect(leaders).toMatchObject([{ stroke: 'var(--plot-3)', dash: [1, 3] }]);
  });

  test('a label at the end of a line along the upper edge stays below the heading', () => {
    const top = [end(300, 0, 0, 'brisk')];
    const below = { x: [302, 400], y: [6, 6] };
    const { labels } = endLabels(top, { ...area, lines: [below] });
    expect(labels, 'in the margin, since above is the heading').toMatchObject([{ text: 'brisk', x: 612 }]);
    expect(labels[0]!.y - WIDE.font / 2).toBeGreaterThanOrEqual(-WIDE.font / 2);
  });

  test('the margin is as wide as the widest label, and a long one is broken into lines', () => {
    expect(marginFor(['fast'], WIDE)).toBeCloseTo(textWidth('fast', WIDE.font) + 14, -0.5);
    const long = 'fast setting of the second specimen';
    expect(marginFor([long], NARROW)).toBeLessThan(0.28 * NARROW.width + 20);
    expect(endLabels([end(600, 50, 0, long)], { ...area, size: NARROW }).labels[0]!.text).toHaveLength(2);
    expect(marginFor([], WIDE)).toBe(8);
  });
});
