import { describe, expect, test } from 'vitest';
import { alignLog } from '../../../src/figures/alignment/align.ts';
import { deriveJoined } from '../../../src/figures/alignment/derive-joined.ts';
import { derive } from '../../../src/figures/derive.ts';
import { joinLogs } from '../../../src/intake/joined.ts';
import { contextOf, every, logOf, phase, presentAt } from '../build.ts';
import { logsOf, POWER, pairOf } from './pairs.ts';

const RUN = 'soak';
const SOURCE = `run:${RUN}/alignment/meter`;

function ofPair(seed: number) {
  const pair = pairOf(seed, 2);
  const [device, meter] = logsOf(pair);
  const alignment = alignLog({ name: 'device', log: device }, { name: 'meter', log: meter, offset: { by: 'load edge' } });
  if (typeof alignment === 'string') throw new Error(alignment);
  const logs = [
    { name: 'device', log: device, alignment: null },
    { name: 'meter', log: meter, alignment },
  ];
  const [from, to] = pair.load;
  const context = contextOf({
    phases: [phase('idle', 40, 200), phase('load', from, to)],
    ambient: { value: 22, unit: '°C', parts: [] },
  });
  return { device, meter, alignment, context, ...deriveJoined(logs, ['load', 'soc', 'input'], context) };
}

const shareOf = (figures: Parameters<typeof presentAt>[0], address: string) =>
  presentAt(figures, address).quantity.parts!.find(({ source }) => source.id === SOURCE)?.share;

describe('figures/alignment: figures of several logs', () => {
  test('figures that mix logs carry the alignment, those of one log are what that log alone gives', () => {
    const { derived, device, context, alignment } = ofPair(3);
    const alone = derive(device, context).figures;
    for (const address of ['idle_temperature', 'end_temperature', 'peak_temperature'] as const) {
      expect(presentAt(derived.figures, address).quantity, address).toEqual(presentAt(alone, address).quantity);
    }
    // The meter's readings at phases of the device's clock: an edge that is off by u moves the energy of the load by 6 W × u twice over.
    expect(shareOf(derived.figures, 'energy.load')).toBeDefined();
    expect(shareOf(derived.figures, 'load_power')).toBeDefined();
    expect(Math.abs(shareOf(derived.figures, 'energy.load')!)).toBeLessThan(2 * (POWER.load - POWER.idle) * (alignment.u + 2));
    const part = presentAt(derived.figures, 'load_power').quantity.parts!.find(({ source }) => source.id === SOURCE)!;
    expect(part.source).toMatchObject({ distribution: 'rectangular', standard: { u: alignment.u, unit: 's' } });
  });

  test('a meter that writes every two seconds has no gaps and no missing readings, and its figures name its file', () => {
    const { derived, meter } = ofPair(4);
    const power = presentAt(derived.figures, 'load_power');
    expect(power.of).not.toHaveProperty('gaps');
    expect(power.from.file).toBe('data/invented/meter.csv');
    const [first, last] = power.from.rows!;
    expect(last - first).toBeGreaterThan(880);
    expect(last).toBeLessThanOrEqual(meter.lines.at(-1)!);
    expect(presentAt(derived.figures, 'rise_per_watt').from).toMatchObject({ others: [{ file: 'data/invented/meter.csv' }] });
  });

  test('voltage in one log and current in another make a power at the rows of the current', () => {
    const seconds = every(1, 600);
    const current = logOf(seconds, { amps: { quantity: 'current', at: 'rail', values: (t) => 1 + t / 600 } });
    const voltage = logOf(every(7, 700), { volts: { quantity: 'voltage', at: 'rail', values: (t) => 10 - t / 100 } });
    const log = joinLogs(
      [
        { name: 'a', log: current, at: 0 },
        { name: 'b', log: voltage, at: -20 },
      ],
      ['amps', 'volts'],
    );
    const { figures } = derive(log, contextOf({ phases: [phase('load', 0, 600)] }));
    // ∫ (1 + t/600) (10 − (t + 20)/100) dt over 600 s ÷ 600 s, in closed form.
    const mean = 9.8 * 1.5 - (300 + 200) / 100 - 0;
    expect(presentAt(figures, 'load_power').quantity.value).toBeCloseTo(mean, 2);
  });
});
