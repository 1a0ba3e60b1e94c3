import { describe, expect, test } from 'vitest';
import type { RunContext } from '../../src/figures/context.ts';
import { loadChange } from '../../src/figures/load-changed.ts';
import { declaredPhases } from '../../src/figures/phases.ts';
import { metersOf } from '../../src/figures/power/meters.ts';
import type { Soak } from '../../src/figures/soak.ts';
import { type ChannelSketch, contextOf, every, logOf, noise, phase } from './build.ts';

function change(channels: Readonly<Record<string, ChannelSketch>>, step = 1, parts: Partial<RunContext> = {}) {
  const log = logOf(every(step, 3600), channels);
  const context = contextOf(parts);
  const soak: Soak = { log, context, phases: declaredPhases(log, [phase('load', 0, 3600)]), inferred: [], warming: null };
  return loadChange(soak, metersOf(soak).meters[0] ?? null);
}

const clock = (values: (t: number) => number) => ({ core: { quantity: 'clock', values } }) as const;
const power = (values: (t: number) => number) => ({ board: { quantity: 'power', values } }) as const;

const fan = (values: (t: number) => number) => ({ fan: { quantity: 'fan', values } }) as const;

const flag = (values: (t: number) => number) => ({ flag: { quantity: 'throttle_flag', values } }) as const;

describe('a load counts as constant', () => {
  const random = noise(8);
  test.each<[string, Readonly<Record<string, ChannelSketch>>]>([
    ['when it is', clock(() => 2e9)],
    ['with scatter of single readings', power(() => 10 + 6 * random())],
    ['with leakage that follows the temperature', power((t) => 10 - 0.8 * Math.exp(-t / 600))],
    ['with a drop of twenty seconds', power((t) => (t > 1000 && t < 1020 ? 3 : 10))],
    ['with an edge in its first seconds', power((t) => (t < 5 ? 3 : 10))],
    ['with work that comes and goes every twenty seconds', power((t) => (t % 40 < 20 ? 14 : 11))],
    ['with a fan that follows the temperature up', { ...power(() => 10), ...fan((t) => 3000 - 2000 * Math.exp(-t / 400)) }],
    ['with a fan that stands still', { ...power(() => 10), ...fan(() => 0) }],
    ['without clock and power', {}],
    ['without clock and power, flags at rest', flag(() => 0)],
  ])('%s', (_, channels) => {
    expect(change(channels)).toBeNull();
  });
});

describe('a load changed', () => {
  test.each<[string, Readonly<Record<string, ChannelSketch>>, RegExp]>([
    [
      'by a boost of a minute',
      clock((t) => (t < 60 ? 2.4e9 : 2e9)),
      /^The clock \(channel core\) was 20 % above its median from 10 s to 60 s of the load, so this was not one constant load\.$/,
    ],
    ['by one step of the clock for good', clock((t) => (t > 3000 ? 1.9e9 : 2e9)), /4\.99 % below its median from 50 min to 60 min/],
    [
      'by a governor that steps up and down every twenty seconds',
      clock((t) => (t > 1080 && t % 40 < 20 ? 2.3e9 : 2.6e9)),
      /^The clock \(channel core\) was 6\.\d+ % above its median from 2 min to 18 min of the load/,
    ],
    [
      'by throttling that flags alone tell of',
      flag((t) => (t > 1800 ? 1 : 0)),
      /^The device throttled from 30 min of the load on, so this was not one constant load\.$/,
    ],
    [
      'where a fan switches to and fro',
      { ...power(() => 10), ...fan((t) => (t > 500 && t % 200 < 100 ? 1800 : 0)) },
      /^The fan \(channel fan\) switched to and fro under load, 1[56] times or more, so the device was not cooled in one way\.$/,
    ],
    ['by power alone', power((t) => (t > 1000 && t < 1200 ? 5 : 10)), /^The power \(channel board\) was/],
  ])('%s', (_, channels, why) => {
    const reason = change(channels);
    expect(reason).toMatchObject({ absent: 'load-changed' });
    expect(reason!.why).toMatch(why);
  });

  test('also when rows are far apart', () => {
    expect(
      change(
        clock((t) => (t > 1800 ? 1.5e9 : 2e9)),
        30,
      ),
    ).toMatchObject({ absent: 'load-changed' });
  });
});

describe('power that rose by more than a tenth along with the temperature', () => {
  const room = { ambient: { value: 22, unit: '°C', parts: [] } };
  const heat = (t: number) => 62 - 30 * Math.exp(-t / 330);
  const temperature = (random: () => number) =>
    ({ soc: { quantity: 'temperature', values: (t: number) => heat(t) + 0.1 * random() } }) as const;
  const leaking = (random: () => number) => power((t) => 9 + 0.05 * (heat(t) - 32) + 0.05 * random());

  test.each(Array.from({ length: 12 }, (_, k) => k + 1))(
    'is called leakage, and the clock that stayed is named (seed %d)',
    (seed) => {
      const random = noise(seed);
      const core = { quantity: 'clock', values: () => 2e9, shows: 'delivered' } as const;
      const reason = change({ ...temperature(random), ...leaking(random), core }, 1, room);
      expect(reason).toMatchObject({ absent: 'load-changed' });
      expect(reason!.why).toMatch(
        /^The power \(channel board\) rose along with the temperature \(channel soc\), by 0\.0\d+ W per kelvin, while the clock stayed: that is how leakage/,
      );
      expect(change({ ...temperature(random), ...leaking(random) }, 1, room)!.why).toMatch(/W per kelvin: that is how leakage/);
    },
  );

  test.each<[string, (t: number) => number]>([
    ['climbs all along', (t) => 8 + t / 1500],
    ['steps up', (t) => (t < 900 ? 8 : 10)],
    ['falls while the temperature rises', (t) => 8 + 3 * Math.exp(-t / 330)],
  ])('a load that %s is still called one that changed', (_, watts) => {
    expect(change({ ...temperature(noise(3)), ...power(watts) }, 1, room)!.why).toMatch(
      /median from .* so this was not one constant load\.$/,
    );
  });

  test('a warm device that follows a load which climbs slowly is not taken for one that leaks', () => {
    const random = noise(5);
    const watts = (t: number) => 8 + t / 1500;
    const followed = { soc: { quantity: 'temperature', values: (t: number) => 22 + 5 * watts(t) + 0.1 * random() } } as const;
    for (const parts of [room, {}])
      expect(change({ ...followed, ...power(watts) }, 1, parts)!.why).toMatch(/so this was not one constant load\.$/);
  });
});
