import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { standardUncertainty } from '../../../src/quantities/uncertainty.ts';
import { type ChannelSketch, contextOf, every, instrumentOf, logOf, noise, phase, presentAt } from '../build.ts';

function figuresOf(channels: Readonly<Record<string, ChannelSketch>>, more = {}) {
  return derive(logOf(every(1, 1000), channels), contextOf({ phases: [phase('load', 0, 1001)], ...more })).figures;
}

describe('figures/sound', () => {
  // 10 lg((10⁴ + 10⁵)/2) dB = 47.4036 dB, where the mean of the levels would be 45 dB.
  test('levels average by energy', () => {
    const level = presentAt(
      figuresOf({ mic: { quantity: 'sound_level', values: (t) => (t % 2 < 1 ? 40 : 50), originalUnit: 'dB(A)' } }),
      'sound_level',
    );
    expect(level.quantity.value).toBeCloseTo(47.4036, 1);
    expect(level.of).toMatchObject({ weighting: 'A', phase: 'load', channel: 'mic' });
  });

  test('a steady level is as uncertain as its scatter says, and never less than its step hides', () => {
    const random = noise(3);
    const scattered = presentAt(figuresOf({ mic: { quantity: 'sound_level', values: () => 40 + 2 * random() } }), 'sound_level');
    // Uniform over 2 dB: 0.577 dB of a reading, over the root of 1001.
    expect(standardUncertainty(scattered.quantity)! / (0.577 / Math.sqrt(1001))).toBeGreaterThan(0.6);
    expect(standardUncertainty(scattered.quantity)! / (0.577 / Math.sqrt(1001))).toBeLessThan(1.6);
    const coarse = presentAt(figuresOf({ mic: { quantity: 'sound_level', values: () => 40, step: 1 } }), 'sound_level');
    expect(standardUncertainty(coarse.quantity)).toBeCloseTo(1 / Math.sqrt(12), 9);
    expect(
      presentAt(figuresOf({ mic: { quantity: 'sound_level', values: (t) => 40 + (t === 500 ? 6 : 0) } }), 'highest_sound_level')
        .quantity.value,
    ).toBe(46);
  });

  test('a fan: mean and peak; nothing is said of quantities that the log does not have', () => {
    const figures = figuresOf({ fan: { quantity: 'fan', unit: 'rpm', values: (t) => (t < 500 ? 1000 : 3000) } });
    expect(presentAt(figures, 'fan_speed').quantity.value).toBeCloseTo(2001, 0);
    expect(presentAt(figures, 'fan_speed').quantity.unit).toBe('rpm');
    expect(presentAt(figures, 'peak_fan_speed').quantity.value).toBe(3000);
    expect(figures.get('sound_level')).toBeUndefined();
  });

  test('absent without a load phase', () => {
    const mic = { quantity: 'sound_level' as const, values: () => 40 };
    expect(figuresOf({ mic }, { phases: [] }).get('sound_level')).toMatchObject({ absent: 'no-phase', of: { channel: 'mic' } });
  });
});

describe('adapter efficiency', () => {
  const meter = instrumentOf('meter', 'power', { ofReading: 0.01, absolute: 0, larger: false });
  const other = instrumentOf('other', 'power', { ofReading: 0.01, absolute: 0, larger: false });
  const powers = (instrument: string, out = 9): Readonly<Record<string, ChannelSketch>> => ({
    wall: { quantity: 'power', values: () => 10, at: 'wall', instrument: 'meter' },
    out: { quantity: 'power', values: () => out, at: 'adapter output', instrument },
  });

  test('9 W of 10 W are 0.9; a gain error of one meter for both cancels, those of two do not', () => {
    const shared = presentAt(figuresOf(powers('meter'), { instruments: { meter } }), 'adapter_efficiency');
    expect(shared.quantity.value).toBeCloseTo(0.9, 12);
    expect(standardUncertainty(shared.quantity)!).toBeLessThan(1e-9);
    const apart = presentAt(figuresOf(powers('other'), { instruments: { meter, other } }), 'adapter_efficiency');
    expect(standardUncertainty(apart.quantity)!).toBeCloseTo((0.9 * 0.01 * Math.SQRT2) / Math.sqrt(3), 6);
    expect(apart.of).toMatchObject({ at: 'adapter output over wall' });
  });

  test('absent where a power is missing, or where more comes out than goes in', () => {
    const { wall } = powers('meter');
    expect(figuresOf({ wall: wall! }).get('adapter_efficiency')).toMatchObject({ absent: 'no-channel' });
    expect(figuresOf(powers('meter', 11), { instruments: { meter } }).get('adapter_efficiency')).toMatchObject({
      absent: 'out-of-range',
    });
  });
});

