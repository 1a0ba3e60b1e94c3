import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isPresent } from '../../../src/figures/figure.ts';
import { figuresJson } from '../../../src/figures/figures-json.ts';
import { presentAt } from '../build.ts';
import { absentAt, compareRuns, figure, part, type Sketch } from './runs.ts';

const positive = fc.double({ min: 1e-120, max: 1e120, noNaN: true });
const scored = fc.tuple(positive, fc.double({ min: 0, max: 1, noNaN: true }), fc.constantFrom(null, 1, 4));
const sketch = fc
  .record({
    a: fc.option(scored),
    b: fc.option(scored),
    clock: fc.option(positive),
    watts: fc.option(fc.double({ noNaN: true, min: -1e6, max: 1e6 })),
  })
  .map(({ a, b, clock, watts }): Sketch => {
    const score = (each: typeof a) => each && ([each[0], each[0] * each[1], each[2]] as const);
    const power =
      watts === null ? {} : { load_power: figure('load_power', { value: watts, unit: 'W', parts: [part('meter', watts / 100)] }) };
    return { scores: { a: score(a), b: score(b) }, ...(clock === null ? {} : { clock, setting: clock }), more: power };
  });

describe('a comparison of any runs', () => {
  test('never throws, publishes finite numbers alone, and says of every figure what it is or why not', () => {
    fc.assert(
      fc.property(fc.array(sketch, { minLength: 2, maxLength: 5 }), (sketches) => {
        const figures = compareRuns(Object.fromEntries(sketches.map((each, k) => [`r${k}`, each])));
        figuresJson({ comparison: 'any' }, figures);
        for (const each of figures.values()) {
          if (isPresent(each)) expect(each.of?.verdict).toBeTruthy();
          else expect(each.why).toMatch(/\.$/);
        }
      }),
      { numRuns: 100, seed: 9, endOnFailure: true },
    );
  });

  test('is the same to the last bit in whatever order the figures of a run stand, its words too', () => {
    const power = (at: string, value: number) => figure('load_power', { value, unit: 'W', parts: [part('meter', 0.1)] }, { at });
    const more = { load_power: power('wall', 9), 'load_power.z': power('rail', 4), 'load_power.a': power('board input', 5) };
    const base = {
      load_power: power('adapter output', 7),
      'load_power.b': power('board input', 4),
      'load_power.c': power('rail', 2),
    };
    const scores = { d: [2, 0.1, 4], b: null, c: [3, 0.1, 4], a: null } as const;
    const runs = (turned: boolean) => {
      const order = <T>(entries: Record<string, T>) =>
        Object.fromEntries(turned ? Object.entries(entries).reverse() : Object.entries(entries));
      return compareRuns({
        base: { scores: order({ ...scores, a: 5, b: 7 }), clock: 1e9, more: order(base) },
        other: { scores: order(scores), clock: 2e9, more: order(more) },
      });
    };
    const [one, other] = [runs(false), runs(true)];
    expect(Object.fromEntries(other)).toStrictEqual(Object.fromEntries(one));
    expect(presentAt(one, 'power_delta.other').quantity.value).toBe(1);
    expect(presentAt(one, 'speedup.other').of?.left_out).toBe('a; b');
  });

  test('a factor on every score of a test, or on every clock, changes nothing but the difference of clocks', () => {
    const runs = (score: number, clock: number) =>
      compareRuns(
        Object.fromEntries(
          [1, 1.2, 1.4, 1.7].map((ghz, k) => [
            `s${k}`,
            {
              scores: { a: [score * ghz ** 0.8 * (1 + 0.001 * k * k), score * 0.002, 4] as const },
              clock: clock * ghz,
              setting: k,
            },
          ]),
        ),
      );
    const [plain, scaled] = [runs(1, 1e9), runs(1024, 2e9)];
    expect([...scaled.keys()]).toEqual([...plain.keys()]);
    for (const [key, each] of plain) {
      if (!isPresent(each) || each.name === 'clock_delta') continue;
      const other = presentAt(scaled, key).quantity;
      expect(Math.abs(other.value - each.quantity.value), key).toBeLessThan(1e-9);
      for (const [k, { share }] of each.quantity.parts!.entries())
        expect(Math.abs(other.parts![k]!.share - share), key).toBeLessThan(1e-9);
    }
  });

  test('numbers beyond what a double holds are said', () => {
    const figures = compareRuns({ small: { scores: { a: 1e-300 } }, large: { scores: { a: 1e300 } } });
    expect(absentAt(figures, 'speedup.large.a')).toMatchObject({ absent: 'out-of-range' });
    expect(
      absentAt(compareRuns({ large: { scores: { a: 1e300 } }, small: { scores: { a: 1e-300 } } }), 'speedup.small.a'),
    ).toMatchObject({
      absent: 'out-of-range',
      why: 'The scores of a are too far apart to compute with.',
    });
  });

  test('the reference has no figures against itself', () => {
    const figures = compareRuns({ rated: { scores: { a: 1 } }, fast: { scores: { a: 2 } } });
    expect([...figures.keys()].filter((key) => key.includes('rated'))).toEqual([]);
  });
});
