import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  absolute,
  add,
  divide,
  isRefusal,
  maximum,
  mean,
  minimum,
  multiply,
  negate,
  subtract,
  sum,
} from '../../src/quantities/arithmetic.ts';
import type { Quantity } from '../../src/quantities/quantity.ts';
import { exact, independent, unknown } from '../../src/quantities/uncertainty.ts';
import { anyQuantity, expectClose, got, source, u } from './helpers.ts';

const hot = independent(71.3, '°C', 0.4, source('probe'));
const ambient = independent(22.4, '°C', 0.3, source('room'));
const rise = independent(5, 'K', 0.4, source('rise'));
const power = independent(10, 'W', 0.5, source('meter/gain'));

describe('quantities/arithmetic', () => {
  test('temperatures are points on a scale', () => {
    expect(got(subtract(hot, ambient))).toMatchObject({ value: 71.3 - 22.4, unit: 'K' });
    expect(got(add(hot, rise))).toMatchObject({ value: 76.3, unit: '°C' });
    expect(got(add(rise, hot))).toMatchObject({ value: 76.3, unit: '°C' });
    expect(got(subtract(hot, rise))).toMatchObject({ value: 66.3, unit: '°C' });
  });

  test.each([
    ['71.3 °C + 22.40 °C', add(hot, ambient), 'Celsius temperatures cannot be added'],
    ['5.0 K − 71.3 °C', subtract(rise, hot), 'a temperature cannot be taken from a difference'],
    ['71.3 °C × 2', multiply(hot, exact(2, '1')), 'a Celsius temperature cannot be multiplied'],
    ['2 × 71.3 °C', multiply(exact(2, '1'), hot), 'a Celsius temperature cannot be multiplied'],
    ['71.3 °C / 10.0 W', divide(hot, power), 'a Celsius temperature cannot be divided'],
    ['10.0 W / 71.3 °C', divide(power, hot), 'a Celsius temperature cannot be divided'],
    ['71.3 °C / 22.40 °C', divide(hot, ambient), 'a Celsius temperature cannot be divided'],
    ['−(71.3 °C)', negate(hot), 'a Celsius temperature cannot be negated'],
    ['abs(71.3 °C)', absolute(hot), 'a Celsius temperature cannot be made absolute'],
    ['sum(71.3 °C, 22.40 °C)', sum([hot, ambient]), 'a Celsius temperature cannot be added'],
    ['10.0 W + 5.0 K', add(power, rise), 'the units differ'],
    ['71.3 °C + 10.0 W', add(hot, power), 'the units differ'],
    ['10.0 W − 2', subtract(power, exact(2, '1')), 'the units differ'],
    ['mean(71.3 °C, 5.0 K)', mean([hot, rise]), 'the units differ'],
    ['min(10.0 W, 5.0 K)', minimum([power, rise]), 'the units differ'],
    ['max(10.0 W, 5.0 K)', maximum([power, power, rise]), 'the units differ'],
    ['10.0 W / 0 W', divide(power, exact(0, 'W')), 'division by zero'],
    [
      '1e+300 W / 0.5',
      divide({ ...exact(1e300, 'W'), parts: [{ source: source('a'), share: Number.NaN }] }, exact(0.5, '1')),
      'too large to compute',
    ],
    ['1 × 10¹⁹⁴ MW × 1 × 10²⁰⁰', multiply(exact(1e200, 'W'), exact(1e200, '1')), 'too large to compute'],
  ])('%s is refused and says both operands', (written, result, reason) => {
    if (!isRefusal(result)) throw new Error('not refused');
    expect(result.refused).toBe(`${written}: ${reason}`);
    expect(result.expected).toBeTruthy();
  });

  test.each([
    ['min', minimum([])],
    ['max', maximum([])],
    ['mean', mean([])],
    ['sum', sum([])],
  ])('%s of nothing is refused', (name, result) => {
    expect(result).toEqual({ refused: `${name}() of nothing`, expected: 'at least one quantity' });
  });

  // JCGM 100:2008, 5.2.2, equation 16, for a difference over a power known to 1 %.
  test.each([
    [0, 0.269386],
    [0.5, 0.193423],
    [1, 0.0475],
  ])('thermal resistance from temperatures with correlation %d', (r, expected) => {
    const temperature = (value: number, own: string): Quantity => ({
      value,
      unit: '°C',
      parts: [
        { source: source('common'), share: 1.5 * Math.sqrt(r) },
        { source: source(own), share: 1.5 * Math.sqrt(1 - r) },
      ],
    });
    const difference = got(subtract(temperature(60, 'hot'), temperature(22, 'room')));
    const resistance = got(divide(difference, independent(8, 'W', 0.08, source('power'))));
    expect(resistance).toMatchObject({ value: 4.75, unit: 'K/W' });
    expectClose(u(resistance), expected, 1e-5);
  });

  // JCGM 100:2008, 5.2.2, equation 16: fully shared gain of 1 %, and two meters.
  test('load minus idle power on one meter and on two', () => {
    const reading = (value: number, meter: string) => independent(value, 'W', value * 0.01, source(meter));
    expectClose(u(subtract(reading(10, 'a'), reading(3, 'a'))), 0.07, 1e-12);
    expectClose(u(subtract(reading(10, 'a'), reading(3, 'b'))), 0.104403, 1e-5);
  });

  // JCGM 100:2008, 5.1.6: relative uncertainties of a product add in squares; fully shared ones add plainly.
  test('power from voltage and current, both known to 1 %', () => {
    const volts = (id: string) => independent(5, 'V', 0.05, source(id));
    const amps = (id: string) => independent(2, 'A', 0.02, source(id));
    const watts = got(multiply(volts('v'), amps('i')));
    expect(watts).toMatchObject({ value: 10, unit: 'W' });
    expectClose(u(watts) / 10, Math.SQRT2 / 100, 1e-12);
    expectClose(u(multiply(volts('x'), amps('x'))) / 10, 0.02, 1e-12);
  });

  test('a − a is exactly nothing, a ÷ a exactly one', () => {
    fc.assert(
      fc.property(anyQuantity(), (a) => {
        expect(got(subtract(a, a))).toEqual({ value: 0, unit: a.unit, parts: [] });
        if (a.value !== 0) expect(got(divide(a, a))).toEqual({ value: 1, unit: '1', parts: [] });
      }),
    );
  });

  test('the uncertainty of a difference is what the parts say', () => {
    fc.assert(
      fc.property(anyQuantity(), anyQuantity(), (a, b) => {
        const ids = [...new Set([...a.parts!, ...b.parts!].map(({ source: { id } }) => id))];
        const share = (quantity: Quantity, id: string) => quantity.parts!.find((part) => part.source.id === id)?.share ?? 0;
        const expected = Math.sqrt(ids.reduce((total, id) => total + (share(a, id) - share(b, id)) ** 2, 0));
        expect(Math.abs(u(subtract(a, b)) - expected)).toBeLessThanOrEqual(1e-9 * (expected + 1e-9));
      }),
    );
  });

  test('operands may change places, to the last bit', () => {
    fc.assert(
      fc.property(anyQuantity(), anyQuantity(), fc.array(anyQuantity(), { minLength: 1, maxLength: 7 }), (a, b, list) => {
        expect(add(a, b)).toEqual(add(b, a));
        expect(multiply(a, b)).toEqual(multiply(b, a));
        expect(sum([...list].reverse())).toEqual(sum(list));
        expect(mean([...list].reverse())).toEqual(mean(list));
        expect(u(subtract(a, b))).toBe(u(subtract(b, a)));
      }),
    );
  });

  test('a sum in one pass is the sum in pairs', () => {
    fc.assert(
      fc.property(fc.array(anyQuantity(), { minLength: 1, maxLength: 6 }), (list) => {
        const pairwise = list.slice(1).reduce((total, next) => got(add(total, next)), list[0]!);
        const scale = list.reduce(
          (total, { value, parts }) => total + Math.abs(value) + parts!.reduce((all, { share }) => all + Math.abs(share), 0),
          1e-9,
        );
        expect(Math.abs(got(sum(list)).value - pairwise.value) / scale).toBeLessThanOrEqual(1e-12);
        expect(Math.abs(u(sum(list)) - u(pairwise)) / scale).toBeLessThanOrEqual(1e-12);
      }),
    );
  });

  test('the mean of Celsius temperatures is one', () => {
    const average = got(mean([hot, ambient]));
    expect(average).toMatchObject({ value: (71.3 + 22.4) / 2, unit: '°C' });
    expectClose(u(average), 0.25, 1e-12);
  });

  test('extremes keep the uncertainty of the operand they are', () => {
    expect(got(maximum([ambient, hot]))).toEqual(hot);
    expect(got(minimum([ambient, hot]))).toEqual(ambient);
    expect(got(maximum([unknown(10, 'W'), power])).parts).toBeNull();
    expect(got(maximum([unknown(1, 'W'), power])).parts).toBeNull();
  });

  test('sign and absolute value', () => {
    expect(got(negate(rise))).toMatchObject({ value: -5, parts: [{ share: -0.4 }] });
    expect(Object.is(got(negate(exact(0, 'K'))).value, 0)).toBe(true);
    expect(got(absolute(got(negate(rise))))).toEqual(rise);
  });

  test('one unknown uncertainty makes the result unknown, in either place', () => {
    for (const operation of [add, subtract, multiply, divide]) {
      expect(got(operation(power, unknown(2, 'W'))).parts).toBeNull();
      expect(got(operation(unknown(2, 'W'), power)).parts).toBeNull();
    }
    expect(got(mean([power, unknown(2, 'W')])).parts).toBeNull();
    expect(got(negate(unknown(2, 'W'))).parts).toBeNull();
  });

  test('repeatability only spreads', () => {
    const die: Quantity = { ...hot, repeatabilityOnly: true };
    expect(got(subtract(die, ambient)).repeatabilityOnly).toBe(true);
    expect(got(maximum([ambient, die])).repeatabilityOnly).toBe(true);
    expect(got(subtract(hot, ambient))).not.toHaveProperty('repeatabilityOnly');
  });

  test('the coarsest step shows in the result', () => {
    const fine: Quantity = { ...power, step: 0.01 };
    const coarse: Quantity = { ...exact(4, 'W'), step: 0.5 };
    expect(got(subtract(fine, coarse)).step).toBe(0.5);
    expect(got(divide(fine, exact(4, 'W'))).step).toBe(0.0025);
    expect(got(mean([fine, fine])).step).toBe(0.01);
    expect(got(minimum([fine, coarse])).step).toBe(0.5);
    expect(got(add(power, power))).not.toHaveProperty('step');
  });

  test('units that are one dimension under two names add up', () => {
    expect(got(add(exact(1, 'W'), exact(1, 'V·A')))).toMatchObject({ value: 2, unit: 'W' });
  });
});