describe('noise of a sensor', () => {
  test('of white readings of 0.29 K about a course; a bound where the step hides it; absent with few readings', () => {
    const random = noise(8);
    const { quantity, interval } = presentAt(
      figuresOf({ soc: { quantity: 'temperature', values: (t) => 40 + t / 100 + random() } }),
      'sensor_noise',
    );
    expect(quantity.value).toBeCloseTo(1 / Math.sqrt(12), 1);
    expect(interval![0]).toBeLessThan(1 / Math.sqrt(12));
    expect(interval![1]).toBeGreaterThan(1 / Math.sqrt(12));
    expect(figuresOf({ soc: { quantity: 'temperature', values: () => 40, step: 1 } }).get('sensor_noise')).toMatchObject({
      absent: 'out-of-range',
      bound: { relation: '<', value: 1, unit: 'K' },
    });
    const few = derive(logOf(every(1, 10), { soc: { quantity: 'temperature', values: () => 40 } }), contextOf({ phases: [] }));
    expect(few.figures.get('sensor_noise')).toMatchObject({ absent: 'no-readings' });
  });

  const room = (value: number, u = 0.2) => ({
    value,
    unit: 'dB',
    parts: [{ source: { id: 'room', title: 'room', dof: null }, share: u }],
  });
  const mic = (level: number) => ({ mic: { quantity: 'sound_level' as const, values: () => level, step: 0.1 } });
  const inRoom = (level: number, background: number) =>
    figuresOf(mic(level), { background: room(background), microphone: '0.5 m in front' }).get('device_sound_level')!;

  test('the room is taken off by energy, and a level near it is a bound', () => {
    // 10 lg(10^4.6 − 10^4) = 44.7437; 10 dB above take 0.4576 off.
    expect(inRoom(46, 40)).toMatchObject({ quantity: { value: expect.closeTo(44.7437, 3), unit: 'dB' } });
    expect(inRoom(50, 40)).toMatchObject({ quantity: { value: expect.closeTo(49.5424, 4) } });
    expect(inRoom(70, 40)).toMatchObject({ quantity: { value: expect.closeTo(69.9957, 3) } });
    expect(inRoom(43, 40)).toMatchObject({
      absent: 'out-of-range',
      bound: { relation: '<', value: expect.closeTo(41.7, 9), unit: 'dB' },
    });
    expect(inRoom(39, 40)).toMatchObject({ absent: 'out-of-range' });
  });

  test('near the room both levels count for more', () => {
    const near = inRoom(46, 40);
    const share = 10 ** -0.6;
    const u = standardUncertainty((near as { quantity: Parameters<typeof standardUncertainty>[0] }).quantity)!;
    expect(u).toBeCloseTo(Math.hypot(0.1 / Math.sqrt(12) / (1 - share), (0.2 * share) / (1 - share)), 6);
  });

  test('distance and background are asked for', () => {
    const bare = figuresOf(mic(46)).get('device_sound_level')!;
    expect(bare).toMatchObject({ absent: 'no-condition' });
    expect((bare as { why: string }).why).toContain('`background_sound`) and where the microphone stood (`microphone_distance`)');
  });
});
