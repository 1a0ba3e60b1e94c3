import { describe, expect, test } from 'vitest';
import { lineLabels } from '../../../../src/plots/drawing/labels/line-labels.ts';
import { WIDE } from '../../../../src/plots/drawing/size.ts';

const WIDTH = 600;
/** A line that rises from 280 px to `top` within the first third, and stays there. */
const plateau = (top: number) => {
  const x = Array.from({ length: 61 }, (_, i) => i * 10);
  return { x, y: x.map((at) => (at < 200 ? 280 - ((280 - top) * at) / 200 : top)) };
};
const area = (...tops: number[]) => ({ width: WIDTH, height: 300, size: WIDE, lines: tops.map(plateau) });
const named = (...tops: number[]) =>
  tops.map((top, k) => ({ line: plateau(top), k, texts: [`run ${k}, steady at ${top} px`, `run ${k}`] }));

describe('plots/drawing/labels/line-labels', () => {
  test('labels stand on the plateau, where lines are apart, not where they meet', () => {
    const labels = lineLabels(named(60, 140), area(60, 140))!;
    for (const { x } of labels) expect(x).toBeGreaterThan(200);
    expect(Math.abs(labels[0]!.y - 60)).toBeLessThan(20);
    expect(Math.abs(labels[1]!.y - 140)).toBeLessThan(20);
  });

  test('the fuller wording is taken where it finds a place, else the name alone', () => {
    expect(lineLabels(named(60, 140), area(60, 140))![0]!.text).toBe('run 0, steady at 60 px');
    const long = [{ line: plateau(60), k: 0, texts: ['m'.repeat(80), 'run 0'] }];
    expect(lineLabels(long, area(60))![0]!.text).toBe('run 0');
  });

  test('there are none where two lines run side by side too near to tell whose name it is', () => {
    expect(lineLabels(named(60, 64, 68), area(60, 64, 68))).toBeNull();
  });

  test('nothing is covered twice', () => {
    const everywhere = [{ left: 0, right: WIDTH, top: 0, bottom: 300 }];
    expect(lineLabels(named(60), area(60), everywhere)).toBeNull();
  });
});
