import { describe, expect, it } from 'vitest';
import { columnRange, isColumnRange } from '../../../src/register/values/column-range.ts';

describe('register/values/column-range', () => {
  it.each([
    ['Sensor 1 .. Sensor 3', ['Sensor 1', 'Sensor 2', 'Sensor 3']],
    ['CH08 .. CH11', ['CH08', 'CH09', 'CH10', 'CH11']],
    ['temp (1) .. temp (2)', ['temp (1)', 'temp (2)']],
    ['T1 [2 m] .. T2 [2 m]', ['T1 [2 m]', 'T2 [2 m]']],
    ['Sensor 3 .. Sensor 1', null],
    ['Sensor 1 .. Sensor 1', null],
    ['Sensor 1 .. Probe 3', null],
    ['a1b1 .. a2b2', null],
    ['Sensor 1 .. Sensor 9999', null],
  ])('%s', (key, columns) => {
    expect(isColumnRange(key)).toBe(true);
    expect(columnRange(key)).toEqual(columns);
  });

  it('takes a plain name for none', () => {
    expect(isColumnRange('soc')).toBe(false);
    expect(columnRange('soc')).toBeNull();
  });
});
