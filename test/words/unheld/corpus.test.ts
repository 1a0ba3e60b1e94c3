import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parseMarkdown } from '../../../src/words/page/markdown.ts';
import { findUnheld } from '../../../src/words/rules/find-unheld.ts';

const OWN = {
  units: new Set(['runs/s', 'points', 'MB/s', 'tokens/s']),
  runs: new Set(['rated', 'brisk', 'quick', 'fast', 'larch', 'alder', 'march', 'april', 'first', 'second']),
  titles: ['larch 2'],
};
const SENTENCES = readFileSync(new URL('./corpus.txt', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line.trim() !== '' && !line.startsWith('#'));

/** The sentence with what is noticed in marks, as the corpus writes it. */
function marked(sentence: string): string {
  let from = 0;
  let out = '';
  for (const { start, end, unit } of findUnheld(sentence, parseMarkdown(sentence, false), OWN)) {
    out += `${sentence.slice(from, start)}⟦${sentence.slice(start, end)}${unit === undefined ? '' : `|${unit}`}⟧`;
    from = end;
  }
  return out + sentence.slice(from);
}

describe('words/rules: numbers that nothing holds', () => {
  test.each(SENTENCES)('%s', (line) => {
    const sentence = line.replace(/⟦([^⟧|]*)(?:\|[^⟧]*)?⟧/g, '$1');
    expect(marked(sentence)).toBe(line);
  });
});
