import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { renderProse } from '../../src/words/prose.ts';
import { write } from '../../src/words/write.ts';
import { noteOf, reportOf, TWO } from './subjects.ts';

/** Pieces that Markdown and our directives are made of. */
const PIECES = [
  ':',
  '::',
  ':::',
  ':value',
  ':claim',
  ':stated',
  ':unheld',
  '[about 71 degrees]',
  '{is="fast.peak_temperature"}',
  ' outcome=untold',
  ' 5&nbsp;W ',
  ' never 60 degrees ',
  '::plot',
  '::table',
  ':::cue',
  '[',
  ']',
  '{',
  '}',
  '{is="',
  '"',
  "'",
  '{unit=',
  '=',
  '“',
  '\\',
  '`',
  '```',
  '*',
  '_',
  '~~',
  '> ',
  '- ',
  '1. ',
  '# ',
  '| ',
  '|---|',
  '---',
  '\n',
  '\r\n',
  '\n\n',
  '\t',
  ' ',
  '\0',
  '\uFEFF',
  '\u2028',
  '<b>',
  '<!--',
  '-->',
  '[^a]',
  '[^a]: ',
  '![',
  '](',
  ')',
  'http://',
  'a@b.c',
  '&amp;',
  '😀',
  '\uD800',
  'fast.peak_temperature',
  'rated',
  '.',
  ' - ',
  ' within ',
  '3 K',
  'kind=trace',
  'of=load_power',
];
const markdown = fc
  .array(fc.oneof({ weight: 6, arbitrary: fc.constantFrom(...PIECES) }, { weight: 1, arbitrary: fc.string({ maxLength: 6 }) }), {
    maxLength: 40,
  })
  .map((pieces) => pieces.join(''));

describe('words/robust', () => {
  test('no Markdown makes it throw; every problem stands in the file; every entry shows what its link shows', () => {
    fc.assert(
      fc.property(markdown, (text) => {
        const { pieces, entries, problems, plots } = write(noteOf(text), TWO, { unheld: true });
        const html = pieces.filter((piece) => typeof piece === 'string').join('');
        const shown = [...html.matchAll(/<a class="held"[^>]*>([^<]*)<\/a>/g)].map((match) => match[1]);
        expect(shown).toEqual(entries.map((entry) => entry.shown.replaceAll('&', '&#x26;').replaceAll('<', '&#x3C;')));
        expect(pieces.filter((piece) => typeof piece === 'number')).toEqual(plots.map((_, index) => index));
        const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
        for (const { place } of problems) {
          expect(place.line).toBeGreaterThan(0);
          expect(place.column).toBeLessThanOrEqual((lines[place.line - 1] as string).length + 1);
        }
      }),
      { numRuns: 800, seed: 20260314 },
    );
  });

  test('no prose makes it throw', () => {
    fc.assert(
      fc.property(markdown, (text) => {
        expect(renderProse(text, { file: 'x.md', line: 1 }).html).not.toContain('class="held"');
      }),
      { numRuns: 300, seed: 20260315 },
    );
  });

  test('text nested too deeply is told and kept', () => {
    const text = `${'>'.repeat(12_000)} x`;
    const { html, problems } = renderProse(text, { file: 'x.md', line: 4 });
    expect(reportOf(problems)).toMatch(/^4:1: error \[nested-too-deeply\]/);
    expect(html).toBe(`<pre>${text}</pre>`);
  });
});
