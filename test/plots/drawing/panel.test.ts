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

/** A panel of two lines, the first of which ends at half of the time, at 60. */
function panel(limits: PanelContent['limits']) {
  const content: PanelContent = {
    heading: 'Temperature (°C)',
    lines: [line(0, 'brisk', 30, 60), line(1, 'rated', 60, 40)],
    y: niceScale(30, 90, 6),
    stepped: false,
    labelled: true,
    limits,
    unit: '°C',
    named: [],
    shaded: [],
  };
  const frame = frameOf([content], time, WIDE);
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
  test('a line that ends early is labelled at its end, level with it where nothing runs there', () => {
    const { frame, layers } = panel([]);
    const { x, y } = placeOf(layers, 'brisk');
    expect(x).toBeCloseTo(frame.width / 2 + 7, 6);
    expect(y).toBeCloseTo(HEIGHT / 2, 6);
  });

  test('its label keeps clear of a limit', () => {
    const { y } = placeOf(panel([{ value: 60, owners: [] }]).layers, 'brisk');
    expect(Math.abs(y - HEIGHT / 2)).toBeGreaterThan(WIDE.font / 2);
  });
});
