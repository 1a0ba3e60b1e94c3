import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { columnKeys, nearestName } from '../../../src/intake/cells/names.ts';

describe('intake/cells/names', () => {
  it('gives equal names distinct keys in order', () => {
    expect(columnKeys(['t', 'temp', 'temp', '', 'temp (1)'])).toEqual(['t', 'temp (2)', 'temp (3)', 'column 4', 'temp (1)']);
  });

  it('never repeats a key', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom('', 'a', 'a (1)', 'a (2)', 'column 1', 'b')), (names) => {
        const keys = columnKeys(names);
        expect(new Set(keys).size).toBe(names.length);
        names.forEach((name, k) => {
          if (name !== '' && names.indexOf(name) === names.lastIndexOf(name)) expect(keys[k]).toBe(name);
        });
      }),
    );
  });

  it('names the column that was meant', () => {
    expect(nearestName('temp', ['Zeit', 'Temp [°C]', 'Clock [MHz]'])).toBe('Temp [°C]');
    expect(nearestName('soc_tmp', ['t_s', 'soc_temp', 'board_temp'])).toBe('soc_temp');
    expect(nearestName('xyz', ['t_s', 'soc_temp'])).toBeUndefined();
  });
});
