import { describe, expect, test } from 'vitest';
import { write } from '../../../src/words/write.ts';
import { noteOf, TWO } from '../subjects.ts';

const RECORDED = {
  kind: 'value',
  text: 'fast.steady_temperature',
  expression: 'fast.steady_temperature',
  value: 70.1,
  unit: '°C',
  u: 0.2,
  shown: '70.1 °C',
} as const;
const said = (text: string) => write(noteOf(text), TWO, { recorded: [RECORDED] });

describe('words/page/recorded-words', () => {
  test('what was said stands where its figure is absent by now, and the problem is set apart', () => {
    const { pieces, entries, problems, unborne } = said('It settled at :value[fast.steady_temperature].');
    expect(pieces.join('')).toContain('>70.1 °C</a>');
    expect(entries[0]).toMatchObject({ shown: '70.1 °C', verdict: 'cannot be told', line: 1, column: 15 });
    expect(entries[0]?.rests).toContain('Not steady within 60 min');
    expect(problems).toEqual([]);
    expect(unborne?.map(({ rule, severity }) => `${severity} ${rule}`)).toEqual(['error absent-figure']);
  });

  test('a number of a table stands in for an absent cell; a table that is not recorded says that it is absent, and of what', () => {
    const table = '::table{runs="rated fast" of="steady_temperature"}';
    const cell = { ...RECORDED, kind: 'table', text: '' } as const;
    const { pieces, entries, absent, problems } = write(noteOf(table), TWO, { recorded: [cell] });
    expect(pieces.join('')).toContain('>70.1 °C</a>');
    expect(entries).toMatchObject([{ kind: 'table', verdict: 'cannot be told', rests: 'Not steady within 60 min.' }]);
    expect(absent).toEqual([
      { kind: 'table', line: 1, column: 1, expression: 'rated.steady_temperature', why: 'Not steady within 60 min.' },
    ]);
    expect(problems).toEqual([]);
    expect(write(noteOf(table), TWO).absent).toHaveLength(2);
    const inWords = ':stated[a few degrees]{is="fast.steady_temperature"} :value[fast.steady_temperature]';
    expect(write(noteOf(inWords), TWO).absent?.map(({ kind, column }) => `${kind} ${column}`)).toEqual(['stated 1', 'value 54']);
  });

  test('nothing else is excused: neither another number nor another fault', () => {
    expect(said('At :value[rated.steady_temperature].').problems).toHaveLength(1);
    expect(said(':value[fast.steddy_temperature]').problems).toHaveLength(1);
    expect(said('It reached :value[fast.peak_temperature].').entries[0]?.verdict).toBe('printed');
  });
});
