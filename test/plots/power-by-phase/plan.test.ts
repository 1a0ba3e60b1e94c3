import { describe, expect, test } from 'vitest';
import { isPresent } from '../../../src/figures/figure.ts';
import type { MeasuredAt } from '../../../src/intake/log.ts';
import { isPlan, type Plan } from '../../../src/plots/drawing/plan.ts';
import { NARROW, WIDE } from '../../../src/plots/drawing/size.ts';
import { planPowerByPhase } from '../../../src/plots/power-by-phase/plan.ts';
import { printQuantity } from '../../../src/quantities/print.ts';
import { interval95 } from '../../../src/quantities/uncertainty.ts';
import { channel, logOf, request, subject } from '../subjects.ts';

type Subjects = readonly ReturnType<typeof subject>[];

function planned(subjects: Subjects, channels: readonly string[] = []): Plan {
  const plan = planPowerByPhase(request('power-by-phase', subjects, channels), subjects);
  if (!isPlan(plan)) throw new Error(JSON.stringify(plan));
  return plan;
}

const rated = subject('rated');
const fast = subject('fast', { load: 2000 });

describe('plots/power-by-phase/plan', () => {
  test('bars are the run’s own figures, with their intervals', () => {
    const figure = rated.derived.figures.get('load_power')!;
    const { table, csv, title, alt } = planned([rated, fast]);
    expect(title).toBe('Mean power by phase at the board input: rated and fast');
    if (!isPresent(figure)) throw new Error(figure.why);
    const text = printQuantity(figure.quantity).text;
    expect(table.rows.find(([phase, run]) => phase === 'load' && run === 'rated')![2]).toBe(text);
    expect(alt).toContain(`rated ${text}`);
    const row = csv
      .split('\r\n')
      .find((line) => line.startsWith('rated,load,'))!
      .split(',')
      .slice(2, 5)
      .map(Number);
    [figure.quantity.value, ...interval95(figure.quantity)!].forEach((value, i) => {
      expect(Math.abs(row[i]! / value - 1)).toBeLessThan(1e-9);
    });
  });

  test('every phase of any run is drawn, also those that the catalogue has no figure for', () => {
    const cooled = planned([rated]).table.rows.find(([phase]) => phase === 'cool-down')!;
    expect(cooled[2]).toMatch(/^(1\.9\d|2\.0\d)\u00a0W$/);
  });

  test('a phase that a run lacks is told, not drawn as zero', () => {
    const bare = { ...fast, derived: { ...fast.derived, phases: fast.derived.phases.slice(0, 2) } };
    const plan = planned([rated, bare]);
    expect(plan.method).toContain('No bar for fast cool-down: The run has no cool-down phase.');
    expect(plan.table.rows.at(-1)).toEqual(['cool-down', 'fast', 'absent', '']);
  });

  test.each([WIDE, NARROW])('bars begin at zero and values stand inside the drawing ($name)', (size) => {
    const [panel] = planned([rated, fast]).layOut(size).vconcat as {
      width: number;
      layer: { data: { values: { x: number; x2: number; fill: string }[] } }[];
    }[];
    const drawn = panel!.layer[1]!.data.values.filter(({ fill }) => fill !== 'none');
    expect(drawn).toHaveLength(6);
    for (const { x, x2 } of drawn) {
      expect(x).toBe(0);
      expect(x2).toBeGreaterThan(0);
      expect(x2).toBeLessThan(panel!.width);
    }
  });

  test('a channel that is no power is refused with the nearest; a run without power with the reason', () => {
    expect(planPowerByPhase(request('power-by-phase', [rated], ['bord']), [rated])).toMatchObject([
      { rule: 'unknown-channel', remedy: 'did you mean `board`?' },
    ]);
    const dark = { ...rated, log: logOf([0, 1], [channel('soc', 'temperature', '°C', [20, 21], 0.1)], 1) };
    expect(planPowerByPhase(request('power-by-phase', [dark]), [dark])).toMatchObject([
      { rule: 'no-power', found: 'the run rated has no power to draw: The log has neither a power nor a current channel' },
    ]);
  });

  const measuredAt = (alias: string, at?: MeasuredAt) => {
    const run = subject(alias);
    const moved = run.log.channels.map(({ at: was, ...rest }) => (was && at ? { ...rest, at } : rest));
    const log = { ...run.log, channels: moved };
    return { ...run, log };
  };

  test('powers of different places are refused, at the request', () => {
    const runs = [rated, measuredAt('wall', 'adapter output')];
    expect(planPowerByPhase(request('power-by-phase', runs), runs)).toMatchObject([
      {
        severity: 'error',
        rule: 'different-places',
        place: request('power-by-phase', runs).place,
        found: 'powers of different places cannot stand in one plot: rated at the board input, wall at the adapter output',
      },
    ]);
  });

  test('a place that is not stated is said to be so, run by run', () => {
    const mixed = planned([rated, measuredAt('other')]);
    expect(mixed.title).toBe('Mean power by phase: rated (at the board input) and other (place unstated)');
    expect(mixed.method).toContain('Where the power is measured is not stated for other.');
    expect(planned([measuredAt('one'), measuredAt('two')]).title).toBe('Mean power by phase, place unstated: one and two');
    expect(planned([rated, fast]).method).not.toContain('not stated');
  });

  test('without phases there is nothing to draw', () => {
    const bare = subject('bare', { noPhases: true });
    expect(planPowerByPhase(request('power-by-phase', [bare]), [bare])).toMatchObject([{ rule: 'no-phases' }]);
    expect(planPowerByPhase(request('power-by-phase', [rated], ['board', 'soc']), [rated])).toMatchObject([
      { rule: 'wrong-channels' },
    ]);
  });
});
