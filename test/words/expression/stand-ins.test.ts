import { describe, expect, test } from 'vitest';
import { standInsOf, standInsText } from '../../../src/words/expression/stand-ins.ts';

const CLOCK = 'the mean clock of the load phase stands in for that of the scores';
const held = (address: string, standsIn?: string) => ({
  alias: 'steps',
  subject: 'larch-steps',
  address,
  ...(standsIn ? { standsIn } : {}),
});

describe('words/expression/stand-ins', () => {
  test('each is said once, behind the number', () => {
    const both = [held('scaling_exponent', CLOCK), held('scaling_efficiency.fast', `${CLOCK}; another`), held('speedup.fast')];
    expect(standInsOf(both)).toEqual([CLOCK, 'another']);
    expect(standInsText(both)).toBe(` (${CLOCK}; another)`);
  });

  test('nothing is said where nothing stood in', () => {
    expect(standInsText([held('speedup.fast')])).toBe('');
  });
});
