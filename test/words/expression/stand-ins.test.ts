import { describe, expect, test } from 'vitest';
import type { PresentFigure } from '../../../src/figures/figure.ts';
import { standInsOf, standInsText } from '../../../src/words/expression/stand-ins.ts';
import { write } from '../../../src/words/write.ts';
import type { Subject } from '../../../src/words/written.ts';
import { FAST, noteOf } from '../subjects.ts';

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

test('what stood in is said beside the number by each directive that prints it', () => {
  const power = FAST.figures.get('load_power') as PresentFigure;
  const fast: Subject = { ...FAST, figures: new Map([['load_power', { ...power, of: { ...power.of, stands_in: CLOCK } }]]) };
  const subjects = new Map([['fast', fast]]);
  const written = (text: string) => write(noteOf(text), subjects);
  for (const text of [':value[fast.load_power]', ':stated[5.3 W]{is="fast.load_power"}']) {
    const { entries, problems } = written(text);
    expect(problems).toEqual([]);
    expect(entries[0]!.shown).toMatch(new RegExp(`W \\(${CLOCK}\\)$`));
  }
});
