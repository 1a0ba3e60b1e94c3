import { describe, expect, test } from 'vitest';
import { placeLabels } from '../../../../src/plots/drawing/labels/sign-labels.ts';

const area = { width: 200, height: 100, font: 12, taken: [], lines: [] };
const sign = (x: number, y: number, text = 'passed') => ({ x, y, text, fill: 'var(--plot-3)' });

describe('plots/drawing/labels/sign-labels', () => {
  test('to the right where there is room, else to the left', () => {
    const [inside, edge] = placeLabels([sign(50, 50), sign(195, 20)], area);
    expect([inside!.align, edge!.align]).toEqual(['left', 'right']);
    expect(inside!.x).toBeGreaterThan(50);
  });

  test('away from a line that would run through it', () => {
    const line = { x: 0, x2: 200, y: 50, y2: 50, stroke: 'var(--plot-limit)' };
    const [label] = placeLabels([sign(50, 50)], { ...area, lines: [line] });
    expect(Math.abs(label!.y - 50)).toBeGreaterThan(6);
  });

  test('away from words that stand there already and from the next sign', () => {
    const taken = [{ x: 60, y: 50, text: 'rated clock', size: 12, fill: 'black' }];
    const [label] = placeLabels([sign(50, 50)], { ...area, taken });
    expect(label!.align === 'left' && label!.y === 50).toBe(false);
    const [first] = placeLabels([sign(50, 50), sign(70, 50)], area);
    expect(first!.align === 'left' && first!.y === 50).toBe(false);
  });
});
