import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { repeatFigures } from '../../../src/figures/repeats/repeats.ts';
import type { ClockShows } from '../../../src/intake/log.ts';
import { standardUncertainty } from '../../../src/quantities/uncertainty.ts';
import { expectNear } from '../../statistics/near.ts';
import { contextOf, every, logOf, presentAt } from '../build.ts';
import { absentAt, compareRuns } from './runs.ts';

function soak(run: string, clock: number, shows?: ClockShows) {
  const core = { quantity: 'clock' as const, values: () => clock, step: 1e6, ...(shows ? { shows } : {}) };
  return derive(logOf(every(1, 1500), { core }), contextOf({ run, setting: { clock: { value: clock, unit: 'Hz', parts: [] } } }))
    .figures;
}

const compared = (own?: ClockShows, base?: ClockShows) =>
  compareRuns({
    rated: { more: Object.fromEntries(soak('rated', 2.4e9, base)) },
    fast: { more: Object.fromEntries(soak('fast', 2.6e9, own)) },
  });

describe('requested and delivered clocks', () => {
  test('each figure of a clock says which it is, or that nobody said', () => {
    for (const name of ['mean_clock', 'lowest_clock', 'time_below_setting', 'sustained_ratio']) {
      expect(presentAt(soak('a', 2e9, 'requested'), name).of?.clock).toBe('requested');
      expect(presentAt(soak('a', 2e9), name).of?.clock).toBe('not stated');
    }
  });

  test('a ratio and a difference of one kind', () => {
    const figures = compared('delivered', 'delivered');
    expectNear(presentAt(figures, 'clock_ratio.fast').quantity.value, 26 / 24, 1e-12);
    expect(presentAt(figures, 'clock_ratio.fast').of).toMatchObject({ clock: 'delivered', over: 'the load phase' });
    const delta = presentAt(figures, 'clock_delta.fast');
    expectNear(delta.quantity.value, 0.2e9, 1e-12);
    // Two means of a constant reading, each known to its step of 1 MHz over √12 (JCGM 100:2008, F.2.2.1).
    expectNear(standardUncertainty(delta.quantity)!, 1e6 * Math.sqrt(2 / 12), 1e-9);
    expect(delta.of).toMatchObject({ clock: 'delivered', verdict: 'these two runs differ' });
  });

  test('a requested and a delivered clock are not put together', () => {
    const figures = compared('requested', 'delivered');
    for (const name of ['clock_ratio.fast', 'clock_delta.fast'])
      expect(absentAt(figures, name)).toMatchObject({
        absent: 'different-clocks',
        why: 'The clock of fast is the requested one, that of rated the delivered one.',
      });
  });

  test('where one run does not say, the figure names both', () => {
    expect(presentAt(compared('requested'), 'clock_ratio.fast').of?.clock).toBe('requested in fast, not stated in rated');
  });

  test('repeats of both kinds are no repeats', () => {
    const run = (id: string, shows: ClockShows) => ({
      run: id,
      specimen: 'no-1',
      date: `2026-03-0${id}`,
      likeness: 'same',
      figures: soak(id, 2e9, shows),
    });
    const figures = repeatFigures('larch', [run('1', 'requested'), run('2', 'delivered')]);
    expect(absentAt(figures, 'repeatability.1.mean_clock')).toMatchObject({ absent: 'different-clocks' });
  });
});
