import { describe, expect, it } from 'vitest';
import { type Judging, judgeNote } from '../../../src/compute/published-state/judge-note.ts';
import type { Sources } from '../../../src/compute/published-state/sources.ts';
import type { PublishedEntry } from '../../../src/register/sealed/published-states.ts';
import { entry, note, reason, state } from './states.ts';

const SOURCES: Sources = { of: () => ['data/fast.csv', 'the methods'], sha256: (name) => (name === 'data/fast.csv' ? 'b' : 'm') };
const JUDGING: Judging = { sources: SOURCES, dateOf: () => '2026-04-30', insteadOf: () => undefined };
const judged = (was: PublishedEntry, is: PublishedEntry, ...corrections: ReturnType<typeof reason>[]) =>
  judgeNote(note({ corrections }), state([was]), state([is]), JUDGING);

const WAS = entry('fast.peak_temperature', '71.3\u00a0°C');
const IS = entry('fast.peak_temperature', '72.1\u00a0°C');

describe('compute/published-state/judge-note', () => {
  it('finds nothing where everything prints as it was published', () => {
    expect(judged(WAS, { ...WAS, line: 31, value: 71.31 })).toMatchObject({ corrections: [], problems: [], asked: [] });
  });

  it('stops at a number that prints differently: was, is, why it changed, and what to write', () => {
    const { corrections, problems } = judged(WAS, IS);
    expect(corrections).toEqual([]);
    expect(problems).toEqual([
      {
        severity: 'error',
        rule: 'published-number',
        place: { file: 'content/notes/larch.md', line: 20, column: 12 },
        found:
          'a published number prints differently: `fast.peak_temperature` was 71.3 °C and is 72.1 °C; data/fast.csv changed since',
        expected: 'what was published on 2026-03-20, or the reason why that no longer stands',
        remedy:
          'where the new number is right, write below `corrections:` in the front matter of content/notes/larch.md\n      - number: fast.peak_temperature\n        now: 72.1 °C\n        since: 2026-04-30\n        reason: why\n      or for all notes and scripts at once: npm run correct -- --reason "why"',
      },
    ]);
  });

  it('asks with the same block for a number that the data no longer gives, and takes the reason for what stands instead', () => {
    const instead = '71.3 °C (this can no longer be told)';
    const absence = { kind: 'value', line: 21, column: 4, expression: 'fast.peak_temperature', why: 'no reading' } as const;
    const gone = state([], { absent: [{ ...absence, instead, held: ['runs/larch-fast-2'] }] });
    const asked = judgeNote(note(), state([WAS]), gone, JUDGING);
    expect(asked.problems[0]?.found).toBe(
      'the data no longer gives a published number: `fast.peak_temperature` was 71.3 °C; no reading; data/fast.csv changed since',
    );
    expect(asked.problems[0]?.remedy).toContain(`now: ${instead}`);
    expect([...asked.told]).toEqual(['21:4']);
    const standing = { ...WAS, shown: instead, verdict: 'cannot be told' } as const;
    const { corrections, problems } = judged(WAS, standing, reason('fast.peak_temperature', instead, '2026-04-30'));
    expect(problems).toEqual([]);
    expect(corrections).toMatchObject([{ was: '71.3 °C', is: instead }]);
    // Words that hold again ask once more: what stood meanwhile is no longer so.
    const words = entry('fast.time_constant', 'about nine minutes', {
      kind: 'stated',
      text: 'about nine minutes',
      verdict: 'holds',
    });
    const gaveUp = reason('fast.time_constant', 'about nine minutes (this can no longer be told)', '2026-04-30');
    expect(judged(words, words, gaveUp).asked).toMatchObject([{ number: 'fast.time_constant', now: 'about nine minutes' }]);
    const again = reason('fast.time_constant', 'about nine minutes', '2026-05-02');
    expect(judged(words, words, gaveUp, again)).toMatchObject({ asked: [], problems: [] });
    // What nothing may be said of is an error of its own.
    expect(judgeNote(note(), state([WAS]), state([], { absent: [absence] }), JUDGING).problems).toEqual([]);
  });

  it('asks for one reason where one cause moved several numbers, at the first of them, and apart for another cause', () => {
    const moved = [
      IS,
      entry('fast.load_power', '5.30 W', { line: 22 }),
      entry('other.load_power', '4 W', { line: 23, held: ['runs/b'] }),
    ];
    const was = [WAS, entry('fast.load_power', '5.25 W'), entry('other.load_power', '3 W')];
    const sources: Sources = {
      ...SOURCES,
      of: (subject) => (subject === 'runs/b' ? ['data/other.csv', 'the methods'] : SOURCES.of(subject)),
    };
    const { problems } = judgeNote(note(), state(was), state(moved), { ...JUDGING, sources });
    expect(problems.map(({ place, remedy }) => [place.line, remedy])).toEqual([
      [
        20,
        [
          'where the new numbers are right, write below `corrections:` in the front matter of content/notes/larch.md',
          '      - numbers:',
          '          - number: fast.peak_temperature',
          '            now: 72.1 °C',
          '          - number: fast.load_power',
          '            now: 5.30 W',
          '        since: 2026-04-30',
          '        reason: why',
          '      or for all notes and scripts at once: npm run correct -- --reason "why"',
        ].join('\n'),
      ],
      [22, 'one reason serves for all of this cause: see line 20'],
      [23, expect.stringContaining('- number: other.load_power')],
    ]);
  });

  it('goes on with a reason, which stands as a correction', () => {
    expect(judged(WAS, IS, reason('fast.peak_temperature', '72.1 °C', '2026-05-02'))).toMatchObject({
      problems: [],
      corrections: [
        {
          since: '2026-05-02',
          number: 'fast.peak_temperature',
          was: '71.3 °C',
          is: '72.1 °C',
          reason: 'The probe was read twice.',
          sentence: 'It reached 71.3\u00a0°C.',
        },
      ],
    });
  });

  it('takes no reason for a later change, and says which reason serves for nothing', () => {
    const { problems } = judged(
      WAS,
      entry('fast.peak_temperature', '73.0 °C'),
      reason('fast.peak_temperature', '72.1 °C', '2026-05-02'),
    );
    // What the number asks for says enough of the old reason; one that serves for nothing at all is told.
    expect(problems.map(({ rule, severity }) => `${severity} ${rule}`)).toEqual(['error published-number']);
    const idle = judged(WAS, WAS, reason('fast.load_power', '6 W', '2026-05-02'));
    expect(idle.problems.map(({ rule, severity }) => `${severity} ${rule}`)).toEqual(['warning unused-correction']);
  });

  it('keeps the steps of a number that was corrected twice', () => {
    const first = reason('fast.peak_temperature', '72.1 °C', '2026-05-02');
    const second = reason('fast.peak_temperature', '73.0 °C', '2026-06-02', 'The log was cut.');
    const { corrections, problems } = judged(WAS, entry('fast.peak_temperature', '73.0 °C'), second, first);
    expect(problems).toEqual([]);
    expect(corrections.map(({ since, was, is, reason: why }) => `${since} ${was} > ${is}: ${why}`)).toEqual([
      '2026-05-02 71.3 °C > 72.1 °C: The probe was read twice.',
      '2026-06-02 72.1 °C > 73.0 °C: The log was cut.',
    ]);
  });

  it('is silent about a reason that an earlier publication closed', () => {
    const past = { since: '2026-05-02', number: 'fast.peak_temperature', was: '71.3 °C', is: '72.1 °C', reason: 'x', sentence: '' };
    const stated = reason('fast.peak_temperature', '72.1 °C', '2026-05-02');
    const again = judgeNote(note({ corrections: [stated] }), state([IS], { history: [past] }), state([IS]), JUDGING);
    expect(again).toMatchObject({ corrections: [], problems: [], asked: [] });
  });

  it('asks no reason for another unit or other words of the same value', () => {
    expect(judged(entry('a.b', '1.2 W'), entry('a.b', '1200 mW', { unit: 'mW', value: 1200 })).problems).toEqual([]);
    const stated = { kind: 'stated', value: 71.3, unit: '°C' } as const;
    const edited = judged(entry('a.b', 'about 71 degrees', stated), entry('a.b', 'some 71 degrees', stated));
    expect(edited.problems).toEqual([]);
    const moved = judged(entry('a.b', 'about 71 degrees', stated), entry('a.b', 'about 73 degrees', { ...stated, value: 73.2 }));
    expect(moved.problems).toHaveLength(1);
  });

  it('asks at once for words that are no longer true, with those that would be, and takes them as a correction', () => {
    const stated = { kind: 'stated', value: 1180, unit: 's', verdict: 'holds' } as const;
    const was = entry('fast.time_to_throttle', 'nearly twenty minutes', stated);
    const is = entry('fast.time_to_throttle', 'nearly twenty minutes', {
      ...stated,
      value: 1290,
      verdict: 'fails',
      rests: 'the data says 21.5 min',
    });
    const judging: Judging = { ...JUDGING, insteadOf: () => 'nearly twenty-two minutes' };
    const { problems, asked, told } = judgeNote(note(), state([was]), state([is]), judging);
    expect(problems.map(({ found }) => found)).toEqual([
      'published words are no longer true: "nearly twenty minutes"; the data says 21.5 min; data/fast.csv changed since',
    ]);
    expect(asked).toMatchObject([
      { number: 'fast.time_to_throttle', was: 'nearly twenty minutes', now: 'nearly twenty-two minutes' },
    ]);
    expect(told.size).toBe(1);
    // With the correction in place the page prints its words, and they hold.
    const corrected = entry('fast.time_to_throttle', 'nearly twenty-two minutes', { ...stated, value: 1290 });
    const again = judged(was, corrected, reason('fast.time_to_throttle', 'nearly twenty-two minutes', '2026-05-02'));
    expect(again.problems).toEqual([]);
    expect(again.corrections).toMatchObject([{ was: 'nearly twenty minutes', is: 'nearly twenty-two minutes' }]);
  });

  it('asks again for a number that went back to what was published, and then tells both steps', () => {
    const first = reason('fast.peak_temperature', '72.1 °C', '2026-05-02');
    const back = judged(WAS, WAS, first);
    expect(back.asked).toMatchObject([{ number: 'fast.peak_temperature', now: '71.3 °C' }]);
    const { corrections, problems } = judged(WAS, WAS, first, reason('fast.peak_temperature', '71.3 °C', '2026-06-02'));
    expect(problems).toEqual([]);
    expect(corrections.map(({ was, is }) => `${was} > ${is}`)).toEqual(['71.3 °C > 72.1 °C', '72.1 °C > 71.3 °C']);
  });

  it('asks again for a number that went back to what an older correction says, and then tells all steps', () => {
    const told = [
      reason('fast.peak_temperature', '72.1 °C', '2026-05-02'),
      reason('fast.peak_temperature', '73.0 °C', '2026-06-02'),
    ];
    const before = judged(WAS, IS, ...told);
    expect(before.asked).toMatchObject([{ number: 'fast.peak_temperature', now: '72.1 °C' }]);
    expect(before.problems.map(({ rule }) => rule)).toEqual(['published-number']);
    const { corrections, problems } = judged(WAS, IS, ...told, reason('fast.peak_temperature', '72.1 °C', '2026-07-02'));
    expect(problems).toEqual([]);
    expect(corrections.map(({ since, was, is }) => `${since} ${was} > ${is}`)).toEqual([
      '2026-05-02 71.3 °C > 72.1 °C',
      '2026-06-02 72.1 °C > 73.0 °C',
      '2026-07-02 73.0 °C > 72.1 °C',
    ]);
  });

  it('keeps apart the reasons of one number that is printed in two units', () => {
    const kelvin = (shown: string, value: number) => entry('fast.rise', shown, { value, pattern: 'It rose ■.' });
    const share = (shown: string, value: number) => entry('fast.rise', shown, { value, unit: '%', pattern: 'By ■.' });
    const was = state([kelvin('10.0 K', 10), share('50 %', 50)]);
    // The first round moved both, the second the share alone.
    const corrections = [
      reason('fast.rise', '12.0 K', '2026-05-02'),
      reason('fast.rise', '60 %', '2026-05-02'),
      reason('fast.rise', '61 %', '2026-06-02'),
    ];
    const now = judgeNote(note({ corrections }), was, state([kelvin('12.0 K', 12), share('61 %', 61)]), JUDGING);
    expect(now.problems).toEqual([]);
    expect(now.corrections.map((each) => `${each.was} > ${each.is}`)).toEqual(['10.0 K > 12.0 K', '50 % > 60 %', '60 % > 61 %']);
    const back = judgeNote(note({ corrections }), was, state([kelvin('12.0 K', 12), share('60 %', 60)]), JUDGING);
    expect(back.asked).toMatchObject([{ number: 'fast.rise', now: '60 %' }]);
  });

  it('begins anew with each publication: closed reasons are no steps, and none serves again', () => {
    const closed = {
      since: '2026-05-02',
      number: 'fast.peak_temperature',
      was: '71.3 °C',
      is: '72.1 °C',
      reason: 'x',
      sentence: '',
    };
    const past = reason('fast.peak_temperature', '72.1 °C', '2026-05-02');
    const fresh = reason('fast.peak_temperature', '71.3 °C', '2026-06-02');
    const { corrections, problems } = judgeNote(
      note({ corrections: [past, fresh] }),
      state([IS], { history: [closed] }),
      state([WAS]),
      JUDGING,
    );
    expect(problems).toEqual([]);
    expect(corrections.map(({ was, is }) => `${was} > ${is}`)).toEqual(['72.1 °C > 71.3 °C']);
  });

  it('asks for a reason where the same value is rounded otherwise', () => {
    expect(judged(entry('a.b', '71.3 °C'), entry('a.b', '71 °C', { value: 71.3 })).problems).toHaveLength(1);
  });

  it('asks for a reason where a number of a table became absent', () => {
    const number = entry('fast.time_constant', '9.1 min', { kind: 'table', pattern: 'time constant: ■' });
    const absent = [
      { kind: 'table' as const, line: 20, column: 1, expression: 'fast.time_constant', why: 'The log is too short.' },
    ];
    const { problems } = judgeNote(note(), state([number]), state([], { absent }), JUDGING);
    expect(problems).toHaveLength(1);
    expect(problems[0]?.found).toContain('`fast.time_constant` was 9.1 min and is absent; data/fast.csv changed since');
    const corrections = [reason('fast.time_constant', 'absent', '2026-05-02')];
    const judgedAgain = judgeNote(note({ corrections }), state([number]), state([], { absent }), JUDGING);
    expect(judgedAgain.problems).toEqual([]);
    expect(judgedAgain.corrections).toMatchObject([{ was: '9.1 min', is: 'absent' }]);
  });
});
