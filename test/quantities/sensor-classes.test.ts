import { describe, expect, test } from 'vitest';
import { type Accuracy, limitOf, parseAccuracy } from '../../src/quantities/accuracy.ts';
import { sensorClass } from '../../src/quantities/sensor-classes.ts';
import { expectClose } from './helpers.ts';

const limit = (text: string, temperature: number) => limitOf(parseAccuracy(text) as Accuracy, temperature);

describe('quantities/sensor-classes', () => {
  // IEC 60584-1: type K class 1 ± 1.5 °C or 0.004·|t|, class 2 ± 2.5 °C or 0.0075·|t|; type T class 1 ± 0.5 °C or 0.004·|t|, class 2 ± 1.0 °C or 0.0075·|t|.
  test.each([
    ['type K class 1', 60, 1.5],
    ['type K class 2', 60, 2.5],
    ['type K class 1', 400, 1.6],
    ['type K class 2', 400, 3],
    ['type K class 1', 375, 1.5],
    ['type K class 1', -30, 1.5],
    ['thermocouple type K, class 2', 333, 2.5],
    ['type T class 1', 60, 0.5],
    ['type T class 2', 60, 1],
    ['type T class 1', 200, 0.8],
    ['type T class 2', 200, 1.5],
  ])('%s at %d °C is within %d K', (text, temperature, expected) => {
    expectClose(limit(text, temperature), expected, 1e-12);
  });

  // The same table: K, N, J and E share their limits, T has its own (J, E and N from memory). At 300 °C the share of the reading decides.
  test.each(['K', 'N', 'J', 'E', 'T'])('type %s has the limits of its class at every temperature', (letter) => {
    const [first, second] = letter === 'T' ? [0.5, 1] : [1.5, 2.5];
    for (const temperature of [0, 100, 200, 300, 340]) {
      expectClose(limit(`type ${letter} class 1`, temperature), Math.max(first, 0.004 * temperature), 1e-12);
      expectClose(limit(`type ${letter} class 2`, temperature), Math.max(second, 0.0075 * temperature), 1e-12);
    }
  });

  // IEC 60751: AA 0.10 + 0.0017·|t|, A 0.15 + 0.002·|t|, B 0.30 + 0.005·|t|, C 0.60 + 0.01·|t|.
  test.each([
    ['Pt100 class AA', 100, 0.27],
    ['Pt100 class A', 100, 0.35],
    ['Pt100 class B', 100, 0.8],
    ['Pt100 class C', 100, 1.6],
    ['Pt100 class A', 0, 0.15],
    ['Pt1000 class B', -20, 0.4],
    ['pt 100 class b', 100, 0.8],
  ])('%s at %d °C is within %d K', (text, temperature, expected) => {
    expectClose(limit(text, temperature), expected, 1e-12);
  });

  test('says where it holds', () => {
    expect(sensorClass('type K class 1')!.range).toEqual([-40, 1000]);
    expect(sensorClass('type K class 2')!.range).toEqual([-40, 1200]);
  });

  test.each(['type K', 'type Q class 1', 'type K class 3', 'Pt100', 'Pt100 class D', 'type constructor class 1', ''])(
    '%j is no class',
    (text) => {
      expect(sensorClass(text)).toBeUndefined();
    },
  );
});
