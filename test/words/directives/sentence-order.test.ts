import { describe, expect, test } from 'vitest';
import type { Figure } from '../../../src/figures/figure.ts';
import { turnedRound } from '../../../src/words/directives/sentence-order.ts';
import { readStated, type Stated } from '../../../src/words/stated/read.ts';
import type { Subject } from '../../../src/words/written.ts';
import { FAST, RATED } from '../subjects.ts';

/** 20 s for the rated run and 17 s more for the fast one. */
function timed(subject: Subject, seconds: number): Subject {
  const time: Figure = {
    name: 'time_constant',
    quantity: { value: seconds, unit: 's', parts: [] },
    from: { columns: [], rows: null },
  };
  return { ...subject, figures: new Map<string, Figure>([...subject.figures, ['time_constant', time]]) };
}
const SUBJECTS = new Map([
  ['rated', timed(RATED, 20)],
  ['fast', timed(FAST, 37)],
]);

describe('words/directives/sentence-order', () => {
  // Each sentence names both runs; the fast one has the higher temperature, power and time.
  test.each([
    ['10 degrees hotter', ' than rated', 'fast.peak_temperature - rated.peak_temperature', 10.1, undefined],
    ['10 degrees hotter', ' than fast', 'fast.peak_temperature - rated.peak_temperature', 10.1, 'fast'],
    ['10 degrees cooler', ' than the rated run', 'fast.peak_temperature - rated.peak_temperature', 10.1, 'rated'],
    ['10 degrees cooler', ' at the end than the fast run', 'fast.peak_temperature - rated.peak_temperature', 10.1, undefined],
    ['26% less', ' power than fast', 'rated.load_power / fast.load_power', 0.743, undefined],
    ['26% less', ' power than rated', 'rated.load_power / fast.load_power', 0.743, 'rated'],
    ['17 s slower', ' than rated', 'fast.time_constant - rated.time_constant', 17, undefined],
    ['17 s faster', ' than rated', 'fast.time_constant - rated.time_constant', 17, 'rated'],
    ['17 s faster', ' than fast', 'fast.time_constant - rated.time_constant', 17, undefined],
    ['17 s longer', ' than rated', 'fast.time_constant - rated.time_constant', 17, undefined],
    ['10 degrees hotter', ', if warmer than fast', 'fast.peak_temperature - rated.peak_temperature', 10.1, undefined],
  ])('"%s%s" by %s', (words, after, expression, value, other) => {
    const said = readStated(words) as Stated;
    expect(turnedRound(said, { before: 'It is ', after: words.slice(said.end) + after }, expression, value, SUBJECTS)).toBe(other);
  });
});
