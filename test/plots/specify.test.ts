import { describe, expect, test } from 'vitest';
import { NARROW, WIDE } from '../../src/plots/drawing/size.ts';
import { specify } from '../../src/plots/specify.ts';
import { channel, exactly, logOf, request, subject } from './subjects.ts';

/** Five readings of one run: small enough to be read in a snapshot. */
function tiny() {
  const base = subject('rated', { load: 60, idle: 30, coolDown: 30 });
  const log = logOf([0, 30, 60, 90, 120], [channel('soc', 'temperature', '°C', [22, 22.5, 50, 61, 40], 0.1)], 30);
  return { ...base, log, context: { ...base.context, device: { id: 'larch-2', throttleAt: { soc: exactly(70, '°C') } } } };
}

interface Layer {
  readonly mark: { readonly type: string };
  readonly data: { readonly values: readonly object[] };
  readonly encoding: Readonly<Record<string, { readonly scale?: { readonly domain?: readonly number[] } }>>;
}

/** What is drawn, one line a datum, in place of the whole specification. */
function outline(spec: Readonly<Record<string, unknown>>): string {
  const panels = spec.vconcat as { readonly width: number; readonly height: number; readonly layer: readonly Layer[] }[];
  const told = panels.flatMap(({ width, height, layer }) => [
    `panel ${width} × ${height}`,
    ...layer.flatMap(({ mark, data, encoding }) => [
      `${mark.type} ${['x', 'y'].map((axis) => JSON.stringify(encoding[axis]?.scale?.domain ?? 'px')).join(' ')}`,
      ...data.values.map((value) => `  ${Object.values(value).map(rounded).join(' ')}`),
    ]),
  ]);
  return told.join('\n');
}

const rounded = (value: unknown) => (typeof value === 'number' ? String(Number(value.toFixed(2))) : String(value));

describe('plots/specify', () => {
  test('the specification of a small trace', () => {
    const run = tiny();
    expect(outline(specify(request('trace', [run]), [run], WIDE).spec!)).toMatchInlineSnapshot(`
      "panel 834 × 268
      rect "px" "px"
        208.5 0 625.5 268
        -20 844 0 0
      line [-30,90] [20,80]
        -30 22 0 0
        0 22.5 0 0
        30 50 0 0
        60 61 0 0
        90 40 0 0
      rule "px" "px"
        1 1,0 1 207.5 -3.5 -3.5 var(--plot-soft)
        1 1,0 209.5 624.5 -3.5 -3.5 var(--plot-soft)
        1 1,0 626.5 833 -3.5 -3.5 var(--plot-soft)
        1.25 2,3 0 834 44.67 44.67 var(--plot-limit)
      point [-30,90] [20,80]
      text "px" "px"
        left -20 -34.5 Temperature (°C) 15 var(--plot-ink)
        center 104.25 -13.4 idle 14 var(--plot-soft)
        center 417 -13.4 load 14 var(--plot-soft)
        center 729.75 -13.4 cool-down 14 var(--plot-soft)
        left 723.49 35.57 throttle limit 70 °C 14 var(--plot-limit)
        center 173.92 244.33 rated 15 var(--plot-1)"
    `);
  });

  test('a narrow drawing has its own width, fewer ticks and fewer points', () => {
    const run = subject('rated', { step: 1 });
    const size = (which: typeof WIDE) => JSON.stringify(specify(request('trace', [run]), [run], which).spec).length;
    expect(size(NARROW)).toBeLessThan(size(WIDE));
  });

  test('a request with errors has no specification', () => {
    const run = tiny();
    expect(specify(request('trace', [run], ['nope']), [run], WIDE).spec).toBeNull();
  });
});
