import { describe, expect, test } from 'vitest';
import { OUTCOMES } from '../../../src/figures/stability/ladder.ts';
import { readAttempts } from '../../../src/figures/stability/read-attempts.ts';
import { stabilityFigures } from '../../../src/figures/stability/stability.ts';
import { draw } from '../../../src/plots/draw.ts';
import type { AttemptsSubject } from '../../../src/plots/drawing/drawn.ts';
import { isPlan, type Plan } from '../../../src/plots/drawing/plan.ts';
import { NARROW, WIDE } from '../../../src/plots/drawing/size.ts';
import { textWidth } from '../../../src/plots/drawing/text-width.ts';
import { SIGNS } from '../../../src/plots/stability/outcome-signs.ts';
import { planStability } from '../../../src/plots/stability/plan.ts';
import type { PlotRequest } from '../../../src/register/requests.ts';
import { exactly, PLACE } from '../subjects.ts';

const REQUEST: PlotRequest = {
  kind: 'stability',
  id: 'ladder',
  runs: [],
  attempts: [{ alias: 'ladder', id: 'larch-2-no-1' }],
  channels: [],
  rise: false,
  place: PLACE,
};

function subjectOf(...rows: string[]): AttemptsSubject {
  const text = ['clock,voltage_offset,outcome,note', ...rows, ''].join('\n');
  const passing = { test: 'integer mix', duration: 3600, ambient: '22 °C' };
  const { ladder } = readAttempts(new TextEncoder().encode(text), 'data/larch-2/attempts.csv', 'no-1', passing);
  return { ladder, ratedClock: exactly(2e9, 'Hz') };
}

const LADDER = subjectOf(
  '2.0 GHz,0 mV,passed,',
  '2.2 GHz,0 mV,passed,',
  '2.4 GHz,0 mV,restarted,after 8 min',
  '2.4 GHz,60 mV,passed,',
  '2.6 GHz,60 mV,hung under load,',
  '2.6 GHz,60 mV,hung under load,',
  '2.8 GHz,-20 mV,no boot,',
);

function planned(subject: AttemptsSubject, request = REQUEST): Plan {
  const plan = planStability(request, [], [subject]);
  if (!isPlan(plan)) throw new Error(JSON.stringify(plan));
  return plan;
}

interface Layer {
  readonly mark: { readonly type: string };
  readonly data: { readonly values: readonly Record<string, never>[] };
}

function layersOf(plan: Plan, size: typeof WIDE) {
  const [panel] = plan.layOut(size).vconcat as { width: number; height: number; layer: Layer[] }[];
  const values = <T>(type: string): T[] =>
    panel!.layer.filter(({ mark }) => mark.type === type).flatMap(({ data }) => data.values as unknown as T[]);
  return { panel: panel!, values };
}

describe('plots/stability/plan', () => {
  test('title, text alternative, table and CSV say every setting and what came of it', () => {
    const { title, alt, table, csv, method } = planned(LADDER);
    expect(title).toBe('Settings tried on specimen no-1, and what came of each');
    expect(alt).toMatch(
      /Passed: 2(\.0)?.GHz at 0.mV, 2\.2.GHz at 0.mV and 2\.4.GHz at 60.mV\. Restarted: .*No boot: 2\.8.GHz at −20.mV\.$/,
    );
    expect(table.rows).toHaveLength(6);
    expect(table.rows[0]).toEqual(['−20\u00a0mV', '2.8\u00a0GHz', 'no boot', 'once', '']);
    expect(table.rows.find(([, , outcome]) => outcome === 'hung under load')![3]).toBe('2 times');
    expect(csv.split('\r\n')[0]).toBe('voltage_offset_V,clock_Hz,outcome,attempts,note');
    expect(csv).toContain('0,2400000000,restarted,1,after 8 min\r\n');
    expect(method).toContain('One specimen: another may differ.');
    expect(method).toContain('more than once');
    expect(planned(LADDER, { ...REQUEST, title: 'My title' }).title).toBe('My title');
  });

  test('outcomes differ by sign alone; passed by filling and colour too', () => {
    expect(new Set(OUTCOMES.map((outcome) => SIGNS[outcome].shape)).size).toBe(OUTCOMES.length);
    expect(OUTCOMES.filter((outcome) => SIGNS[outcome].filled)).toEqual(['passed']);
    const others = OUTCOMES.filter((outcome) => outcome !== 'passed').map((outcome) => SIGNS[outcome].ink);
    expect(others).not.toContain(SIGNS.passed.ink);
  });

  test('the shading is what the figures say of the boundary', () => {
    const figures = stabilityFigures([LADDER.ladder]);
    const valueAt = (address: string) => (figures.get(address) as { quantity: { value: number } }).quantity.value;
    const { values } = layersOf(planned(LADDER), WIDE);
    const signs = values<{ y: number; shape: string }>('point').filter(({ shape }) => shape !== undefined);
    const shaded = values<{ y: number; y2: number; fill?: string }>('rect').filter(({ fill }) => fill !== undefined);
    expect(shaded).toHaveLength(2);
    const perHertz =
      (signs.find(({ shape }) => shape === 'diamond')!.y - signs.find(({ shape }) => shape === 'triangle-left')!.y) / 0.4e9;
    for (const [index, offset] of ['0 mV', '60 mV'].entries()) {
      const gap = valueAt(`lowest_failed_clock.${offset}`) - valueAt(`highest_passed_clock.${offset}`);
      expect(shaded[index]!.y2 - shaded[index]!.y).toBeCloseTo(gap * perHertz, 6);
    }
  });

  test.each([WIDE, NARROW])('signs and words stand inside the drawing and apart ($name)', (size) => {
    const { panel, values } = layersOf(planned(LADDER), size);
    const signs = values<{ x: number; y: number; shape: string }>('point').filter(({ shape }) => shape !== undefined);
    expect(signs).toHaveLength(6);
    for (const { x, y } of signs) {
      expect(x > 0 && x < panel.width && y > 0 && y < panel.height).toBe(true);
    }
    const words = values<{ x: number; y: number; text: string; size: number; align: string }>('text').filter(({ y }) => y > 0);
    expect(words.map(({ text }) => text)).toContain('hung under load × 2');
    const boxes = words.map(({ x, y, text, size: font, align }) => {
      const width = textWidth(text, font);
      const left = align === 'right' ? x - width : align === 'center' ? x - width / 2 : x;
      return { left, right: left + width, top: y - font / 2, bottom: y + font / 2 };
    });
    for (const [i, a] of boxes.entries()) {
      expect(a.left >= 0 && a.right <= panel.width).toBe(true);
      for (const b of boxes.slice(i + 1))
        expect(a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top).toBe(true);
    }
  });

  test('one setting alone is drawn, without a rating too', async () => {
    const { ladder } = subjectOf('2.0 GHz,0 mV,passed,');
    const drawn = await draw(REQUEST, [], 'one', [{ ladder }]);
    expect(drawn.problems).toEqual([]);
    expect(drawn.wide).toMatch(/^<svg role="img"/);
    expect(drawn.wide).toContain('var(--plot-3)');
    expect(drawn.wide).not.toContain('rated clock');
    expect(drawn.svg).not.toContain('var(');
  });

  test('nothing to draw is a located problem', async () => {
    expect(planStability(REQUEST, [], [subjectOf()])).toMatchObject([{ rule: 'no-attempts', place: PLACE }]);
    expect((await draw(REQUEST, [], 'none')).problems).toHaveLength(1);
  });
});
