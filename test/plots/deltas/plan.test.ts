import { describe, expect, test } from 'vitest';
import { planDeltas } from '../../../src/plots/deltas/plan.ts';
import { inkOf } from '../../../src/plots/drawing/palette.ts';
import { NARROW, WIDE } from '../../../src/plots/drawing/size.ts';
import { comparison, spent } from '../comparisons.ts';
import { drawable, partsOf } from '../plan-parts.ts';

const THREE = comparison({
  base: { more: spent(5, 40) },
  more: { more: spent(7.5, 52) },
  less: { more: spent(4, 40.1) },
});

describe('plots/deltas/plan', () => {
  test.each([WIDE, NARROW])('$name: a panel each for power and rise, signs at the differences, the reference at zero', (size) => {
    const [power, rise] = partsOf(drawable(planDeltas(THREE)), size);
    expect(power!.signs.map(({ x }) => x)).toEqual([2.5, -1].map((watts) => expect.closeTo(power!.xOf(watts), 6)));
    expect(rise!.signs.map(({ x }) => x)).toEqual([12, 0.1].map((kelvin) => expect.closeTo(rise!.xOf(kelvin), 6)));
    for (const panel of [power!, rise!]) {
      const zero = panel.rules.filter(({ stroke }) => stroke === 'var(--plot-ink)');
      expect(zero).toMatchObject([
        { x: expect.closeTo(panel.xOf(0), 6), x2: expect.closeTo(panel.xOf(0), 6), y: 0, y2: panel.height },
      ]);
      expect(panel.texts.find(({ text }) => text === 'base')!.x).toBeCloseTo(panel.xOf(0), 6);
    }
  });

  test('whiskers are the 95 % intervals: 1.96 × √2 × 0.1 to either side', () => {
    const [power] = partsOf(drawable(planDeltas(THREE)), WIDE);
    const half = 1.959964 * Math.SQRT2 * 0.1;
    const line = power!.rules.find(({ stroke, y, y2, x, x2 }) => stroke === inkOf(1) && y === y2 && x !== x2)!;
    expect([line.x, line.x2]).toEqual([2.5 - half, 2.5 + half].map((watts) => expect.closeTo(power!.xOf(watts), 3)));
  });

  test('told apart is a filled sign and said in words; not told apart an open one', () => {
    const plan = drawable(planDeltas(THREE));
    const [power, rise] = partsOf(plan, WIDE);
    expect(power!.signs.map(({ fill }) => fill)).toEqual([inkOf(1), inkOf(2)]);
    expect(rise!.signs.map(({ fill }) => fill)).toEqual([inkOf(1), 'var(--plot-paper)']);
    expect(rise!.texts.map(({ text }) => text)).toEqual(
      expect.arrayContaining(['these two runs differ', 'these two runs do not differ', '+12.00\u00a0K', '+0.10\u00a0K']),
    );
    expect(plan.alt).toContain('Power: more +2.50\u00a0W, these two runs differ; less −1.00\u00a0W, these two runs differ.');
    expect(plan.alt).toContain('less +0.10\u00a0K, these two runs do not differ.');
    expect(plan.method).toContain(
      'A filled sign is a run that differs from base, an open one is not. Each setting was run once, so that nothing tells how two runs of one setting differ. Power is the mean under load, at the board input.',
    );
  });

  test('title, table and CSV', () => {
    const { title, table, csv } = drawable(planDeltas(THREE));
    expect(title).toBe('Differences in power and rise over ambient from base: more and less');
    expect(table.rows[1]).toEqual(['Power', 'less', '−1.00\u00a0W', '±\u00a00.28\u00a0W (95\u00a0%)', 'these two runs differ']);
    expect(csv.split('\r\n')[0]).toBe('figure,run,difference,low95,high95,unit,verdict,absent');
    expect(csv).toMatch(/\r\nrise_delta,less,0\.1,-0\.177\d*,0\.377\d*,K,these two runs do not differ,\r\n/);
  });

  test('an absent difference leaves its row in words, with the reason in the method and the CSV', () => {
    const plan = drawable(
      planDeltas(comparison({ base: { more: spent(5, 40) }, hot: { more: spent(6, null) }, warm: { more: spent(6, 44) } })),
    );
    const [power, rise] = partsOf(plan, WIDE);
    expect([power!.signs.length, rise!.signs.length]).toEqual([2, 1]);
    expect(rise!.texts.map(({ text }) => text)).toContain('absent: The run hot has no temperature_rise.');
    expect(plan.method).toContain('No difference in rise over ambient for hot: The run hot has no temperature_rise.');
    expect(plan.csv).toContain('rise_delta,hot,,,,K,,The run hot has no temperature_rise.');
    expect(plan.alt).toContain('Rise over ambient: hot absent; warm +4.00\u00a0K, these two runs differ.');
  });

  test('a quantity of which no run has a difference has no panel; with neither there is no plot', () => {
    const plan = drawable(planDeltas(comparison({ base: { more: spent(5, null) }, fast: { more: spent(6, null) } })));
    expect(partsOf(plan, WIDE)).toHaveLength(1);
    expect(plan.title).toBe('Differences in power from base: fast');
    expect(plan.method).toContain('No difference in rise over ambient for fast');
    expect(planDeltas(comparison({ base: {}, fast: {} }))).toEqual({
      why: 'The run fast has no load_power. The run base has no temperature_rise.',
    });
    expect(planDeltas(comparison({ base: { more: spent(5, 40) } }))).toEqual({ why: 'The comparison has one run alone.' });
  });

  test('rows of eight runs stand apart, in their order', () => {
    const runs = Object.fromEntries(Array.from({ length: 8 }, (_, i) => [`run-${i}`, { more: spent(5 + i, 40 + i) }]));
    const [power] = partsOf(drawable(planDeltas(comparison(runs))), NARROW);
    const rows = power!.signs.map(({ y }) => y);
    expect(rows).toHaveLength(7);
    for (const [i, y] of rows.slice(1).entries()) expect(y - rows[i]!).toBeGreaterThanOrEqual(20);
    expect(rows.at(-1)).toBeLessThan(power!.height);
  });
});
