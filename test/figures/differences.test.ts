/** Differences of two runs on one bench: offsets cancel, what the steps of the sensors hide of each reading does not. */
import { describe, expect, test } from 'vitest';
import type { RunContext } from '../../src/figures/context.ts';
import { derive } from '../../src/figures/derive.ts';
import { subtract } from '../../src/quantities/arithmetic.ts';
import type { Quantity } from '../../src/quantities/quantity.ts';
import { isRefusal } from '../../src/quantities/refusal.ts';
import { standardUncertainty } from '../../src/quantities/uncertainty.ts';
import { apart, contextOf, every, instrumentOf, logOf, presentAt } from './build.ts';

/** JCGM 100:2008, F.2.2.1: a step hides its width over √12; 5.1.2 for two that are independent. */
const hidden = (step: number) => Math.sqrt(2) * (step / Math.sqrt(12));

function figures(run: string, celsius: number, amperes: number) {
  const instruments: RunContext['instruments'] = {
    probe: instrumentOf('probe', 'temperature', { absolute: 1.5 }),
    meter: {
      ...instrumentOf('meter', 'current', { absolute: 0.05 }),
      accuracy: {
        current: instrumentOf('meter', 'current', { absolute: 0.05 }).accuracy.current!,
        voltage: instrumentOf('meter', 'current', { absolute: 0.1 }).accuracy.current!,
      },
    },
  };
  const log = logOf(every(2, 3600), {
    soc: { quantity: 'temperature', values: () => celsius, instrument: 'probe', step: 0.5 },
    amps: { quantity: 'current', values: () => amperes, at: 'board input', instrument: 'meter', step: 0.01 },
    volts: { quantity: 'voltage', values: () => 5, at: 'board input', instrument: 'meter', step: 0.1 },
  });
  return derive(log, contextOf({ run, instruments })).figures;
}

function difference(name: string): Quantity {
  const [a, b] = [figures('first', 60, 2), figures('second', 55, 2)].map((each) => presentAt(each, name).quantity);
  const result = subtract(a!, b!);
  if (isRefusal(result)) throw new Error(result.refused);
  return result;
}

describe('figures/differences', () => {
  test.each([
    ['steady_temperature', hidden(0.5)],
    ['peak_temperature', hidden(0.5)],
    ['load_current', hidden(0.01)],
    ['load_power', hidden(Math.hypot(5 * 0.01, 2 * 0.1))],
    ['peak_power', hidden(Math.hypot(5 * 0.01, 2 * 0.1))],
  ])('%s of constant readings: the steps of both runs stay', (name, expected) => {
    expect(apart(standardUncertainty(difference(name))!, expected)).toBeLessThan(1e-9);
  });
});
