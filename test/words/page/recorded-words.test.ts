import { describe, expect, test } from 'vitest';
import type { Figure } from '../../../src/figures/figure.ts';
import { NOT_TOLD } from '../../../src/words/page/recorded-words.ts';
import { write } from '../../../src/words/write.ts';
import { FAST, noteOf, TWO } from '../subjects.ts';

const RECORDED = {
  kind: 'value',
  text: 'fast.steady_temperature',
  expression: 'fast.steady_temperature',
  value: 70.1,
  unit: '°C',
  u: 0.2,
  shown: '70.1 °C',
} as const;
const script = (text: string) => noteOf(text, { kind: 'script' });
const said = (text: string) => write(script(text), TWO, { recorded: [RECORDED] });

const correctionOf = (number: string, now: string) => ({
  number,
  now,
  since: '2026-05-02',
  reason: 'Tested again.',
  place: { file: 'content/notes/note.md', line: 1, column: 1 },
});

describe('words/page/recorded-words', () => {
  test('what was said stands where its figure is absent by now, and the problem is set apart', () => {
    const { pieces, entries, problems, unborne } = said('It settled at :value[fast.steady_temperature].');
    expect(pieces.join('')).toContain('>70.1 °C</a>');
    expect(entries[0]).toMatchObject({ shown: '70.1 °C', verdict: 'cannot be told', line: 1, column: 15 });
    expect(entries[0]?.rests).toBe('no longer given: not steady within 60 min');
    expect(problems).toEqual([]);
    expect(unborne?.map(({ rule, severity }) => `${severity} ${rule}`)).toEqual(['error absent-figure']);
  });

  test('a number of a table stands in for an absent cell; a table that is not recorded says that it is absent, and of what', () => {
    const table = '::table{runs="rated fast" of="steady_temperature"}';
    const cell = { ...RECORDED, kind: 'table', text: '' } as const;
    const { pieces, entries, absent, problems } = write(script(table), TWO, { recorded: [cell] });
    expect(pieces.join('')).toContain('>70.1 °C</a>');
    expect(entries).toMatchObject([{ kind: 'table', verdict: 'cannot be told', rests: 'Not steady within 60 min.' }]);
    expect(absent).toMatchObject([
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

  test('a published note asks for words that its data still allows, and says them where a correction gives the reason', () => {
    const text = 'It settled at :value[fast.steady_temperature].';
    const asked = write(noteOf(text), TWO, { recorded: [RECORDED] });
    expect(asked.entries).toEqual([]);
    expect(asked.problems.map(({ rule, place }) => `${rule} ${place.column}`)).toEqual(['absent-figure 22']);
    const instead = `70.1 °C ${NOT_TOLD}`;
    expect(asked.absent).toMatchObject([{ column: 15, instead, at: [{ line: 1, column: 22 }], held: [{ subject: 'larch-fast' }] }]);
    const corrected = noteOf(text, { corrections: [correctionOf('fast.steady_temperature', instead)] });
    const { entries, problems, pieces } = write(corrected, TWO, { recorded: [RECORDED] });
    expect(problems).toEqual([]);
    expect(pieces.join('')).toContain(`>${instead}</a>`);
    expect(entries).toMatchObject([{ shown: instead, value: 70.1, verdict: 'cannot be told' }]);
    expect(entries[0]?.rests).toBe('no longer given: not steady within 60 min');
    // Published so, it says the same again and not twice.
    expect(write(corrected, TWO, { recorded: [{ ...RECORDED, shown: instead }] }).entries[0]?.shown).toBe(instead);
  });

  test('a bound of the figure takes the place of the number, also of one in words; a claim keeps its words', () => {
    const bounded: Figure = {
      name: 'time_to_throttle',
      absent: 'not-throttled',
      why: 'No throttling was seen.',
      bound: { relation: '>', value: 3599, unit: 's' },
    };
    const fast = { ...FAST, figures: new Map([...FAST.figures, ['time_to_throttle', bounded]]) };
    const subjects = new Map([['fast', fast]]);
    const recordedOf = (kind: 'stated' | 'claim' | 'highlight', text: string, expression: string) =>
      ({ ...RECORDED, kind, text, expression, shown: text, unit: 's', value: 1200 }) as const;
    const recorded = [
      recordedOf('stated', 'nearly twenty minutes', 'fast.time_to_throttle'),
      recordedOf('claim', 'early', 'fast.time_to_throttle < 30 min'),
      recordedOf('highlight', 'fast.time_to_throttle', 'fast.time_to_throttle'),
    ];
    const text =
      'For :stated[nearly twenty minutes]{is="fast.time_to_throttle"} it throttles :claim[early]{is="fast.time_to_throttle < 30 min"}.';
    const place = { file: 'content/notes/note.md', line: 1, column: 1 };
    const note = noteOf(text, { highlights: [{ expression: 'fast.time_to_throttle', place }] });
    expect(write(note, subjects, { recorded }).absent?.map(({ kind, instead }) => `${kind}: ${instead}`)).toEqual([
      'stated: more than 59.9\u00a0min',
      `claim: early ${NOT_TOLD}`,
      'highlight: more than 59.9\u00a0min',
    ]);
    const corrections = [
      correctionOf('fast.time_to_throttle', 'more than 59.9 min'),
      correctionOf('fast.time_to_throttle < 30 min', `early ${NOT_TOLD}`),
    ];
    const { entries, problems } = write({ ...note, corrections }, subjects, { recorded });
    expect(problems).toEqual([]);
    expect(entries.map(({ kind, shown }) => `${kind}: ${shown}`)).toEqual([
      'stated: more than 59.9\u00a0min',
      `claim: early ${NOT_TOLD}`,
      'highlight: more than 59.9\u00a0min',
    ]);
  });

  test('no bound stands behind a word that would turn it round, and none where it would say nothing', () => {
    const withBound = (value: number) => {
      const figure: Figure = {
        name: 'time_to_throttle',
        absent: 'not-throttled',
        why: 'No throttling was seen.',
        bound: { relation: '>', value, unit: 's' },
      };
      return new Map([['fast', { ...FAST, figures: new Map([...FAST.figures, ['time_to_throttle', figure]]) }]]);
    };
    const key = 'fast.time_to_throttle';
    const recorded = [{ ...RECORDED, text: key, expression: key, unit: 's', shown: '12.0 min' }];
    const insteadIn = (text: string, bound: number) =>
      write(noteOf(text.replace('■', `:value[${key}]`)), withBound(bound), { recorded }).absent?.[0]?.instead;
    expect(insteadIn('It runs for ■ without a pause.', 3599)).toBe('more than 59.9\u00a0min');
    expect(insteadIn('It throttles after ■.', 3599)).toBe(`12.0 min ${NOT_TOLD}`);
    expect(insteadIn('It throttles in under ■.', 3599)).toBe(`12.0 min ${NOT_TOLD}`);
    expect(insteadIn('It took ■ or so.', 3599)).toBe(`12.0 min ${NOT_TOLD}`);
    expect(insteadIn('It runs for ■ without a pause.', 0)).toBe(`12.0 min ${NOT_TOLD}`);
  });

  test('a bound of a temperature stands before "in this room", which says where and not when', () => {
    const figure: Figure = {
      name: 'steady_temperature',
      absent: 'not-steady',
      why: 'Not steady within 60 min.',
      bound: { relation: '>', value: 68, unit: '°C' },
    };
    const subjects = new Map([['fast', { ...FAST, figures: new Map([...FAST.figures, ['steady_temperature', figure]]) }]]);
    const note = noteOf('The chip would end at :value[fast.steady_temperature] in this room.');
    expect(write(note, subjects, { recorded: [RECORDED] }).absent?.[0]?.instead).toBe('more than 68.0\u00a0°C');
  });

  test('a spot that the run has no longer counts as absent where it was published, and as a slip where it was not', () => {
    const spot = { ...RECORDED, text: 'fast.peak_temperature.nvme', expression: 'fast.peak_temperature.nvme' };
    const text = 'It read :value[fast.peak_temperature.nvme].';
    expect(write(noteOf(text), TWO, { recorded: [spot] }).absent?.[0]?.instead).toBe(`70.1 °C ${NOT_TOLD}`);
    expect(write(noteOf(text), TWO).absent).toBeUndefined();
  });
});
