import { describe, expect, it } from 'vitest';
import { freeNames, shortened, stepName } from '../../../src/commands/stills/names.ts';

describe('commands/stills/names', () => {
  it('gives the same name never twice, not even where a number makes it another’s', () => {
    const taken = new Set<string>();
    const named = ['fast', 'fast', 'fast-2', 'fast'].flatMap((wanted) => freeNames(wanted, [''], taken));
    expect(named).toEqual(['fast', 'fast-2', 'fast-2-2', 'fast-3']);
  });

  it('takes names that differ by capitals alone for one, as disks do', () => {
    const taken = new Set<string>();
    expect([...freeNames('Fast', [''], taken), ...freeNames('fast', [''], taken)]).toEqual(['Fast', 'fast-2']);
  });

  it('numbers all pictures of a thing alike', () => {
    const taken = new Set(['plot-part-2']);
    expect(freeNames('plot', ['-part-1', '-part-2'], taken)).toEqual(['plot-2-part-1', 'plot-2-part-2']);
    expect(freeNames('plot', ['-part-1'], taken)).toEqual(['plot-part-1']);
  });

  it('cuts what no disk takes, and still tells two long names apart', () => {
    const long = `01-0m05s-${'fast.load_power-'.repeat(30)}`;
    const [one, other] = [shortened(`${long}a`), shortened(`${long}b`)];
    expect(one).toHaveLength(100);
    expect(one).not.toBe(other);
    expect(one.startsWith('01-0m05s-fast.load_power-fast')).toBe(true);
    expect(shortened('01-0m05s-words')).toBe('01-0m05s-words');
  });

  it('names steps by letters and digits, never by nothing', () => {
    expect(['Board 2 (fast)', 'Größe', '…', `${'a'.repeat(39)} b`].map(stepName)).toEqual([
      'Board-2-fast',
      'Gro-e',
      'run',
      'a'.repeat(39),
    ]);
  });
});
