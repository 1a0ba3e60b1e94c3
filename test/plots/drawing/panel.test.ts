import { describe, expect, test } from 'vitest';
import { frameOf, type PanelContent, panelSpec } from '../../../src/plots/drawing/panel.ts';
import { WIDE } from '../../../src/plots/drawing/size.ts';
import { niceScale } from '../../../src/plots/drawing/ticks.ts';

const HEIGHT = 300;
const time = niceScale(0, 60, 6);
const line = (k: number, label: string, minutes: number, value: number) => ({
  k,
  label,
  x: Float64Array.of(0, minutes),
  y: Float64Array.of(value, value),
  segments: [{ start: 0, end: 2 }],
  over: null,
});

/** A panel of two level lines, the first of which ends at half of the time. */
function panel(limits: PanelContent['limits'], [first, second] = [60, 40]) {
  const content: PanelContent = {
    heading: 'Temperature (°C)',
    lines: [line(0, 'brisk', 30, first!), line(1, 'rated', 60, second!)],
    y: niceScale(30, 90, 6),
    stepped: false,
    labelled: true,
    limits,
    unit: '°C',
    named: [],
    shaded: [],
  };
  const frame = frameOf([content], [HEIGHT], time, WIDE);
  return { frame, layers: panelSpec(content, frame, HEIGHT, null).layer as Layer[] };
}

interface Layer {
  readonly data?: { readonly values: readonly { readonly text?: string; readonly x: number; readonly y: number }[] };
}

/** Where a panel has a text, px. */
function placeOf(layers: readonly Layer[], text: string): { readonly x: number; readonly y: number } {
  return layers.flatMap(({ data }) => data?.values ?? []).find((value) => value.text === text)!;
}

describe('plots/drawing/panel', () => {
  test('lines that run apart are named beside themselves, each nearer to its own, and no room is kept behind them', () => {
    const { frame, layers } = panel([]);
    expect(frame.right).toBeLessThan(WIDE.font);
    const [brisk, rated] = [placeOf(layers, 'brisk'), placeOf(layers, 'rated')];
    const [own, other] = [HEIGHT / 2, (HEIGHT * 5) / 6];
    for (const [at, near, far] of [
      [brisk, own, other],
      [rated, other, own],
    ] as const) {
      expect(Math.abs(at.y - near)).toBeGreaterThanOrEqual(WIDE.font / 2);
      expect(Math.abs(at.y - near)).toBeLessThan(Math.abs(at.y - far));
    }
  });

  test('a name keeps clear of a limit', () => {
    const limit = HEIGHT / 2 - 12;
    const { y } = placeOf(panel([{ value: 62.4, owners: [] }]).layers, 'brisk');
    expect(Math.abs(y - limit)).toBeGreaterThan(WIDE.font / 2);
  });

  test('lines that run together are named behind their ends', () => {
    const { frame, layers } = panel([], [50, 50.2]);
    expect(frame.right).toBeGreaterThan(2 * WIDE.font);
    expect(placeOf(layers, 'rated').x).toBeGreaterThan(frame.width);
  });
});
