import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type ListedNumber, listNumbers } from '../../../src/commands/hold/numbers.ts';
import { noteSubjects, noteWith } from '../../../src/compute/steps/notes/note-subjects.ts';
import type { Subject } from '../../../src/words/written.ts';
import { shareResults } from '../../compute/shared-results.ts';
import { demoProject } from './demo.ts';
import {
  FOUR_WAYS,
  FOUR_WAYS_MEANT,
  type MeantNumber,
  SECOND_STEP,
  SECOND_STEP_MEANT,
  TWO_LARCHES,
  TWO_LARCHES_MEANT,
} from './newcomer.ts';

const FILE = 'content/notes/newcomer.md';
const FRONT = `---
title: Plain words
date: 2026-04-01
status: draft
runs:
  rated: larch-rated
  brisk: larch-brisk
  quick: larch-quick
  fast: larch-fast
  second: larch-second
comparisons:
  steps: larch-steps
attempts:
  ladder: larch-2-no-1
---

`;

let project: ReturnType<typeof demoProject>;
let subjects: ReadonlyMap<string, Subject>;
beforeAll(async () => {
  project = demoProject();
  shareResults(project.root);
  writeFileSync(join(project.root, FILE), `${FRONT}Nothing.\n`);
  const read = await noteSubjects(project.root, FILE);
  if (!('note' in read)) throw new Error('the demonstration cannot be read');
  subjects = read.subjects;
});
afterAll(() => project.remove());

/** The numbers that are meant, in their order; what is noticed besides is for the rules to say. */
function numbersOf(text: string, meant: readonly MeantNumber[]): ListedNumber[] {
  const { note, problems } = noteWith(project.root, FILE, FRONT + text);
  if (!note) throw new Error(problems.map(({ found }) => found).join('\n'));
  const listed = listNumbers(note, subjects);
  let at = 0;
  return meant.map(([words]) => {
    const found = listed.findIndex((each, index) => index >= at && each.words === words);
    if (found < 0) throw new Error(`"${words}" is not noticed`);
    at = found + 1;
    return listed[found] as ListedNumber;
  });
}

describe('commands/hold: notes of a newcomer', () => {
  test.each([
    ['four ways', FOUR_WAYS, FOUR_WAYS_MEANT, 0, 1],
    ['two specimens', TWO_LARCHES, TWO_LARCHES_MEANT, 0, 1],
    ['the second step', SECOND_STEP, SECOND_STEP_MEANT, 1, 5],
  ] as const)(
    '%s: the right one among the first three, mostly first, and a wrong one never alone',
    (_, text, meant, missing, later) => {
      const numbers = numbersOf(text, meant);
      const alone: string[] = [];
      const missed: string[] = [];
      const notFirst: string[] = [];
      for (const [index, { words, offers, near }] of numbers.entries()) {
        const right = meant[index]![1];
        const first = offers.slice(0, 3).map(({ is }) => is);
        const place = first.findIndex((is) => right?.includes(is));
        if (offers.length === 1 && near.length === 0 && place < 0) alone.push(`${words}: ${first[0]}`);
        if (right === null) continue;
        if (place < 0) missed.push(`${words}: ${first.join(' | ')}`);
        if (place !== 0) notFirst.push(`${words}: ${first.join(' | ')}`);
      }
      expect(alone).toEqual([]);
      expect(missed.length <= missing ? [] : missed).toEqual([]);
      expect(notFirst.length <= later ? [] : notFirst).toEqual([]);
    },
  );

  const firstOf = (text: string) => {
    const [number] = numbersIn(text);
    return number!.offers[0]?.is;
  };
  function numbersIn(text: string): ListedNumber[] {
    const { note } = noteWith(project.root, FILE, `${FRONT}${text}\n`);
    return listNumbers(note!, subjects);
  }

  test('a sentence that names both runs is offered no difference that says the opposite', () => {
    expect(firstOf('The rated chip settles 5.5 K cooler than the brisk one.')).toMatch(/steady_temperature/);
    for (const text of [
      'The rated chip settles 5.5 K hotter than the brisk one.',
      'The rated run draws 0.87 W more than the brisk one.',
      'From brisk to quick the chip cools by 13.5 K.',
      'The fast run uses 38% more power than the quick one and 38% less power than the rated one.',
    ])
      expect([
        text,
        numbersIn(text)
          .at(-1)!
          .offers.filter(({ is }) => /(?:rated|brisk|quick).*(?:rated|brisk|fast)/.test(is)),
      ]).toEqual([text, []]);
  });

  test('what came of so many, what was repeated and how many of some are counts', () => {
    const offers = (text: string) => numbersIn(text).map((each) => each.offers.map(({ is }) => is));
    expect(offers('Eight settings were tried on the ladder; three passed.').map(([first]) => first)).toEqual([
      'ladder.tried',
      'ladder.outcome.passed',
    ]);
    expect(offers('Each test was repeated five times.')[0]![0]).toContain('repeats');
    for (const each of offers('Two of the five runs were warmer.').flat()) expect(each).not.toContain('/');
  });

  test('where nothing that fits is of the run that the sentence names, that is said', () => {
    const [number] = numbersIn('The rated run throttled after 19.7 minutes.');
    expect([number!.offers.map(({ is }) => is), number!.named]).toEqual([['fast.time_to_throttle'], ['rated']]);
    expect(numbersIn('The fast run throttled after 19.7 minutes.')[0]!.named).toBeUndefined();
  });
});
