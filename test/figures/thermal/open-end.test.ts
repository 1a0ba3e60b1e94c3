/** An end that the load leaves open, because a room warms or the power climbs: simulated linear devices. */
import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import type { AbsentFigure } from '../../../src/figures/figure.ts';
import type { Quantity } from '../../../src/quantities/quantity.ts';
import { quantise } from '../../simulator/noise.ts';
import { random } from '../../simulator/random.ts';
import { contextOf, every, logOf, phase } from '../build.ts';

const [IDLE, CONSTANT, PER_WATT, IDLE_POWER, LOAD_POWER] = [300, 320, 5, 2, 8];
const SEEDS = Array.from({ length: 12 }, (_, k) => k + 1);

interface Bench {
  /** K an hour, from the beginning of the log. */
  readonly drift?: number;
  readonly stated?: Quantity;
  /** Share by which the power climbs through the load. */
  readonly creep?: number;
  /** W/K of the chip. */
  readonly leak?: number;
  /** K/W of a part with a time constant of four hours. */
  readonly slow?: number;
  readonly meter?: boolean;
  readonly load?: number;
}

function simulate({ drift = 0, stated, creep = 0, leak = 0, slow = 0, meter = true, load = 3600 }: Bench, seed: number) {
  const chance = random(seed);
  const room = (t: number) => 22.4 + (drift * t) / 3600;
  const rows = every(2, IDLE + load);
  const parts = [
    { tau: CONSTANT, perWatt: PER_WATT, rise: PER_WATT * IDLE_POWER },
    { tau: 4 * 3600, perWatt: slow, rise: slow * IDLE_POWER },
  ];
  let felt = room(0);
  const [power, temperature] = [new Float64Array(rows.length), new Float64Array(rows.length)];
  rows.forEach((t, row) => {
    const rise = parts.reduce((sum, part) => sum + part.rise, 0);
    const warmer = rise - (PER_WATT + slow) * IDLE_POWER;
    const watts = (t < IDLE ? IDLE_POWER : LOAD_POWER * (1 + (creep * (t - IDLE)) / load)) + leak * warmer;
    felt += ((room(t) - felt) * 2) / CONSTANT;
    power[row] = quantise(watts + 0.05 * chance.normal(), 0.01);
    temperature[row] = quantise(felt + rise + 0.1 * chance.normal(), 0.1);
    for (const part of parts) part.rise += (part.perWatt * watts - part.rise) * -Math.expm1(-2 / part.tau);
  });
  const log = logOf(rows, {
    soc: { quantity: 'temperature', values: temperature, step: 0.1 },
    ...(meter ? ({ draw: { quantity: 'power', values: power, step: 0.01 } } as const) : {}),
  });
  const device = { id: 'larch', throttleAt: { soc: { value: 85, unit: '°C', parts: [] } } };
  const phases = [phase('idle', 0, IDLE), phase('load', IDLE, IDLE + load)];
  const context = contextOf({ phases, device, ...(stated ? { ambient: stated } : {}) });
  const absentAt = (name: string) => derive(log, context).figures.get(name) as AbsentFigure;
  const rise = PER_WATT * LOAD_POWER;
  return {
    asymptote: absentAt('asymptote_temperature'),
    ceiling: absentAt('ambient_ceiling'),
    atMean: room(IDLE + load / 2) + rise,
    atEnd: room(IDLE + load) + rise,
    ceilingTruth: 85 - rise,
  };
}

const source = { id: 'condition:ambient', title: 'stated ambient', dof: null };
/** ± 0.5 °C, as limits. */
const STATED: Quantity = { value: 22.4, unit: '°C', parts: [{ source, share: 0.5 / Math.sqrt(3) }] };

describe('a room that warms and is not measured', () => {
  test('bounds by a stated ambient leave room for its drift, and the reason names the room', () => {
    for (const seed of SEEDS) {
      const { asymptote, ceiling, atMean, ceilingTruth } = simulate({ drift: 0.8, stated: STATED, meter: false }, seed);
      expect(asymptote).toMatchObject({ absent: 'too-short', bound: { relation: '>' } });
      expect(asymptote.why).toMatch(/A room that warmed would look the same: no channel measures the ambient\.$/);
      expect(asymptote.bound!.value).toBeLessThan(atMean);
      expect(asymptote.bound!.value).toBeGreaterThan(atMean - 2);
      if (ceiling.bound?.relation === '<') expect(ceiling.bound.value).toBeGreaterThan(ceilingTruth);
    }
  });

  test.each([0.5, 2])('by %d K an hour, of which nothing is known: the lower end is said to be of the room at the end', (drift) => {
    for (const seed of SEEDS) {
      const { asymptote, atEnd } = simulate({ drift, meter: false }, seed);
      expect(asymptote).toMatchObject({ absent: 'too-short', bound: { relation: '>' } });
      expect(asymptote.why).toMatch(/A lower end holds for the room as it was when the load ended\.$/);
      expect(asymptote.bound!.value).toBeLessThan(atEnd);
    }
  });
});

describe('a power that climbs through the load', () => {
  test.each([0.04, 0.08])('by a share of %d: the reason names it, for the ceiling too, and gives no bound', (creep) => {
    for (const seed of SEEDS) {
      const { asymptote, ceiling } = simulate({ creep, stated: STATED, load: 2400 }, seed);
      for (const figure of [asymptote, ceiling]) {
        expect(figure.absent).toBe('load-changed');
        expect(figure.why).toMatch(
          /^The power \(channel draw\) climbed by [\d.]+ % over the last third of the load, which accounts for [\d.]+ K of the [\d.]+ K that soc climbed there\./,
        );
        expect(figure).not.toHaveProperty('bound');
      }
    }
  });

  test('leakage that follows a slower part is not taken for its cause', () => {
    const slower = /^A slower part, with a time constant above|^The load was too short to exclude a slower part/;
    const ends = SEEDS.map((seed) => simulate({ slow: 2, leak: 0.015, stated: STATED }, seed).asymptote).filter(
      ({ absent }) => absent,
    );
    expect(ends.length).toBeGreaterThanOrEqual(6);
    for (const { why } of ends) expect(why).toMatch(slower);
  });
});
