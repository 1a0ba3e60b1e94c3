import { describe, expect, test } from 'vitest';
import { limitMarks, limitsOf } from '../../../../src/plots/drawing/labels/limit-marks.ts';
import { WIDE } from '../../../../src/plots/drawing/size.ts';
import { niceScale } from '../../../../src/plots/drawing/ticks.ts';

const area = { width: 600, height: 300, size: WIDE, lines: [] };
const scale = niceScale(30, 90, 6);

describe('plots/drawing/labels/limit-marks', () => {
  test('a limit that all lines share is drawn once and belongs to nobody', () => {
    const limits = limitsOf([
      { label: 'rated', limit: 80 },
      { label: 'fast', limit: 80 },
    ]);
    expect(limits).toEqual([{ value: 80, owners: [] }]);
    const { rules, labels } = limitMarks(limits, '°C', scale, area);
    expect(rules).toMatchObject([{ x: 0, x2: 600, y: expect.closeTo(50, 9), y2: expect.closeTo(50, 9) }]);
    expect(labels.map(({ text }) => text)).toEqual(['throttle limit 80 °C']);
  });

  test('limits that differ say whose they are', () => {
    const limits = limitsOf([{ label: 'soc', limit: 79.5 }, { label: 'ssd' }, { label: 'hub', limit: 70 }]);
    const { labels } = limitMarks(limits, '°C', scale, area);
    expect(labels.map(({ text }) => text)).toEqual(['throttle limit 79.5 °C, soc', 'throttle limit 70 °C, hub']);
  });

  test('a limit off the scale is named and not drawn', () => {
    const { rules, labels } = limitMarks([{ value: 120, owners: [] }], '°C', scale, area);
    expect(rules).toEqual([]);
    expect(labels[0]!.text).toBe('throttle limit 120 °C (off the scale)');
  });

  test('the name keeps clear of the lines', () => {
    const right = { x: [400, 600], y: [42, 42] };
    expect(limitMarks([{ value: 80, owners: [] }], '°C', scale, { ...area, lines: [right] }).labels[0]!.x).toBe(4);
  });
});
