/** Amplitudes of a step response where no channel shows a boost: closed forms of linear devices. */
import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { isPresent } from '../../../src/figures/figure.ts';
import { interval95 } from '../../../src/quantities/uncertainty.ts';
import { quantise, wandering } from '../../simulator/noise.ts';
import { random } from '../../simulator/random.ts';
import { contextOf, every, logOf, phase, presentAt } from '../build.ts';

const [IDLE, LOAD, CONSTANT, HEIGHT, ROW] = [300, 2400, 320, 31, 2];
const SEEDS = Array.from({ length: 16 }, (_, k) => k + 1);

interface Boost {
  readonly times: number;
  readonly seconds: number;
  /** K: of a part of the chip that is over in seconds. */
  readonly chip?: number;
  /** s of idling before the load. */
  readonly idle?: number;
  /** s: the first row. */
  readonly from?: number;
}

function figuresOf({ times, seconds, chip = 0, idle = IDLE, from = 0 }: Boost, seed: number, meter = false) {
  const chance = random(seed);
  const noise = wandering(chance, 0.1, 10, ROW);
  const start = 31 + chance.uniform() / 10;
  const part = (t: number, height: number, constant: number) => (t <= 0 ? 0 : height * (1 - Math.exp(-t / constant)));
  const step = (t: number) => part(t, HEIGHT, CONSTANT) + part(t, chip, 12);
  const course = (t: number) => start + step(t - idle) + (times - 1) * (step(t - idle) - step(t - idle - seconds));
  const rows = every(ROW, idle + LOAD).filter((t) => t >= from);
  const watts = (t: number) => (t < idle ? 2 : 2 + 6 * (t < idle + seconds ? times : 1));
  const log = logOf(rows, {
    soc: { quantity: 'temperature', values: (t) => quantise(course(t) + noise(), 0.1), step: 0.1 },
    ...(meter ? ({ draw: { quantity: 'power', values: watts } } as const) : {}),
  });
  const load = phase('load', idle, idle + LOAD);
  return derive(log, contextOf({ phases: idle > 0 ? [phase('idle', 0, idle), load] : [load] })).figures;
}

describe('an amplitude where no channel shows the load', () => {
  test.each<[string, Boost]>([
    ['a boost by 30 % for 60 s', { times: 1.3, seconds: 60 }],
    ['a boost by 30 % for 60 s, without an idle phase', { times: 1.3, seconds: 60, idle: 0 }],
    ['a boost by 20 % for 30 s', { times: 1.2, seconds: 30 }],
    ['a load that began 20 % lower for 60 s', { times: 0.8, seconds: 60 }],
    ['no boost, and a part of the chip', { times: 1, seconds: 0, chip: 4 }],
    ['a boost by 20 % for 60 s, and a part of the chip', { times: 1.2, seconds: 60, chip: 4 }],
    ['no boost', { times: 1, seconds: 0 }],
  ])('holds the truth: %s', (_, boost) => {
    const made = SEEDS.map((seed) => figuresOf(boost, seed).get('response_amplitude')!).filter(isPresent);
    const held = made.filter(({ interval }) => interval![0] <= HEIGHT && HEIGHT <= interval![1]);
    expect(made.length).toBeGreaterThanOrEqual(10);
    expect(held.length).toBeGreaterThanOrEqual(made.length - 1);
    // What is computed further, as a difference, rests on the standard uncertainty alone.
    const alone = made.filter(({ quantity }) => {
      const [low, high] = interval95(quantity)!;
      return low <= HEIGHT && HEIGHT <= high;
    });
    expect(alone.length).toBeGreaterThanOrEqual(made.length - 1);
  });

  test('is told closely where the fit begins at the temperature that was read before the load', () => {
    for (const seed of SEEDS.slice(0, 4)) {
      const { interval, quantity } = presentAt(figuresOf({ times: 1, seconds: 0 }, seed), 'response_amplitude');
      expect(interval![1] - interval![0]).toBeLessThan(3);
      expect(quantity.parts?.map(({ source }) => source.title)).toContain('a boost that no channel shows');
    }
  });

  test('is absent where no reading shows what the load began from', () => {
    expect(figuresOf({ times: 1, seconds: 0, idle: 0, from: 6 }, 1).get('response_amplitude')).toMatchObject({
      absent: 'not-observed',
      why: expect.stringMatching(/no reading shows the temperature that it began from/),
    });
  });

  test('needs no such room where the power is logged', () => {
    const { quantity } = presentAt(figuresOf({ times: 1, seconds: 0 }, 1, true), 'response_amplitude');
    expect(quantity.parts?.map(({ source }) => source.title)).not.toContain('a boost that no channel shows');
  });
});
