import { describe, expect, test } from 'vitest';
import { deriveJoined } from '../../../src/figures/alignment/derive-joined.ts';
import type { RunContext } from '../../../src/figures/context.ts';
import { derive } from '../../../src/figures/derive.ts';
import type { HandReading } from '../../../src/figures/hand/hand-reading.ts';
import { intervalOf } from '../../../src/figures/sources.ts';
import { standardUncertainty } from '../../../src/quantities/uncertainty.ts';
import { random } from '../../simulator/random.ts';
import { apart, contextOf, every, instrumentOf, logOf, phase, presentAt } from '../build.ts';
import { compareRuns } from '../comparison/runs.ts';

const PLACE = { file: 'content/runs/soak.md', line: 9, column: 5 };

function reading(more: Partial<HandReading> & Pick<HandReading, 'quantity' | 'values'>): HandReading {
  return { times: more.values.length, lastDigit: 0.01, phase: 'load', shows: 'level', text: '', place: PLACE, ...more };
}

const figuresOf = (readings: readonly HandReading[], more: Partial<RunContext> = {}) =>
  deriveJoined([], [], contextOf({ readings, phases: [], ...more })).derived.figures;

describe('figures/hand', () => {
  test('one reading has the step of its display twice over, as rectangular limits of half a step (JCGM 100:2008, F.2.2.1)', () => {
    const { quantity, of, from } = presentAt(
      figuresOf([reading({ quantity: 'current', values: [0.62], step: 0.02 })]),
      'load_current',
    );
    expect(quantity).toMatchObject({ value: 0.62, unit: 'A', step: 0.02 });
    expect(quantity.parts!.map(({ source, share }) => [source.id, source.distribution, share])).toEqual([
      ['run:soak/load_current/display', 'rectangular', 0.02 / Math.sqrt(12)],
      ['run:soak/load_current/moment', 'rectangular', 0.02 / Math.sqrt(12)],
    ]);
    expect(of).toMatchObject({ phase: 'load', read: 'read off a display once' });
    expect(from).toEqual({ columns: [], rows: null, file: 'content/runs/soak.md' });
  });

  test('readings that scatter add s/√n with n − 1 degrees of freedom (JCGM 100:2008, 4.2.3)', () => {
    const { quantity } = presentAt(
      figuresOf([reading({ quantity: 'power', values: [10.1, 10.3, 10.5], step: 0.1 })]),
      'load_power',
    );
    expect(apart(quantity.value, 10.3)).toBeLessThan(1e-12);
    const sampling = quantity.parts!.find(({ source }) => source.id.endsWith('/sampling'))!;
    expect(sampling.source.dof).toBe(2);
    expect(apart(sampling.share, 0.2 / Math.sqrt(3))).toBeLessThan(1e-12);
    expect(apart(standardUncertainty(quantity)!, Math.hypot(0.2 / Math.sqrt(3), 0.1 / Math.sqrt(12)))).toBeLessThan(1e-12);
  });

  test('the instrument adds its accuracy and correction, shared with all else that it reads; its resolution is the step', () => {
    const meter = instrumentOf(
      'meter',
      'current',
      { absolute: 0.03 },
      {
        resolution: { current: { value: 0.05, unit: 'A', parts: [] } },
        correction: { current: { value: 0.1, unit: 'A', u: 0, text: '0.1 A' } },
      },
    );
    const figures = figuresOf([reading({ quantity: 'current', values: [0.6], instrument: 'meter' })], { instruments: { meter } });
    const { quantity, inferred } = presentAt(figures, 'load_current');
    expect(quantity.value).toBeCloseTo(0.7, 12);
    expect(quantity.step).toBe(0.05);
    expect(quantity.parts!.find(({ source }) => source.id === 'instrument:meter/current/offset')!.share).toBeCloseTo(
      0.03 / Math.sqrt(3),
      12,
    );
    expect(inferred!.join()).toContain('at a moment');
  });

  test('a current makes a power with the voltage that was read beside it, or with the supply that is stated for its place', () => {
    const at = 'board input' as const;
    const current = reading({ quantity: 'current', values: [2], step: 0.01, at });
    const both = figuresOf([current, reading({ quantity: 'voltage', values: [5], step: 0.1, at })]);
    expect(presentAt(both, 'load_power').quantity.value).toBe(10);
    const expected = Math.hypot(5 * 0.01, 2 * 0.1) / Math.sqrt(6);
    expect(apart(standardUncertainty(presentAt(both, 'load_power').quantity)!, expected)).toBeLessThan(1e-12);
    const supply = { voltage: { value: 5.1, unit: 'V', parts: [] }, at };
    const supplied = figuresOf([current], { supply });
    expect(presentAt(supplied, 'load_power').quantity.value).toBeCloseTo(10.2, 12);
    expect(presentAt(supplied, 'load_power').of?.power).toMatch(/^current × stated supply of 5\.1/);
    expect(figuresOf([{ ...current, at: 'wall' }], { supply }).get('load_power')).toMatchObject({ absent: 'no-channel' });
    expect(figuresOf([current]).get('load_power')).toMatchObject({ why: 'The run has no log, and no reading gives it.' });
  });

  test('two currents read off displays one step apart are not told apart; two steps are', () => {
    const at = 'board input' as const;
    const supply = { voltage: { value: 5, unit: 'V', parts: [] }, at };
    const run = (id: string, amperes: number) => {
      const readings = [reading({ quantity: 'current', values: [amperes], step: 0.02, at })];
      return { more: { load_power: presentAt(figuresOf(readings, { supply, run: id }), 'load_power') } };
    };
    const verdict = (a: number, b: number) =>
      presentAt(compareRuns({ one: run('one', a), two: run('two', b) }), 'power_delta.two').of?.verdict;
    expect(verdict(0.62, 0.64)).toBe('not told apart');
    expect(verdict(0.62, 0.62)).toBe('not told apart');
    expect(verdict(0.62, 0.66)).toBe('these two runs differ');
  });

  test('says that the step is that of the last digit where none is stated, and that a moment was read where nothing scatters', () => {
    const inferred = (more: Partial<HandReading>) =>
      presentAt(figuresOf([reading({ quantity: 'power', values: [10], ...more })]), 'load_power').inferred ?? [];
    const [digit, moment] = [
      'The step of the display is taken from the last digit that was written down.',
      'It was read at a moment: how it varied meanwhile is not known and not in its interval.',
    ];
    expect(inferred({ lastDigit: 0.1 })).toEqual([digit, moment]);
    expect(inferred({ lastDigit: 0.1, step: 0.1 })).toEqual([moment]);
    expect(inferred({ lastDigit: 0.1, values: [10, 10.2], times: 2 })).toEqual([digit]);
  });

  test('levels of sound average by energy (ISO 1996-1, from memory): 40 dB and 50 dB make 47.4 dB', () => {
    const { quantity } = presentAt(figuresOf([reading({ quantity: 'sound_level', values: [40, 50] })]), 'sound_level');
    expect(quantity.value).toBeCloseTo(10 * Math.log10((1e4 + 1e5) / 2), 9);
  });

  test('a settled temperature gives the rise over the stated ambient, and K/W with a power', () => {
    const ambient = { value: 22, unit: '°C', parts: [] };
    const readings = [
      reading({ quantity: 'temperature', values: [62], step: 0.1, shows: 'settled' }),
      reading({ quantity: 'power', values: [10], step: 0.1 }),
    ];
    const figures = figuresOf(readings, { ambient });
    expect(presentAt(figures, 'temperature_rise').quantity).toMatchObject({ value: 40, unit: 'K' });
    expect(presentAt(figures, 'rise_per_watt').quantity.value).toBeCloseTo(4, 12);
  });

  test('beside a log a reading gives what the log lacks; what the log has keeps its address', () => {
    const log = logOf(every(1, 600), { soc: { quantity: 'temperature', values: () => 50 } });
    const readings = [
      reading({ quantity: 'power', values: [10], step: 0.1 }),
      reading({ quantity: 'temperature', values: [58], step: 0.1, name: 'thermometer' }),
    ];
    const { figures } = derive(log, contextOf({ readings, phases: [phase('load', 0, 600)] }));
    expect(presentAt(figures, 'load_power').quantity.value).toBe(10);
    expect(presentAt(figures, 'end_temperature').quantity.value).toBe(50);
    expect(presentAt(figures, 'end_temperature.thermometer').quantity.value).toBe(58);
  });

  test('a reading never takes the address of a figure of the log', () => {
    const log = logOf(every(1, 600), {
      soc: { quantity: 'temperature', values: () => 50 },
      display: { quantity: 'temperature', values: () => 40 },
    });
    const readings = [reading({ quantity: 'temperature', values: [58], step: 0.1 })];
    const { figures } = derive(log, contextOf({ readings, phases: [phase('load', 0, 600)] }));
    expect(presentAt(figures, 'end_temperature.display').quantity.value).toBe(40);
    expect(presentAt(figures, 'end_temperature.display_by_hand').quantity.value).toBe(58);
  });

  test('each current has the voltage of its name; with several and none of its name there is no power', () => {
    const at = 'board input' as const;
    const volts = (value: number, name: string) => reading({ quantity: 'voltage', values: [value], at, name });
    const amperes = (value: number, name?: string) =>
      reading({ quantity: 'current', values: [value], at, ...(name ? { name } : {}) });
    const rails = figuresOf([volts(12, 'high'), volts(5, 'low'), amperes(2, 'low'), amperes(1, 'high')]);
    expect(presentAt(rails, 'load_power').quantity.value).toBe(10);
    expect(presentAt(rails, 'load_power.high').quantity.value).toBe(12);
    expect(figuresOf([volts(12, 'high'), volts(5, 'low'), amperes(2)]).get('load_power')).toHaveProperty('absent');
  });

  test('a highest power leaves the load power to current × voltage', () => {
    const figures = figuresOf([
      reading({ quantity: 'power', values: [14], shows: 'highest' }),
      reading({ quantity: 'current', values: [2] }),
      reading({ quantity: 'voltage', values: [5] }),
    ]);
    expect(presentAt(figures, 'load_power').quantity.value).toBe(10);
  });

  test('a supply without its place is asked for the place', () => {
    const supply = { voltage: { value: 12, unit: 'V', parts: [] } };
    const { derived } = deriveJoined(
      [],
      [],
      contextOf({ readings: [reading({ quantity: 'current', values: [2], at: 'board input' })], phases: [], supply }),
    );
    expect(derived.figures.get('load_power')).toMatchObject({
      why: expect.stringMatching(/lacks its place: state `supply: 12.* at board input`/),
    });
  });

  // Known truth, simulated: a display cuts or rounds, and flickers between the two steps beside the truth.
  test('the interval of a reading holds the truth behind a display in 95 % and more of 400 trials', () => {
    const { uniform } = random(7);
    const held = Array.from({ length: 400 }, () => {
      const truth = 0.5 + uniform();
      const shown = 0.02 * Math.floor(truth / 0.02 + uniform());
      const { quantity } = presentAt(figuresOf([reading({ quantity: 'current', values: [shown], step: 0.02 })]), 'load_current');
      const [low, high] = intervalOf(quantity)!;
      return truth >= low && truth <= high;
    }).filter(Boolean).length;
    expect(held / 400).toBeGreaterThan(0.93);
  });
});
