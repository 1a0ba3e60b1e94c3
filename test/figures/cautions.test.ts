import { describe, expect, test } from 'vitest';
import { attemptCautions, cautions, mergeCautions } from '../../src/figures/cautions.ts';
import type { RunContext } from '../../src/figures/context.ts';
import { derive } from '../../src/figures/derive.ts';
import { type ChannelSketch, contextOf, every, instrumentOf, logOf, phase } from './build.ts';

const hertz = (value: number) => ({ value, unit: 'Hz', parts: [] });

function idsOf(context: Partial<RunContext>, channels: Readonly<Record<string, ChannelSketch>> = {}, seconds = 600): string[] {
  const whole = contextOf(context);
  return cautions(whole, derive(logOf(every(1, seconds), channels), whole)).map(({ id }) => id);
}

describe('cautions', () => {
  test('none where nothing calls for one', () => {
    expect(
      idsOf({
        setting: { clock: hertz(2e9), voltageOffset: { value: -0.02, unit: 'V', parts: [] } },
        device: { id: 'larch', throttleAt: {}, ratedClock: hertz(2e9) },
      }),
    ).toEqual([]);
  });

  const limit = { soc: { value: 80, unit: '°C', parts: [] } };
  test.each<[string, Partial<RunContext>, Readonly<Record<string, ChannelSketch>>]>([
    ['raised-voltage', { setting: { voltageOffset: { value: 0.04, unit: 'V', parts: [] } } }, {}],
    [
      'clock-above-rating',
      { setting: { clock: hertz(2.6e9) }, device: { id: 'larch', throttleAt: {}, ratedClock: hertz(2e9) } },
      {},
    ],
    [
      'clock-above-rating',
      { device: { id: 'larch', throttleAt: {}, ratedClock: hertz(2e9) } },
      { core: { quantity: 'clock', values: () => 2.2e9 } },
    ],
    ['held-at-limit', { device: { id: 'larch', throttleAt: limit } }, { soc: { quantity: 'temperature', values: () => 80 } }],
    ['mains-side', { instruments: { plug: instrumentOf('plug', 'power', {}, { connected: 'mains side' }) } }, {}],
    ['battery', { device: { id: 'larch', throttleAt: {}, power: 'battery' } }, {}],
  ])('%s', (id, context, channels) => {
    expect(idsOf(context, channels)).toEqual([id]);
  });

  test('a long soak', () => {
    expect(idsOf({}, {}, 3600)).toEqual(['long-soak']);
  });

  test('each says the risk in whole sentences, and defers where the law or a licence has the word', () => {
    const context = contextOf({
      setting: { voltageOffset: { value: 0.04, unit: 'V', parts: [] }, clock: hertz(2.6e9) },
      device: { id: 'larch', throttleAt: limit, ratedClock: hertz(2e9), power: 'battery' },
      instruments: { plug: instrumentOf('plug', 'power', {}, { connected: 'mains side' }) },
    });
    const log = logOf(every(1, 3600), { soc: { quantity: 'temperature', values: () => 80 } });
    const texts = new Map(cautions(context, derive(log, context)).map(({ id, text }) => [id, text]));
    expect([...texts.keys()]).toEqual([
      'raised-voltage',
      'clock-above-rating',
      'held-at-limit',
      'mains-side',
      'battery',
      'long-soak',
    ]);
    for (const text of texts.values()) expect(text).toMatch(/^[A-Z].*\.$/);
    expect(texts.get('raised-voltage')).toMatch(/40.mV.*damage.*warranty.*lose data/);
    expect(texts.get('clock-above-rating')).toMatch(/2\.6.GHz, above its rated 2(\.0)?.GHz.*damage.*warranty.*lose data/);
    expect(texts.get('held-at-limit')).toMatch(/60 min.*burn/);
    expect(texts.get('mains-side')).toMatch(/shock.*fire.*licensed.*code/);
    expect(texts.get('battery')).toMatch(/fire.*local rules/);
    expect(texts.get('long-soak')).toMatch(/fire.*burn.*local fire rules/);
  });

  test('a load lasts as long as its rows: a declared hour of which the log holds ten minutes is no long soak', () => {
    const load = (from: number, to: number) => ({ phases: [phase('load', from, to)] });
    expect(idsOf(load(0, 3600))).toEqual([]);
    expect(idsOf(load(0, 3600), {}, 3600)).toEqual(['long-soak']);
    expect(idsOf(load(900, 4500))).toEqual([]);
  });

  test('what was done and what it risks stand apart, and several of a kind merge: each deed once, the risk once', () => {
    const raised = (volts: number) => {
      const whole = contextOf({ setting: { voltageOffset: { value: volts, unit: 'V', parts: [] } } });
      return cautions(whole, derive(logOf(every(1, 600), {}), whole));
    };
    const [one] = raised(0.04);
    expect(one!.text).toBe(`${one!.done} ${one!.risk}`);
    const merged = mergeCautions([...raised(0.06), ...raised(0.04), ...raised(0.06), ...raised(0)]);
    expect(merged).toEqual([
      {
        id: 'raised-voltage',
        done: ['The core voltage was raised by 60\u00a0mV.', 'The core voltage was raised by 40\u00a0mV.'],
        risk: one!.risk,
      },
    ]);
    expect(mergeCautions([])).toEqual([]);
  });

  test('settings that were tried: the largest offset and clock, where they are above what is rated', () => {
    const ladder = (...settings: [clock: number, offset: number][]) => ({
      specimen: 'no-1',
      file: 'data/attempts.csv',
      columns: [],
      attempts: settings.map(([clock, offset], index) => {
        return { line: index + 2, clock, offset, outcome: 'passed' as const, note: '', passing: null };
      }),
    });
    const told = attemptCautions(ladder([2e9, 0], [2.6e9, 0.04], [2.4e9, 0.1]), hertz(2e9)).map(({ id, done }) => `${id}: ${done}`);
    expect(told).toEqual([
      'raised-voltage: Settings with up to 100\u00a0mV more core voltage were tried on specimen no-1.',
      expect.stringMatching(
        /^clock-above-rating: Clocks up to 2\.6.GHz were tried on specimen no-1, above the rated 2(\.0)?.GHz\.$/,
      ),
    ]);
    expect(attemptCautions(ladder([2e9, 0], [1.8e9, -0.02]), hertz(2e9))).toEqual([]);
    expect(attemptCautions(ladder([9e9, 0]), undefined)).toEqual([]);
  });
});
