import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { computeScripts } from '../../../../src/compute/steps/notes/scripts.ts';
import { digest } from '../../../../src/compute/store/digest.ts';
import { write } from '../../../../src/words/write.ts';
import { noteOf, TWO } from '../../../words/subjects.ts';

let root: string;
beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'soakproof-scripts-'));
  mkdirSync(join(root, 'data'));
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

const TEXT = 'This is what is said.\n\n:::cue{at="0:30"}\nThe plot.\n:::\n\nAnd this comes after it.';
const SAID = `WEBVTT

00:00.000 --> 00:02.000
This is what is said.

00:10.000 --> 00:12.000
And this comes after it.
`;

/** A script with these subtitles, or without. */
function scriptWith(subtitles?: string | Uint8Array) {
  if (subtitles !== undefined) writeFileSync(join(root, 'data', 'final.vtt'), subtitles);
  const note = { ...noteOf(TEXT, { kind: 'script' }), ...(subtitles === undefined ? {} : { subtitles: 'final.vtt' }) };
  const outcome = { note, key: 'k', written: write(note, TWO), reaches: [] };
  const { plans, files, problems } = computeScripts(root, { outcomes: [outcome] });
  return {
    plan: plans.get(note.id)!,
    files,
    problems: problems.map(({ rule, severity, place }) => [rule, severity, place.file, place.line]),
  };
}

describe('compute/steps/notes/scripts', () => {
  it('estimates without subtitles', () => {
    const { plan, files, problems } = scriptWith();
    expect([plan.basis, plan.blocks[1]?.from, files.size, problems]).toEqual(['pace', 30, 0, []]);
  });

  it('takes the times of subtitles, and remembers which file they were', () => {
    const { plan, files, problems } = scriptWith(SAID);
    expect([plan.basis, plan.blocks[1]?.from]).toEqual(['subtitles', 10]);
    expect([...files]).toEqual([['final.vtt', digest(SAID)]]);
    expect(problems).toEqual([['cue-not-at-time', 'warning', 'content/notes/note.md', 3]]);
  });

  it('tells a slip in subtitles at its line, and takes the times of the others', () => {
    const { plan, problems } = scriptWith(SAID.replace('00:02.000', '00:02'));
    expect(plan.basis).toBe('subtitles');
    expect(problems[0]).toEqual(['subtitles-fault', 'warning', 'data/final.vtt', 3]);
  });

  it.each([
    [
      'subtitles of something else',
      'WEBVTT\n\n00:00.000 --> 00:02.000\nQuite another talk.\n',
      ['subtitles-mismatch', 'error', 'content/notes/note.md'],
    ],
    ['a file of another kind', 'time,temperature\n0,20\n', ['subtitles-unread', 'error', 'data/final.vtt']],
    ['bytes that are not text', new Uint8Array([0x57, 0xff, 0xfe]), ['subtitles-unread', 'error', 'data/final.vtt']],
  ])('tells %s, and estimates', (_, content, problem) => {
    const { plan, problems } = scriptWith(content);
    expect(plan.basis).toBe('pace');
    expect(problems.map((each) => each.slice(0, 3))).toContainEqual(problem);
  });
});
