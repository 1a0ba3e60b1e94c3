import { describe, expect, test } from 'vitest';
import { planOf } from '../../../src/browser/compare/plot.ts';
import { heightOf } from '../../../src/browser/compare/reserve.ts';
import { EMPTY_VIEW } from '../../../src/browser/compare/view.ts';
import { isPlan } from '../../../src/plots/drawing/plan.ts';
import { NARROW, WIDE } from '../../../src/plots/drawing/size.ts';
import { render } from '../../../src/plots/drawing/vega.ts';
import { browserRun } from './published.ts';

describe('the plot of a view', () => {
  const runs = ['larch-rated', 'larch-fast'].map((id) => browserRun(id).gathered);
  const all = { ...EMPTY_VIEW, runs: ['larch-rated', 'larch-fast'] };

  test('is as high as the room that is kept for it', async () => {
    for (const tokens of [
      ['temperature'],
      ['temperature', 'clock'],
      ['temperature', 'clock', 'current', 'throttle_flag'],
      ['throttle_flag'],
    ] as const) {
      const show = tokens.map((quantity) => ({ quantity, channel: null }));
      const plan = planOf(runs, { ...all, show });
      if (!isPlan(plan)) throw new Error(plan.why);
      for (const size of [WIDE, NARROW]) {
        const { svg } = await render(plan.layOut(size));
        const height = Number(/ height="([\d.]+)"/.exec(svg)![1]);
        expect(Math.abs(heightOf(show, size.width) - height), `${tokens} ${size.name}`).toBeLessThanOrEqual(2);
      }
    }
  });

  test('an end of the window that is left open is that of the readings, and never before the other', () => {
    const windowOf = (from: number | null, to: number | null) => {
      const plan = planOf(runs, { ...all, from, to });
      return isPlan(plan) ? plan.alt : plan.why;
    };
    expect(windowOf(0, null)).toContain('65 min, from 0 to 65 min since load start');
    expect(windowOf(null, 600)).toContain('from −5 to 10 min since load start');
    expect(windowOf(1e6, null)).toBe('No run has a reading in this stretch of time.');
  });

  test('a channel that only some have is drawn of these, and the others are named', () => {
    const show = [{ quantity: 'temperature', channel: 'board' } as const];
    const plan = planOf([...runs, browserRun('larch-first-try').gathered], { ...all, show });
    expect(isPlan(plan) && plan.title).toContain('board');
  });
});
