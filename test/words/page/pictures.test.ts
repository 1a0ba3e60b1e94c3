import { describe, expect, it } from 'vitest';
import { write } from '../../../src/words/write.ts';
import { noteOf, reportOf, TWO } from '../subjects.ts';

const written = (text: string, kind: 'note' | 'script' = 'note') => write(noteOf(text, { kind }), TWO, { unheld: true });

describe('pictures in words', () => {
  it('become a figure with a place, and their alternative text is plain', () => {
    const { pieces, pictures, problems } = written('Before.\n\n![The *bench*, `idle`](a.jpg "As it **stood**")\n\nAfter.\n');
    expect(reportOf(problems)).toBe('');
    expect(pictures).toMatchObject([{ path: 'a.jpg', alt: 'The bench, idle', place: { line: 3, column: 1 } }]);
    expect(pieces).toHaveLength(1);
    expect(String(pieces[0]).replaceAll('\0', '0')).toMatchInlineSnapshot(`
      "<p>Before.</p>
      <figure class="picture" id="picture-0e3ep">
      <!--0picture 0-->

      <figcaption>As it <strong>stood</strong></figcaption>
      </figure>
      <p>After.</p>"
    `);
  });

  it('hold the numbers of captions and alternative texts, at their places in the file', () => {
    const text = '![Reads :value[fast.peak_temperature]](a.jpg \'Peak :stated[about 71 degrees]{is="fast.peak_temperature"}\')\n';
    const { entries, pictures, pieces, problems } = written(text);
    expect(reportOf(problems)).toBe('');
    expect(entries.map(({ kind, line, column, shown }) => ({ kind, line, column, shown }))).toEqual([
      { kind: 'value', line: 1, column: text.indexOf(':value') + 1, shown: entries[0]!.shown },
      { kind: 'stated', line: 1, column: text.indexOf(':stated') + 1, shown: 'about 71 degrees' },
    ]);
    expect(pictures![0]!.alt).toBe(`Reads ${entries[0]!.shown}`);
    expect(String(pieces[0])).toContain('<p class="described">Reads <a class="held"');
    expect(String(pieces[0])).toContain('<figcaption>Peak <a class="held"');
  });

  it('are refused where their words are false', () => {
    const text = '![The case](a.jpg \'Peak :stated[about 61 degrees]{is="fast.peak_temperature"}\')\n';
    expect(written(text).problems.map(({ rule, place }) => [rule, place.line, place.column])).toEqual([
      ['stated-differs', 1, text.indexOf(':stated') + 1],
    ]);
  });

  it('know one file by one path, however it is written', () => {
    const { pictures, problems } = written('![A](a/./b.jpg)\n\n![B](a//b.jpg)\n\n![C](./a/b.jpg)\n');
    expect(problems).toEqual([]);
    expect(pictures!.map(({ path }) => path)).toEqual(['a/b.jpg', 'a/b.jpg', 'a/b.jpg']);
  });

  it('let no number of theirs go unnoticed', () => {
    const text = '![The camera reads 63 °C](a.jpg "The lid at 58.1 °C, 5 min later")\n';
    const found = written(text).problems;
    expect(found.map(({ rule }) => rule)).toEqual(['unheld-number', 'unheld-number', 'unheld-number']);
    expect(found.map(({ place }) => text.slice(place.column - 1, place.column + 3))).toEqual(['63 °', '58.1', '5 mi']);
  });

  it('stand side by side where a paragraph holds several', () => {
    const { pieces, pictures } = written('![Idle](a.jpg)\n![Loaded](b.jpg "Later")\n');
    expect(pictures!.map(({ path }) => path)).toEqual(['a.jpg', 'b.jpg']);
    expect(String(pieces[0]).match(/<div class="pictures" data-count="2">|<figure class="picture"/g)).toHaveLength(3);
  });

  it('take the same file twice, each with an address of its own', () => {
    const ids = [...String(written('![a](a.jpg)\n\n![b](a.jpg)\n').pieces[0]).matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(2);
  });

  it('are looked at in a script and not said', () => {
    const { script } = written(
      'Look.\n\n![The lid](a.jpg "Read :value[fast.peak_temperature]")\n\n![a](a.jpg)\n![b](b.jpg)\n',
      'script',
    );
    expect(script!.map(({ kind, said }) => [kind, said])).toEqual([
      ['said', ['Look.', ' ']],
      ['shown', []],
      ['shown', []],
    ]);
  });
});
