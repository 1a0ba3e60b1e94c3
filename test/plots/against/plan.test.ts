import { describe, expect, test } from 'vitest';
import type { FigureMap, PresentFigure } from '../../../src/figures/figure.ts';
import type { PlotSubject } from '../../../src/plots/drawing/drawn.ts';
import { isPlan, type Plan } from '../../../src/plots/drawing/plan.ts';
import { NARROW, WIDE } from '../../../src/plots/drawing/size.ts';
import { plan } from '../../../src/plots/specify.ts';
import { independent } from '../../../src/quantities/uncertainty.ts';
import { exactly, request, subject } from '../subjects.ts';

/** A run with a mean clock (GHz ± 0.001) and a load power (W ± 0.01) of our own. */
function run(alias: string, clock: number, power: number, set = clock): PlotSubject {
  const made = subject(alias, { step: 60 });
  const of = (name: 'mean_clock' | 'load_power', value: number, unit: string, u: number): PresentFigure => ({
    name,
    quantity: independent(value, unit, u, { id: `run:${alias}/${name}`, title: 'scatter', dof: null }),
    from: { columns: [], rows: null },
  });
  const figures: FigureMap = new Map([
    ['mean_clock', of('mean_clock', clock * 1e9, 'Hz', 1e6)],
    ['load_power', of('load_power', power, 'W', 0.01)],
  ]);
  return {
    ...made,
    derived: { ...made.derived, figures },
    context: { ...made.context, setting: { clock: exactly(set * 1e9, 'Hz') } },
  };
}

const RUNS = [run('fast', 2.5, 10.39, 2.6), run('rated', 2, 6.43), run('quick', 2.4, 9.32)];
const OF = { of: ['mean_clock', 'load_power'] };
const planned = plan(request('against', RUNS, [], OF), RUNS) as Plan;

describe('plots/against', () => {
  test('its title is what the last step along the axis brings', () => {
    expect(planned.title).toBe('From quick to fast, load power rises by 1.070\u00a0W and mean clock by 100.0\u00a0MHz');
  });

  test('what an interval with zero in it does not tell apart stays about the same', () => {
    const runs = [run('quick', 2.4, 9.32), run('fast', 2.4001, 10.39, 2.6)];
    expect((plan(request('against', runs, [], OF), runs) as Plan).title).toBe(
      'From quick to fast, load power rises by 1.070\u00a0W while mean clock stays about the same',
    );
  });

  test('the author’s own title stands', () => {
    const own = { ...OF, title: 'The last gear costs more than it gives' };
    expect((plan(request('against', RUNS, [], own), RUNS) as Plan).title).toBe(own.title);
  });

  test('a clock that was not kept is marked where it was set, in both sizes', () => {
    for (const size of [WIDE, NARROW]) {
      const drawn = JSON.stringify(planned.layOut(size));
      expect(drawn).toContain('fast as set');
      expect(drawn).not.toContain('quick as set');
    }
    expect(planned.method).toContain('The stroke above a sign is the clock that was set.');
  });

  test('its data has both figures with their intervals', () => {
    const [head, fast] = planned.csv.split('\r\n');
    expect(head).toBe('run,mean_clock,mean_clock_low95,mean_clock_high95,load_power,load_power_low95,load_power_high95,absent');
    expect(fast).toMatch(/^fast,2500000000,2498\d+\.?\d*,2501\d+\.?\d*,10\.39,10\.3\d+,10\.4\d+,$/);
  });

  test('it asks for two figures that runs have', () => {
    const refused = (of: readonly string[]) => {
      const result = plan(request('against', RUNS, [], { of }), RUNS);
      if (isPlan(result)) throw new Error('it was drawn');
      return result.map(({ rule, found }) => `${rule}: ${found}`);
    };
    expect(refused(['mean_clock'])).toEqual(['request-attribute: a plot of the kind `against` with 1 figures in `of`']);
    expect(refused(['mean_clock', 'lode_power'])).toEqual(['unknown-figure: no run of this plot has the figure `lode_power`']);
  });
});
