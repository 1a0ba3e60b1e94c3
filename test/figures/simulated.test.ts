/** Figures of simulated soaks against what the simulated device really did: do the 95 % intervals cover the truth? */
import { describe, expect, test } from 'vitest';
import { derive } from '../../src/figures/derive.ts';
import { isPresent, type PresentFigure, type RunFigures } from '../../src/figures/figure.ts';
import type { Accuracy } from '../../src/quantities/accuracy.ts';
import { interval95 } from '../../src/quantities/uncertainty.ts';
import { LIMITS, SPECIMENS, SUPPLY } from '../simulator/larch.ts';
import type { Options, Reading, Truth } from '../simulator/options.ts';
import { simulate } from '../simulator/simulate.ts';
import { contextOf, instrumentOf, logOf, phase, presentAt } from './build.ts';

const PHASES = [phase('idle', 0, 300), phase('load', 300, 3900)];

function options(seed: number, clock: number, more: Partial<Options> = {}): Options {
  return {
    seed,
    specimen: SPECIMENS['no-1'],
    setting: { clock, voltageOffset: 0 },
    schedule: { idle: 300, load: 3600, coolDown: 0 },
    room: { start: 22, warming: 1, wander: 0.04 },
    supply: SUPPLY,
    every: 2,
    limits: LIMITS,
    workload: { wander: 0.006, memory: 30 },
    ...more,
  };
}

const stated = (accuracy: Partial<Accuracy>, quantity: 'temperature' | 'ambient') => instrumentOf(quantity, quantity, accuracy);
const meterAccuracy: Accuracy = {
  ofReading: LIMITS.meterGain,
  absolute: 0,
  digits: LIMITS.meterDigits,
  coverage: 'rectangular',
  text: 'invented',
};
const INSTRUMENTS = {
  temperature: stated({ absolute: LIMITS.die }, 'temperature'),
  ambient: stated({ absolute: LIMITS.thermometer }, 'ambient'),
  meter: {
    ...instrumentOf('meter', 'current', {}),
    accuracy: { current: meterAccuracy, voltage: meterAccuracy },
    resolution: { current: { value: 0.001, unit: 'A', parts: [] }, voltage: { value: 0.01, unit: 'V', parts: [] } },
  },
};

function soak(made: Options): RunFigures & { truth: Truth } {
  const { rows, truth } = simulate(made);
  const column = (of: (row: Reading) => number) => rows.map(of);
  const log = logOf(
    column((row) => row.elapsed),
    {
      soc: { quantity: 'temperature', values: column((row) => row.die), instrument: 'temperature', step: LIMITS.dieStep },
      room: { quantity: 'ambient', values: column((row) => row.room), instrument: 'ambient', step: 0.1 },
      core: { quantity: 'clock', values: column((row) => row.clock), shows: 'delivered' },
      volts: { quantity: 'voltage', values: column((row) => row.voltage), at: 'board input', instrument: 'meter' },
      amps: { quantity: 'current', values: column((row) => row.current), at: 'board input', instrument: 'meter' },
    },
  );
  const context = contextOf({
    phases: PHASES,
    instruments: INSTRUMENTS,
    setting: { clock: { value: made.setting.clock, unit: 'Hz', parts: [] } },
  });
  return { ...derive(log, context), truth };
}

const covers = ({ quantity, interval }: PresentFigure, truth: number) => {
  const [low, high] = interval ?? interval95(quantity)!;
  return low <= truth && truth <= high;
};

describe('simulated soaks, each with instruments of its own', () => {
  const soaks = Array.from({ length: 24 }, (_, index) => soak(options(3000 + index, 2.0e9)));
  const truths: Readonly<Record<string, (truth: Truth) => number>> = {
    load_power: (truth) => truth.load.power,
    idle_power: (truth) => truth.idle.power,
    'energy.load': (truth) => truth.load.energy,
    mean_clock: (truth) => truth.load.clock,
    peak_temperature: (truth) => truth.load.peakDie,
    asymptote_temperature: (truth) => truth.steady.die,
    time_constant: (truth) => truth.timeConstants[1],
  };

  // Of 24 intervals at 95 %, fewer than 19 cover in one of 500 cases (binomial); wide ones (rectangular limits) cover nearly always.
  test.each(Object.keys(truths))('%s: the interval covers the truth', (name) => {
    const missed = soaks.filter(({ figures, truth }) => !covers(presentAt(figures, name), truths[name]!(truth)));
    expect(missed.length).toBeLessThanOrEqual(5);
  });

  test('steady temperature is that of the end of the load', () => {
    const missed = soaks.filter(({ figures, truth }) => !covers(presentAt(figures, 'steady_temperature'), truth.load.end.die));
    expect(missed.length).toBeLessThanOrEqual(5);
  });

  test('the slower of two time constants is found, and none throttled', () => {
    for (const { figures } of soaks) {
      expect(presentAt(figures, 'time_constant').of).toMatchObject({ fit: 'two exponentials, the second part is the faster one' });
      expect(figures.get('time_to_throttle')).toMatchObject({ absent: 'not-throttled' });
    }
  });
});

test('a soak that throttles: onset as the governor had it, no fit of one step', () => {
  const { figures, truth } = soak(options(77, 2.6e9, { setting: { clock: 2.6e9, voltageOffset: 0.08 } }));
  expect(truth.firstThrottle).not.toBeNull();
  expect(Math.abs(presentAt(figures, 'time_to_throttle').quantity.value - truth.firstThrottle!)).toBeLessThan(30);
  expect(figures.get('time_constant')).toMatchObject({ absent: 'load-changed' });
  expect(presentAt(figures, 'mean_clock').quantity.value).toBeLessThan(2.6e9);
});

test('a soak with a boost of a minute is no constant load', () => {
  const { figures } = soak(
    options(78, 1.8e9, { setting: { clock: 1.8e9, voltageOffset: 0, boost: { clock: 2.4e9, seconds: 60 } } }),
  );
  expect(isPresent(figures.get('time_constant')!)).toBe(false);
  expect(figures.get('time_constant')).toMatchObject({ absent: 'load-changed' });
});
