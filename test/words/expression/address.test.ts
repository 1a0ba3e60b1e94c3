import { describe, expect, test } from 'vitest';
import { write } from '../../../src/words/write.ts';
import type { Subject } from '../../../src/words/written.ts';
import { FAST, noteOf, RATED, reportOf } from '../subjects.ts';

const clock = (hertz: number) => ({
  name: 'highest_passed_clock' as const,
  quantity: { value: hertz, unit: 'Hz', parts: [] },
  from: { columns: ['clock'], rows: [2, 2] as const },
});
const LADDER: Subject = {
  kind: 'attempts',
  id: 'larch-2-no-1',
  title: 'Settings tried',
  figures: new Map([
    ['highest_passed_clock', clock(2.4e9)],
    ['highest_passed_clock.-20 mV', clock(1.8e9)],
  ]),
  facts: new Map(),
  channels: [],
};

function shown(text: string, subjects: ReadonlyMap<string, Subject>): string[] {
  const { entries, problems } = write(noteOf(text), subjects);
  expect(reportOf(problems)).toBe('');
  return entries.map((entry) => entry.shown.replaceAll('\u00a0', ' '));
}

describe('words/expression/address', () => {
  test('attempts answer to their alias; a voltage offset is written in quotes', () => {
    const subjects = new Map([
      ['ladder', LADDER],
      ['rated', RATED],
      ['fast', FAST],
    ]);
    expect(shown(':value[ladder.highest_passed_clock] :value[ladder.highest_passed_clock."-20 mV"]', subjects)).toEqual([
      '2.4 GHz',
      '1.8 GHz',
    ]);
  });

  test('the alias of the only run may be left out, whatever else the note names', () => {
    const subjects = new Map([
      ['fast', FAST],
      ['ladder', LADDER],
    ]);
    expect(shown(':value[setting.clock] :value[ladder.highest_passed_clock]', subjects)).toEqual(['2.4 GHz', '2.4 GHz']);
    expect(shown(':value[highest_passed_clock]', new Map([['ladder', LADDER]]))).toEqual(['2.4 GHz']);
  });

  test('nothing is left out where there are two runs', () => {
    const { problems } = write(
      noteOf(':value[setting.clock]'),
      new Map([
        ['rated', RATED],
        ['fast', FAST],
      ]),
    );
    expect(problems).toMatchObject([{ rule: 'unknown-alias' }]);
  });
});
