/** The same readings written in other units are the same readings. Every conversion here is exact in decimals. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derive } from '../../src/figures/derive.ts';
import { type Figure, isPresent } from '../../src/figures/figure.ts';
import { readScores } from '../../src/figures/scores/read-scores.ts';
import { standardUncertainty } from '../../src/quantities/uncertainty.ts';
import { apart, contextOf, logOf } from './build.ts';
import { bytesOf, ofLog, readLog, soakReadings } from './soak-file.ts';

/** NIST SP 811 (2008), B.8: T/K = t/°C + 273.15, t/°F = 1.8 t/°C + 32; the rest are decimal prefixes and 60 s to the minute. */
const TIMES = {
  s: (t: number) => String(t),
  ms: (t: number) => String(1000 * t),
  // Steps of 5 s are twelfths of a minute: twelve decimals tell them to far below the nanosecond that intake rounds to.
  min: (t: number) => (t / 60).toFixed(12),
};
const TEMPERATURES = {
  '°C': (h: number) => (h / 100).toFixed(2),
  K: (h: number) => ((h + 27315) / 100).toFixed(2),
  '°F': (h: number) => ((18 * h + 32000) / 1000).toFixed(3),
};
const POWERS = {
  W: (mw: number) => (mw / 1000).toFixed(3),
  mW: (mw: number) => String(mw),
  kW: (mw: number) => (mw / 1e6).toFixed(6),
};
type Units = readonly [keyof typeof TIMES, keyof typeof TEMPERATURES, keyof typeof POWERS];

const keysOf = <T extends object>(units: T) => fc.constantFrom(...(Object.keys(units) as (keyof T)[]));

function figuresIn([time, temperature, power]: Units, seed: number): ReadonlyMap<string, Figure> {
  const rows = soakReadings(seed).map(([t, h, mw]) => [TIMES[time](t), TEMPERATURES[temperature](h), POWERS[power](mw)].join(','));
  return ofLog(readLog(rows, `Time [${time}],SoC [${temperature}],Board [${power}]`));
}

/** Same figures present, in the same canonical unit, values and uncertainties equal to what conversion through doubles leaves. */
function expectSame(a: ReadonlyMap<string, Figure>, b: ReadonlyMap<string, Figure>, relative: number): void {
  expect([...b.keys()]).toEqual([...a.keys()]);
  for (const [address, one] of a) {
    const other = b.get(address)!;
    if (!isPresent(one) || !isPresent(other)) {
      expect([address, 'absent' in other && other.absent]).toEqual([address, 'absent' in one && one.absent]);
      continue;
    }
    expect([address, other.quantity.unit]).toEqual([address, one.quantity.unit]);
    expect([address, apart(other.quantity.value, one.quantity.value) < relative]).toEqual([address, true]);
    const [u, v] = [standardUncertainty(one.quantity), standardUncertainty(other.quantity)];
    if (u === null || v === null) expect([address, v]).toEqual([address, u]);
    else expect([address, Math.abs(u - v) <= 1e-4 * u + relative * Math.abs(one.quantity.value)]).toEqual([address, true]);
  }
}

describe('properties: changes of unit', () => {
  test('a log in other units of time, temperature and power gives the same figures', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), keysOf(TIMES), keysOf(TEMPERATURES), keysOf(POWERS), (seed, ...units) => {
        const plain = figuresIn(['s', '°C', 'W'], seed);
        expect(isPresent(plain.get('steady_temperature')!) && isPresent(plain.get('energy.load')!)).toBe(true);
        expectSame(plain, figuresIn(units, seed), 1e-6);
      }),
      { numRuns: 30 },
    );
  });

  test('scores in another unit of the same quantity give the same figures', () => {
    const scales = { s: 3, ms: 0, µs: -3 } as const;
    const figuresOf = (values: readonly number[], unit: keyof typeof scales) => {
      const decimals = scales[unit];
      const cell = (ms: number) => (decimals > 0 ? (ms / 1000).toFixed(3) : String(ms * 10 ** -decimals));
      const rows = values.map((ms) => `sort,${cell(ms)},${unit},lower`);
      const { scores, problems } = readScores(bytesOf('test,value,unit,better', rows), 'data/scores.csv');
      expect(problems).toEqual([]);
      return derive(logOf([0, 1], {}), contextOf(), { scores }).figures;
    };
    const values = fc.array(fc.integer({ min: 100, max: 99_999 }), { minLength: 2, maxLength: 9 });
    const spread = values.filter((made) => Math.max(...made) - Math.min(...made) > 10);
    fc.assert(
      fc.property(spread, keysOf(scales), (made, unit) => {
        const plain = figuresOf(made, 's');
        expect(isPresent(plain.get('score.sort')!)).toBe(true);
        expectSame(plain, figuresOf(made, unit), 1e-12);
      }),
    );
  });
});
