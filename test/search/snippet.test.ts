import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { snippetOf } from '../../src/search/snippet.ts';

const LONG = `${'The board was left alone until it settled. '.repeat(6)}Then the lid reached 71.3 °C, and the lid stayed there. ${'Nothing else was seen. '.repeat(12)}`;
const shown = (text: string, terms: readonly string[]) =>
  snippetOf(text, terms)
    .map((stretch) => (stretch.marked ? `[${stretch.text}]` : stretch.text))
    .join('');

describe('search/snippet', () => {
  it('cuts about two lines around the first word, between words, and marks the words', () => {
    expect(shown(LONG, ['lid', '71.3'])).toMatch(
      /^… [a-z].*Then the \[lid\] reached \[71\.3\] °C, and the \[lid\] stayed there\..* …$/i,
    );
    expect(shown(LONG, ['lid']).length).toBeLessThan(220);
    expect(LONG.split(' ')).toContain(shown(LONG, ['lid']).split(' ')[1]);
  });

  it('shows a short text whole, and the beginning where no word stands in it', () => {
    expect(shown('Mean power of the load phase.', ['power'])).toBe('Mean [power] of the load phase.');
    expect(shown(LONG, ['title'])).toMatch(/^The board was left .* …$/);
    expect(snippetOf('', ['power'])).toEqual([]);
  });

  it('marks a word in any case and with any accent, and no part of a word', () => {
    expect(shown('Fällboard on the board, BOARD.', ['board'])).toBe('Fällboard on the [board], [BOARD].');
    expect(shown('Fällboard', ['fallboard'])).toBe('[Fällboard]');
  });

  it('shows nothing but what stands in the text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 400 }), fc.array(fc.string({ maxLength: 4 })), (text, terms) => {
        const plain = snippetOf(text, terms)
          .map((stretch) => stretch.text)
          .join('')
          .replace(/^… /, '')
          .replace(/ …$/, '');
        expect(text).toContain(plain);
      }),
    );
  });
});
