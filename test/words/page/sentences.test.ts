import { describe, expect, test } from 'vitest';
import { write } from '../../../src/words/write.ts';
import { noteOf, TWO } from '../subjects.ts';

function sentences(text: string) {
  return write(noteOf(text), TWO).sentences;
}

const V = ':value[fast.peak_temperature]';
const W = ':value[rated.peak_temperature]';

describe('words/page/sentences', () => {
  test('gives the sentence of each number, and the same with marks in the place of numbers', () => {
    expect(sentences(`At first, nothing. It reached ${V}, and ${W}\nbefore. Then it fell.`)).toEqual([
      { text: 'It reached 71.3\u00a0°C, and 61.2\u00a0°C before.', pattern: 'It reached ■, and □ before.' },
      { text: 'It reached 71.3\u00a0°C, and 61.2\u00a0°C before.', pattern: 'It reached □, and ■ before.' },
    ]);
  });

  test('a number may begin or end a sentence, and a decimal point ends none', () => {
    expect(
      sentences(`It was so. ${V} is what it reached in 2.5 h. Ours reached ${W}. And so on.`)?.map(({ text }) => text),
    ).toEqual(['71.3\u00a0°C is what it reached in 2.5 h.', 'Ours reached 61.2\u00a0°C.']);
  });

  test('emphasis and links are part of their sentence; list items and headings end one', () => {
    expect(
      sentences(`- *hot*: ${V}\n- [cool](https://a.example): ${W}\n\n## ${V} and more\n\nText.`)?.map(({ text }) => text),
    ).toEqual(['hot: 71.3\u00a0°C', 'cool: 61.2\u00a0°C', '71.3\u00a0°C and more']);
  });

  test('a cell of a table stands with the head of its row', () => {
    expect(sentences('::table{runs="rated fast" of="peak_temperature"}')?.map(({ text }) => text)).toEqual([
      'peak temperature: 61.2\u00a0°C',
      'peak temperature: 71.3\u00a0°C',
    ]);
  });
});
