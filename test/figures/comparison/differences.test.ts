import { describe, expect, test } from 'vitest';
import { standardUncertainty } from '../../../src/quantities/uncertainty.ts';
import { expectNear } from '../../statistics/near.ts';
import { presentAt } from '../build.ts';
import { absentAt, compareRuns, figure, part, type Sketch } from './runs.ts';

const meter = (watts: number, at?: string) =>
  figure('load_power', { value: watts, unit: 'W', parts: [part('instrument:meter/power/gain', 0.01 * watts)] }, at ? { at } : {});

describe('power_delta', () => {
  // A meter with a 1 % gain error on 10 W less 3 W: 0.07 W where the gain is shared (JCGM 100:2008, 5.2.2), 0.104 W were it not.
  test('a shared gain errs on the difference alone', () => {
    const figures = compareRuns({ rated: { more: { load_power: meter(3) } }, fast: { more: { load_power: meter(10) } } });
    const delta = presentAt(figures, 'power_delta.fast');
    expectNear(delta.quantity.value, 7, 1e-14);
    expectNear(standardUncertainty(delta.quantity)!, 0.07, 1e-12);
    expect(delta).toMatchObject({
      of: { verdict: 'these two runs differ' },
      from: { figures: ['r-fast/load_power', 'r-rated/load_power'] },
    });
  });

  test('equal powers are not told apart', () => {
    const own = (id: string): Sketch => ({
      more: { load_power: figure('load_power', { value: 5, unit: 'W', parts: [part(id, 0.1)] }) },
    });
    expect(presentAt(compareRuns({ rated: own('a'), fast: own('b') }), 'power_delta.fast').of?.verdict).toBe(
      'these two runs do not differ',
    );
  });

  test('the powers of one place are taken, be they primary or not', () => {
    const figures = compareRuns({
      rated: { more: { load_power: meter(12, 'wall'), 'load_power.board': meter(8, 'board input') } },
      fast: { more: { load_power: meter(10, 'board input') } },
    });
    expectNear(presentAt(figures, 'power_delta.fast').quantity.value, 2, 1e-12);
    expect(presentAt(figures, 'power_delta.fast').of?.at).toBe('board input');
  });

  test('figures of different places are never subtracted, nor those of a place that is not stated', () => {
    const apart = (a?: string, b?: string) =>
      absentAt(
        compareRuns({ rated: { more: { load_power: meter(3, a) } }, fast: { more: { load_power: meter(4, b) } } }),
        'power_delta.fast',
      );
    expect(apart('wall', 'board input')).toMatchObject({ absent: 'different-places' });
    expect(apart('wall', undefined).why).toBe('Power was measured at a place that is not stated in fast and at the wall in rated.');
  });

  test('absent without power', () => {
    const lost: Sketch = {
      more: { load_power: { name: 'load_power', absent: 'no-channel', why: 'The log has no power channel.' } },
    };
    expect(absentAt(compareRuns({ rated: { more: { load_power: meter(3) } }, fast: lost }), 'power_delta.fast')).toMatchObject({
      absent: 'operand-absent',
      why: 'load_power of fast is absent. The log has no power channel.',
      of: { run: 'fast', reference: 'rated' },
    });
  });
});

describe('rise_delta', () => {
  const rise = (kelvin: number, sampling: number, more: { repeatabilityOnly?: true } = {}) =>
    figure(
      'temperature_rise',
      {
        value: kelvin,
        unit: 'K',
        parts: [part('instrument:probe/temperature/offset', 1.5), part(`run:${kelvin}/sampling`, sampling)],
        ...more,
      },
      { channel: 'soc' },
    );

  // Offsets that are fully correlated leave the scatter alone (JCGM 100:2008, 5.2.2, note 1).
  test('an offset that both share cancels', () => {
    const figures = compareRuns({
      rated: { more: { temperature_rise: rise(30, 0.03) } },
      fast: { more: { temperature_rise: rise(42, 0.04) } },
    });
    const delta = presentAt(figures, 'rise_delta.fast');
    expectNear(delta.quantity.value, 12, 1e-14);
    expectNear(standardUncertainty(delta.quantity)!, 0.05, 1e-12);
    expect(delta.of).toMatchObject({ channel: 'soc', verdict: 'these two runs differ' });
  });

  test('of two specimens whose die sensors state nothing it cannot be told', () => {
    const only = { repeatabilityOnly: true } as const;
    const runs = (specimen: string) =>
      compareRuns({
        first: { more: { temperature_rise: rise(30, 0.03, only) } },
        second: { specimen, more: { temperature_rise: rise(42, 0.04, only) } },
      });
    expect(presentAt(runs('no-2'), 'rise_delta.second').of?.verdict).toBe('cannot be told');
    expect(presentAt(runs('no-1'), 'rise_delta.second').of?.verdict).toBe('these two runs differ');
  });

  test('absent where a run was not steady', () => {
    const unsteady: Sketch = {
      more: { temperature_rise: { name: 'temperature_rise', absent: 'not-steady', why: 'Not steady within 60 min.' } },
    };
    expect(
      absentAt(compareRuns({ rated: { more: { temperature_rise: rise(30, 0.1) } }, fast: unsteady }), 'rise_delta.fast'),
    ).toMatchObject({
      absent: 'operand-absent',
      why: 'temperature_rise of fast is absent. Not steady within 60 min.',
    });
  });
});
