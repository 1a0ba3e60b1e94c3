import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type ListedNumber, listNumbers } from '../../../src/commands/hold/numbers.ts';
import { noteSubjects, noteWith } from '../../../src/compute/steps/notes/note-subjects.ts';
import type { Subject } from '../../../src/words/written.ts';
import { shareResults } from '../../compute/shared-results.ts';
import { demoProject } from './demo.ts';
import { FORTY, type Passage } from './forty.ts';

const FILE = 'content/notes/forty.md';

function noteOf({ key, text }: Passage): string {
  const own = key === undefined || key === 'title' ? '' : `${key}: ${text}\n`;
  return `---
title: ${key === 'title' ? text : 'Plain words'}
date: 2026-04-01
status: draft
${own}runs:
  rated: larch-rated
  brisk: larch-brisk
  quick: larch-quick
  fast: larch-fast
  short: larch-first-try
comparisons:
  steps: larch-steps
attempts:
  ladder: larch-2-no-1
---

${key === undefined ? text : 'Nothing else.'}
`;
}

let project: ReturnType<typeof demoProject>;
let subjects: ReadonlyMap<string, Subject>;
beforeAll(async () => {
  project = demoProject();
  shareResults(project.root);
  writeFileSync(join(project.root, FILE), noteOf({ text: 'Nothing.', numbers: [] }));
  const read = await noteSubjects(project.root, FILE);
  if (!('note' in read)) throw new Error('the demonstration cannot be read');
  subjects = read.subjects;
});
afterAll(() => project.remove());

function numbersOf(passage: Passage): ListedNumber[] {
  const { note, problems } = noteWith(project.root, FILE, noteOf(passage));
  if (!note) throw new Error(problems.map(({ found }) => found).join('\n'));
  return listNumbers(note, subjects);
}

/** Numbers that only the figure of another run, or another quantity, bears: what the sentence speaks of stands beside it. */
const BY_CHANCE: readonly (readonly [text: string, meant: string])[] = [
  ['The room was at 22 °C.', 'rated.ambient'],
  ['The fast soak took place in a room of 22 °C.', 'fast.ambient'],
  ['It idles at 22 °C.', 'rated.idle_temperature'],
  ['The camera saw 22 °C.', 'rated.hottest_surface'],
  ['The rated run drew 7.3 W.', 'rated.load_power'],
  ['The quick run peaked at 63 °C.', 'quick.peak_temperature'],
  ['The fast socket was 8.9 K warmer than the rated one.', 'fast.hottest_surface.socket - rated.hottest_surface.socket'],
];

/** What a second and a third set of forty sentences had wrong, or not noticed. */
const MORE: readonly (readonly [text: string, ...right: string[]])[] = [
  ['The grid ran at 88.7 sweeps per second on brisk.', 'brisk.score."grid-relaxation-all-cores"'],
  ['A third of the fast load ran at the full 2.6 GHz.', 'fast.clock_share.at_2600_MHz', 'fast.setting.clock'],
  ['During the benchmarks the fast run drew 10.3 W.', 'fast.score_power."grid-relaxation-all-cores"'],
  ['The fast run was held at its limit for 42 of its 60 minutes.', 'fast.held_at_limit', 'fast.phase_duration'],
  ['The fast setting throttled only once.', 'fast.throttle_events'],
  ['Three of the eight rungs held; one restarted.', 'ladder.outcome.passed', 'ladder.tried', 'ladder.outcome.restarted'],
  ['The clock was never set above 2.6 GHz.', 'fast.setting.clock'],
  [
    'The exponent for wide copies is 0.165, for the grid 0.973.',
    'steps.scaling_exponent."wide-copy"',
    'steps.scaling_exponent."grid-relaxation-all-cores"',
  ],
];

