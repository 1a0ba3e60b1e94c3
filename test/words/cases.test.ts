import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { renderProse } from '../../src/words/prose.ts';
import { RULES } from '../../src/words/rules/rules.ts';
import { write } from '../../src/words/write.ts';
import { noteOf, reportOf, SPOTTED, TWO } from './subjects.ts';

const CASES = new URL('./cases/', import.meta.url);
const SCRIPTS = new Set(['cue-time', 'directive-unclosed']);
/** Too long for a file of its own: see robust.test.ts. */
const ELSEWHERE = new Set(['nested-too-deeply']);

/** Every problem of a case file, in the order reported. */
function problemsOf(rule: string, file: string): string {
  const text = readFileSync(new URL(`${rule}/${file}`, CASES), 'utf8');
  if (rule === 'held-number-in-prose') return reportOf(renderProse(text, { file: 'content/runs/run.md', line: 1 }).problems);
  const note = noteOf(text, { kind: SCRIPTS.has(rule) ? 'script' : 'note' });
  return reportOf(write(note, rule === 'picture-spots' ? SPOTTED : TWO, { unheld: rule === 'unheld-number' }).problems);
}

describe('words/cases', () => {
  const rules = Object.keys(RULES).filter((rule) => !ELSEWHERE.has(rule));

  test('there is one case folder a rule, and no other', () => {
    expect(readdirSync(CASES).toSorted()).toEqual(rules.toSorted());
  });

  test.each(rules)('%s: what is right passes without a word', (rule) => {
    expect(problemsOf(rule, 'ok.md')).toBe('');
  });

  test.each(rules)('%s: what is wrong is told exactly', async (rule) => {
    const expected = new URL(`${rule}/bad.txt`, CASES);
    expect(existsSync(expected)).toBe(true);
    const report = problemsOf(rule, 'bad.md');
    expect(report).toContain(`[${rule}]`);
    await expect(report).toMatchFileSnapshot(expected.pathname);
  });
});
