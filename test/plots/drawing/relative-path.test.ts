import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { relativePath } from '../../../src/plots/drawing/relative-path.ts';

/** The points of a path of M, L and l, as a browser reads them (SVG 2, section 9.3: a number may follow another without a blank where a sign or point parts them). */
function pointsOf(d: string): string[] {
  const points: string[] = [];
  let [x, y] = [0, 0];
  for (const [, command, rest] of d.matchAll(/([MLl])([^MLl]*)/g)) {
    const numbers = rest!.match(/-?(?:\d+\.?\d*|\.\d+)/g)!.map((text) => Math.round(Number(text) * 10));
    for (let i = 0; i < numbers.length; i += 2) {
      const [a, b] = [numbers[i]!, numbers[i + 1]!];
      [x, y] = command === 'l' ? [x + a, y + b] : [a, b];
      points.push(`${x} ${y}`);
    }
  }
  return points;
}

describe('plots/drawing/relative-path', () => {
  test('steps from point to point, a stretch after a stretch', () => {
    expect(relativePath('M10,20L11,19.5L12,19M40,5L40.5,5')).toBe('M10,20l1-.5 1-.5M40,5l.5,0');
  });

  test('a path with curves or closed shapes is left as it is', () => {
    for (const d of ['M4.7,0A4.7,4.7,0,1,1,-4.7,0', 'M0,0h655v300h-655Z', 'M0,0L1,1L0,1Z', '']) expect(relativePath(d)).toBe(d);
  });

  test('it goes through the same points', () => {
    const tenth = fc.integer({ min: -9999, max: 9999 }).map((n) => n / 10);
    const point = fc.tuple(fc.constantFrom('M', 'L', 'L', 'L'), tenth, tenth);
    fc.assert(
      fc.property(fc.array(point, { minLength: 1, maxLength: 30 }), (points) => {
        const d = points.map(([command, x, y], i) => `${i === 0 ? 'M' : command}${x},${y}`).join('');
        expect(pointsOf(relativePath(d))).toEqual(pointsOf(d));
      }),
    );
  });
});
