/** What `hold` (`w`) and `correct` write in the place of words that are not true, tried on every figure of the demonstration. */

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { candidatesOf } from '../../../src/commands/hold/candidates.ts';
import { noteSubjects } from '../../../src/compute/steps/notes/note-subjects.ts';
import { write } from '../../../src/words/write.ts';
import type { Subject } from '../../../src/words/written.ts';
import { shareResults } from '../../compute/shared-results.ts';
import { noteOf } from '../../words/subjects.ts';
import { demoProject } from './demo.ts';

const FILE = 'content/notes/written-words.md';
const NOTE = `---
title: All
date: 2026-04-01
status: draft
runs:
  rated: larch-rated
  fast: larch-fast
  second: larch-second
comparisons:
  steps: larch-steps
attempts:
  ladder: larch-2-no-1
---

Nothing.
`;

/** Wordings that are far from every value, in the units and forms that authors use. */
const FORMS: Readonly<Record<string, readonly string[]>> = {
  '°C': ['999.9 °C', '9999 degrees', 'about 1,000 degrees', 'nine thousand degrees', 'over 9,000 °C'],
  K: ['999.9 K', 'about 1,000 degrees warmer', 'ninety-nine hundredths of a kelvin', 'within 9,000 degrees'],
  W: ['999.99 W', 'just under 2,000 watts', 'nine thousand watts'],
  s: ['9,999 s', 'nearly two hundred hours', '999.9 minutes'],
  Hz: ['99.99 GHz', 'about 99 GHz', 'over 99,000 MHz'],
  J: ['99,999 kJ', '99.9 kWh'],
  '1': ['999 percent more', 'more than ninety times', '99.99 times', 'about 999 percent', 'ninety times'],
};

let project: ReturnType<typeof demoProject>;
let subjects: ReadonlyMap<string, Subject>;
beforeAll(async () => {
  project = demoProject();
  shareResults(project.root);
  writeFileSync(join(project.root, FILE), NOTE);
  const read = await noteSubjects(project.root, FILE);
  if (!('note' in read)) throw new Error('the demonstration cannot be read');
  subjects = read.subjects;
});
afterAll(() => project.remove());

const problemsOf = (text: string) =>
  write(noteOf(text), subjects).problems.map(({ rule, found, remedy }) => `${rule}: ${found} | ${remedy}`);

function directive(words: string, is: string): string {
  const quote = is.includes('"') ? "'" : '"';
  return `:stated[${words}]{is=${quote}${is}${quote}}`;
}

describe('commands/hold: words that are written', () => {
  test('pass the check without a warning, for every figure and fact', () => {
    const wrong: string[] = [];
    let tried = 0;
    for (const { is, quantity } of candidatesOf(subjects)) {
      const own = `9,999.99 ${quantity.unit}`;
      for (const form of FORMS[quantity.unit] ?? [own]) {
        const [told = ''] = problemsOf(directive(form, is));
        const wording = /\| write "(.*)"$/.exec(told)?.[1];
        if (wording === undefined) {
          if (/stated-differs/.test(told)) wrong.push(`${is} "${form}": no wording; ${told}`);
          continue;
        }
        tried += 1;
        const again = problemsOf(directive(wording, is));
        if (again.length > 0) wrong.push(`${is} "${form}" → "${wording}": ${again[0]}`);
      }
    }
    expect(wrong.join('\n')).toBe('');
    expect(tried).toBeGreaterThan(1000);
  });
});