describe('commands/hold: forty passages', () => {
  test('every number is noticed; in 38 and more the right one is among the first three, and a wrong one never stands alone', () => {
    const missed: string[] = [];
    const alone: string[] = [];
    for (const passage of FORTY) {
      const numbers = numbersOf(passage);
      expect(numbers.map(({ words }) => words)).toEqual(passage.numbers.map(({ words }) => words));
      const wrong = numbers.filter(({ offers, near, sure }, index) => {
        const { is, near: meant } = passage.numbers[index]!;
        const first = offers.slice(0, 3).map((offer) => offer.is);
        const right = is === null ? near.some((miss) => miss.is === meant) : first.some((offer) => is.includes(offer));
        if (sure && !is?.includes(first[0]!)) alone.push(`${passage.text}: sure of ${first[0]}`);
        if (!right && offers.length === 1 && near.length === 0) alone.push(`${passage.text}: ${first[0]}`);
        return !right;
      });
      if (wrong.length > 0) missed.push(`${passage.text}: ${wrong.map(({ words, offers }) => `${words} ${offers[0]?.is}`)}`);
    }
    expect(alone).toEqual([]);
    expect(missed.slice(FORTY.length - 38)).toEqual([]);
    expect(FORTY).toHaveLength(40);
  });

  test('a near miss says why it misses, and with which words it would hold', () => {
    const [listed] = numbersOf({ text: 'The fast chip settled at 85 degrees.', numbers: [] });
    const miss = listed?.near.find(({ is }) => is === 'fast.steady_temperature');
    expect(miss?.why).toBe('less than the words allow: 84.5 °C to below 85.5 °C'.replaceAll(' °', '\u00a0°'));
    expect(miss?.instead).toBe('84 degrees');
  });

  test.each(BY_CHANCE)('%s: what fits by chance never stands alone', (text, meant) => {
    const [listed] = numbersOf({ text, numbers: [] });
    expect(listed?.offers.length).toBeGreaterThan(0);
    expect(listed?.sure).toBeUndefined();
    expect([...(listed?.offers ?? []), ...(listed?.near ?? [])].map(({ is }) => is)).toContain(meant);
  });

  test('a figure that the sentence names with its run has no other beside it', () => {
    const [listed] = numbersOf({ text: 'Peak power of the fast run came to 11.2 W.', numbers: [] });
    expect([listed?.offers.map(({ is }) => is), listed?.near]).toEqual([['fast.peak_power'], []]);
  });

  test('a rate of runs is no count of them', () => {
    const [listed] = numbersOf({ text: 'The pattern ran at 4 runs/s.', numbers: [] });
    expect([...(listed?.offers ?? []), ...(listed?.near ?? [])].filter(({ is }) => is.startsWith('count('))).toEqual([]);
    const [counted] = numbersOf({ text: 'There were 5 runs.', numbers: [] });
    expect(counted?.offers[0]?.is).toBe('count(*.setting.clock)');
  });

  test.each(MORE)('%s', (text, ...right) => {
    const numbers = numbersOf({ text, numbers: [] });
    expect(numbers.map(({ offers }) => offers.slice(0, 3).map(({ is }) => is))).toEqual(
      right.map((is) => expect.arrayContaining([is])),
    );
  });

  test.each([
    ['The fast run had a single restart.', []],
    ['The fast run restarted once.', []],
    ['There was a single restart among the rungs.', ['ladder.outcome.restarted']],
    ['The rungs ended with two hangs.', ['ladder.outcome.hung']],
    ['The rungs ended with two crashes.', []],
    ['The rungs ended with one crash.', []],
  ])('%s: what came of attempts is no figure of a run', (text, right) => {
    expect(numbersOf({ text, numbers: [] }).map(({ offers }) => offers.map(({ is }) => is))).toEqual([right]);
  });

  test.each(['The fast run throttled twice.', 'The fast run throttled three times.'])('%s: its events are near', (text) => {
    expect(numbersOf({ text, numbers: [] })[0]?.near.map(({ is }) => is)).toContain('fast.throttle_events');
  });

  test('"a second" behind a number of bytes is no number', () => {
    const [listed] = numbersOf({ text: 'It scored 8.2 gigabytes a second.', numbers: [] });
    expect([listed?.words, listed?.why]).toEqual(['8.2 gigabytes a second', undefined]);
  });

  test('the same words with the same meaning stand for each other, and numbers of a list or table keep their unit', () => {
    const numbers = numbersOf({ text: 'It ran at 2.0, 2.2 and 2.6 GHz.', numbers: [] });
    expect(numbers.map(({ words, unit }) => [words, unit])).toEqual([
      ['2.0', 'GHz'],
      ['2.2', 'GHz'],
      ['2.6 GHz', undefined],
    ]);
    expect(numbers[1]?.offers[0]?.is).toBe('brisk.setting.clock');
  });
});
