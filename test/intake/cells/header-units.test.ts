import { describe, expect, it } from 'vitest';
import { unitsInFile } from '../../../src/intake/columns/column-units.ts';
import type { QuantityKind } from '../../../src/intake/log.ts';

const unitOf = (quantity: QuantityKind, name: string) => {
  const [found] = unitsInFile({ quantity, name });
  return found && [found.spelling, found.unit.canonical, found.unit.factor, found.origin];
};

describe('intake/cells/header-units', () => {
  it.each([
    ['temperature', 'Temp [°C]', ['°C', '°C', 1, 'header']],
    ['temperature', 'Temp (C)', ['C', '°C', 1, 'header']],
    ['temperature', 'T / K', ['K', '°C', 1, 'name']],
    ['temperature', 'soc_temp_c', ['°C', '°C', 1, 'name']],
    ['temperature', 'soc_mc', ['m°C', '°C', 0.001, 'name']],
    ['clock', 'cpu_mhz', ['MHz', 'Hz', 1e6, 'name']],
    ['power', 'in_mw', ['mW', 'W', 0.001, 'name']],
    ['power', 'Input power, mW', ['mW', 'W', 0.001, 'name']],
    ['voltage', 'Core (left) [mV]', ['mV', 'V', 0.001, 'header']],
    ['current', 'amps', ['amps', 'A', 1, 'name']],
    ['fan', 'fan rpm', ['rpm', 'rpm', 1, 'name']],
    ['utilisation', 'load (%)', ['%', '1', 0.01, 'header']],
  ] as const)('%s %s', (quantity, name, expected) => {
    expect(unitOf(quantity, name)).toEqual(expected);
  });

  it.each([
    ['temperature', 'Temp (avg)'],
    ['temperature', 'Temp (min)'],
    ['current', 'Sensor A'],
    ['temperature', 'temp (1)'],
    ['voltage', 'core_c'],
  ] as const)('finds no unit in %s %s', (quantity, name) => {
    expect(unitOf(quantity, name)).toBeUndefined();
  });
});
