import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { holds } from '../../../src/words/stated/holds.ts';
import { isUnread, readStated, type Stated } from '../../../src/words/stated/read.ts';
import { suggest } from '../../../src/words/stated/suggest.ts';
import { readCases } from './corpus.ts';

function suggestion(text: string, value: number, unit?: string): string | undefined {
  const stated = readStated(text, unit);
  if (isUnread(stated)) throw new Error(`${text}: ${stated.unread}`);
  return suggest(stated, value, unit ?? stated.unit);
}

describe('words/stated/suggest', () => {
  test.each([
    ['about 71 degrees', 74.3, 'about 74 degrees'],
    ['58 degrees', 61.2, '61 degrees'],
    ['fifty-eight degrees', 61.2, 'sixty-one degrees'],
    ['58.3 °C', 61.24, '61.2 °C'],
    ['about 60 degrees', 74.3, 'about 75 degrees'],
    ['under 60 degrees', 74.3, 'under 75 degrees'],
    ['over 60 degrees', 52.1, 'over 50 degrees'],
    ['nearly 60 degrees', 74.3, 'nearly 75 degrees'],
    ['at most 61 degrees', 74.3, 'at most 75 degrees'],
    ['minus 5 degrees', -8.1, 'minus 8 degrees'],
    ['−5 °C', -8.1, '−8 °C'],
    ['5 degrees below zero', -8.2, '8 degrees below zero'],
    ['69 to 72 degrees', 74.2, '69 to 75 degrees'],
    ['between 69 and 72 degrees', 61, 'between 61 and 72 degrees'],
    ['6 degrees warmer', 8.2, '8 degrees warmer'],
    ['6 degrees warmer', -2.1, '2 degrees cooler'],
    ['6 degrees cooler', -2.1, '2 degrees cooler'],
    ['1,200 MHz', 2_401e6, '2,401 MHz'],
    ['2.10 amps', 3.4412, '3.44 amps'],
    ['exactly 2.6 GHz', 2.4123e9, 'exactly 2.4123 GHz'],
    ['just over thirty percent less', 0.6631, 'thirty-four percent less'],
    ['30 or so watts', 37.3, '37 or so watts'],
    ['five more degrees', 7.2, 'seven more degrees'],
    ['1h20m', 5000, '1 h 23 min'],
    ['never went past 61 degrees', 63.2, 'never went past 64 degrees'],
    ['half an hour', 2700, 'three quarters of an hour'],
    ['half an hour', 7200, 'two hours'],
    ['an hour and a half', 9000, 'two and a half hours'],
    ['an hour and 20 minutes', 4000, 'an hour and 7 minutes'],
    ['1 h 20 min', 4000, '1 h 7 min'],
    ['2:30 min', 199, '3:19 min'],
    ['a 20-minute soak', 1810, 'a 30-minute soak'],
    ['1 minute', 300, '5 minutes'],
    ['twice as fast', 2.4, 'two and a half times as fast'],
    ['three times as fast', 4.1, 'four times as fast'],
    ['1.37 times as fast', 1.4213, '1.42 times as fast'],
    ['30 percent faster', 1.374, '37 percent faster'],
    ['30 percent faster', 0.8, '20 percent slower'],
    ['a third less', 0.8, 'a fifth less'],
    ['half as much', 0.7, 'two thirds as much'],
    ['the chip settles at about 71 degrees, it seems', 74.3, 'the chip settles at about 74 degrees, it seems'],
    ['2.5 million', 3_140_000, '3.1 million'],
    ['four settings', 8, 'eight settings'],
    ['four settings', 1, '1 setting'],
    ['more than twice', 0.9, '0.9 times'],
  ])('"%s", of %d: "%s"', (text, value, wording) => {
    expect(suggestion(text, value)).toBe(wording);
  });

  test('has none for a value of another unit or none at all', () => {
    expect(suggest(readStated('58 degrees') as Stated, 5, 'W')).toBeUndefined();
    expect(suggest(readStated('58 degrees') as Stated, Number.NaN, '°C')).toBeUndefined();
  });

  test('takes degrees as the difference that the figure is', () => {
    expect(suggestion('about 48 degrees', 52.3, 'K')).toBe('about 52 degrees');
  });

  test("keeps a score's own word", () => {
    expect(suggestion('about 1,250 points', 1402, 'points')).toBe('about 1,400 points');
  });

  test('every wording reads back and holds', () => {
    const values = fc.oneof(
      fc.double({ min: -1000, max: 1000, noNaN: true }),
      fc.double({ min: 1e-4, max: 20, noNaN: true }),
      fc.integer({ min: -300, max: 5000 }),
    );
    fc.assert(
      fc.property(fc.constantFrom(...readCases()), values, ({ phrase }, factor) => {
        const stated = readStated(phrase) as Stated;
        const value = Number((factor * (Math.abs(stated.nominal) || 1) * 0.1).toPrecision(9));
        const wording = suggest(stated, value, stated.unit);
        const { comparison } = stated.said;
        // Words that go one way have none for what went the other, where they have no opposite.
        if (wording === undefined && comparison?.kind === 'more' && value <= 0) return;
        if (wording === undefined) throw new Error(`"${phrase}" of ${value}: no wording`);
        const read = readStated(wording, stated.unit);
        expect([phrase, value, wording, isUnread(read) ? read.unread : holds(read, value, null)]).toEqual([
          phrase,
          value,
          wording,
          'holds',
        ]);
      }),
      { numRuns: 2000, seed: 4 },
    );
  });
});
