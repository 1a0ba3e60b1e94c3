/** Criteria of steady state on coarse and on noisy sensors: truths in closed form. */
import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import { isPresent } from '../../../src/figures/figure.ts';
import { CURVES, settlesAt } from '../../coverage/curves.ts';
import { quantise, wandering } from '../../simulator/noise.ts';
import { random } from '../../simulator/random.ts';
import { contextOf, every, logOf, phase, presentAt } from '../build.ts';

interface Sensor {
  readonly step: number;
  /** K, and its correlation time, s. */
  readonly noise: number;
  readonly memory?: number;
}

const LOAD = 9000;

/** Figures of a load on one of the simulated devices, read every 5 s. */
function read(sensor: Sensor, steady: string, seed: number, curve = CURVES[0]!, load = LOAD) {
  const chance = random(seed);
  const offset = chance.uniform() * sensor.step;
  const noise = sensor.memory
    ? wandering(chance, sensor.noise, sensor.memory, 5)
    : () => (sensor.noise > 0 ? sensor.noise * chance.normal() : 0);
  const values = (t: number) => quantise(22 + offset + curve.rise(t) + noise(), sensor.step);
  const log = logOf(every(5, load - 5), { soc: { quantity: 'temperature', values, step: sensor.step } });
  return { offset, figures: derive(log, contextOf({ steady, phases: [phase('load', 0, load)] })).figures };
}

describe('time to steady state', () => {
  test.each([
    ['1-k-in-15-min', 0.5, 0],
    ['1-k-in-15-min', 0.1, 0.1],
    ['iec-62368-1', 1, 0],
    ['iec-60034-1', 0.5, 0.15],
    ['iec-61810-7', 0.5, 0],
  ])(
    'by %s on a sensor with steps of %d K and noise of %d K: the interval holds the truth on every device',
    (steady, step, noise) => {
      for (const curve of CURVES)
        for (let seed = 1; seed <= 3; seed++) {
          const { figures } = read({ step, noise }, steady, seed, curve);
          const figure = figures.get('time_to_steady_state')!;
          const truth = settlesAt(curve, steady, LOAD)!;
          if (isPresent(figure)) {
            expect(figure.interval![0]).toBeLessThanOrEqual(truth);
            expect(figure.interval![1]).toBeGreaterThanOrEqual(truth);
          } else expect(figure.bound!.value).toBeLessThanOrEqual(truth);
        }
    },
  );

  test('a step as coarse as the limit never gives a time to the row', () => {
    const { figures } = read({ step: 1, noise: 0 }, '1-k-in-15-min', 3);
    const figure = figures.get('time_to_steady_state')!;
    const truth = settlesAt(CURVES[0]!, '1-k-in-15-min', LOAD)!;
    if (isPresent(figure)) {
      expect(figure.interval![0]).toBeLessThanOrEqual(truth);
      expect(figure.interval![1]).toBeGreaterThanOrEqual(truth);
    } else {
      expect(figure).toMatchObject({ absent: 'undecided', why: expect.stringContaining('steps of 1 K') });
      expect(figure.bound!.value).toBeLessThan(truth);
    }
  });
});

describe('a device that settled long ago', () => {
  test.each([
    ['1-k-in-15-min', 0],
    ['1-k-in-15-min', 30],
    ['ul-1029', 0],
    ['bs-1363-1', 0],
  ])('is steady by %s on a sensor of 1 K with 1 K of noise, correlation time %d s', (steady, memory) => {
    for (let seed = 1; seed <= 5; seed++) {
      const { figures, offset } = read({ step: 1, noise: 1, memory }, steady, seed);
      const { quantity } = presentAt(figures, 'steady_temperature');
      expect(Math.abs(quantity.value - 62 - offset)).toBeLessThan(1);
    }
  });

  test('is never said to climb, nor does a bound lie above the truth', () => {
    for (let seed = 1; seed <= 10; seed++) {
      const { figures, offset } = read({ step: 1, noise: 0.3, memory: 30 }, 'ul-1029', seed, CURVES[0], 3600);
      const figure = figures.get('steady_temperature')!;
      const bound = isPresent(figure) ? undefined : figure.bound;
      expect(bound?.value ?? 0).toBeLessThanOrEqual(62 + offset);
    }
  });
});

describe('a device that still climbs', () => {
  test.each([
    { step: 0.1, noise: 0 },
    { step: 0.1, noise: 0.1 },
    { step: 1, noise: 0.3 },
  ])('ends above its bound, on a sensor of $step K with noise of $noise K', (sensor) => {
    for (const load of [600, 900, 1200])
      for (let seed = 1; seed <= 3; seed++) {
        const { figures, offset } = read(sensor, '1-k-in-15-min', seed, CURVES[0], load);
        const figure = figures.get('steady_temperature') as { bound: { value: number; unit: string } };
        expect(figure.bound).toMatchObject({ relation: '>', unit: '°C' });
        expect(figure.bound.value).toBeLessThan(62 + offset);
        expect(figure.bound.value).toBeGreaterThan(22 + CURVES[0]!.rise(load) - 4);
        const end = presentAt(figures, 'end_temperature');
        const truth = offset + 22 + CURVES[0]!.rise(load - 30);
        expect(Math.abs(end.quantity.value - truth)).toBeLessThan(1);
      }
  });
});
