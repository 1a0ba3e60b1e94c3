import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distinctNames, offeredName, sizeText } from '../../../src/compute/data/names.ts';

describe('compute/data/names', () => {
  it('keeps a plain name and replaces what an address or a disk may not take', () => {
    expect(offeredName('larch-2/fast-soak.csv')).toBe('fast-soak.csv');
    expect(offeredName('Lauf 1 (größer).CSV')).toBe('Lauf-1-gro-er.CSV');
    expect(offeredName('Mäßig kühl.csv'), 'one letter').toBe('Ma-ig-kuhl.csv');
    expect(offeredName('Mäßig kühl.csv'.normalize('NFD')), 'letter and mark').toBe('Ma-ig-kuhl.csv');
    expect(offeredName('a/soak..csv')).toBe('soak.csv');
    expect(offeredName('a/.hidden')).toBe('hidden');
    expect(offeredName('a/…')).toBe('data');
  });

  it('gives for any path a name that is one plain step, and that stays itself', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (path) => {
        const name = offeredName(path);
        expect(name).toMatch(/^[A-Za-z0-9_](?:[A-Za-z0-9._-]*[A-Za-z0-9_])?$/);
        expect(name).not.toContain('..');
        expect(offeredName(name)).toBe(name);
      }),
    );
  });

  it('tells files of one name apart by their role, whatever the case of letters', () => {
    const named = [
      { role: 'log', name: 'soak.csv' },
      { role: 'scores', name: 'SOAK.csv' },
      { role: 'surface', name: 'soak.csv' },
    ];
    expect(distinctNames(named)).toEqual(['soak.csv', 'scores-SOAK.csv', 'surface-soak.csv']);
    expect(distinctNames([{ role: 'log', name: 'DataPackage.json' }]), 'that of the description').toEqual(['log-DataPackage.json']);
    fc.assert(
      fc.property(
        fc.array(fc.record({ role: fc.constantFrom('log', 'x'), name: fc.constantFrom('a', 'A', 'x-a', 'b') })),
        (files) => {
          const names = distinctNames(files).map((name) => name.toLowerCase());
          expect(new Set(names).size).toBe(files.length);
        },
      ),
    );
  });

  it('prints sizes with SI prefixes and three digits', () => {
    expect(
      [0, 401, 999, 1000, 1725, 171171, 999_499, 999_500, 1_240_000, 7.3e10].map((bytes) => sizeText(bytes).replace('\u00a0', ' ')),
    ).toEqual(['0 B', '401 B', '999 B', '1 kB', '1.73 kB', '171 kB', '999 kB', '1 MB', '1.24 MB', '73 GB']);
  });
});
