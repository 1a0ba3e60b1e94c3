import { describe, expect, test } from 'vitest';
import type { FrontKey, FrontText } from '../../src/register/register.ts';
import { offsetsIn, withPlainFront } from '../../src/words/front-words.ts';
import { write } from '../../src/words/write.ts';
import { noteOf, reportOf, TWO } from './subjects.ts';

const VALUE = ':value[fast.peak_temperature]';

/** A note whose front matter has these lines, each with one key. */
function withFront(lines: Readonly<Partial<Record<FrontKey, string>>>, body = '') {
  const keys = Object.entries(lines) as [FrontKey, string][];
  const text = ['---', ...keys.map(([key, value]) => `${key}: ${value}`), '---', '', body].join('\n');
  const front = keys.map(([key, value], index): FrontText => {
    const quoted = /^["']/.test(value);
    const place = { file: 'content/notes/note.md', line: index + 2, column: key.length + (quoted ? 4 : 3) };
    return { key, text: quoted ? value.slice(1, -1).replaceAll("''", "'") : value, place };
  });
  return noteOf(text, { front });
}

describe('words/front-words', () => {
  test('title and summary are read before the text, the disclosure after it; each number knows its sentence and its place', () => {
    const note = withFront(
      {
        title: `A peak of ${VALUE}`,
        summary:
          'Under load :stated[about 5 W]{is="fast.load_power"}, *plainly*. :claim[It ran hotter]{is="fast.peak_temperature > rated.peak_temperature"}.',
        disclosure: 'On loan for :unheld[5 h]; it drew :value[rated.load_power].',
      },
      'The text has :value[fast.load_power].',
    );
    const written = write(note, TWO, { unheld: true });
    expect(reportOf(written.problems)).toBe('');
    expect(written.front).toEqual({
      title: ['A peak of ', 1],
      summary: ['Under load ', 2, ', *plainly*. ', 3, '.'],
      disclosure: ['On loan for ', '5 h', '; it drew ', 5, '.'],
    });
    expect(written.entries.map(({ line, column, shown }) => `${line}:${column} ${shown}`)).toEqual([
      '2:18 71.3\u00a0°C',
      '3:21 about 5 W',
      expect.stringMatching(/^3:\d+ It ran hotter$/),
      '7:14 5.250\u00a0W',
      expect.stringMatching(/^4:\d+ 3\.900\u00a0W$/),
    ]);
    expect(written.sentences?.map(({ text }) => text)).toEqual([
      'A peak of 71.3\u00a0°C',
      'Under load about 5 W, *plainly*.',
      'It ran hotter.',
      'The text has 5.250\u00a0W.',
      'On loan for 5 h; it drew 3.900\u00a0W.',
    ]);
    const id = written.entries[3]?.id;
    expect(id).toMatch(/-[a-z0-9]{5}$/);
    expect(written.pieces.join('')).toBe(
      `<p>The text has <a class="held" id="${id}" href="#held:${id}" data-n="4">5.250\u00a0W</a>.</p>`,
    );
    expect(withPlainFront(note, written)).toMatchObject({
      title: 'A peak of 71.3\u00a0°C',
      summary: 'Under load about 5 W, *plainly*. It ran hotter.',
    });
  });

  test('unheld numbers in them are warnings at their place, errors where the note refuses them', () => {
    const note = withFront({
      title: 'It peaks at 71 °C',
      summary: "'It''s 5 W under load'",
      disclosure: 'Nobody paid 3 € or 10:30.',
    });
    expect(reportOf(write(note, TWO, { unheld: true }).problems)).toBe(
      [
        '2:20-25: warning [unheld-number] nothing holds `71 °C`',
        '  expected: a figure, setting, condition or rating that holds it',
        '  remedy: `npm run hold -- content/notes/note.md` offers those that fit; `:unheld[…]` leaves it free',
        '3:17-20: warning [unheld-number] nothing holds `5 W`',
        '',
      ].join('\n'),
    );
    const refused = write({ ...note, unheld: 'refuse' }, TWO).problems;
    expect(refused.map(({ severity, rule }) => `${severity} ${rule}`)).toEqual(['error unheld-number', 'error unheld-number']);
  });

  test('what is wrong with them is told at its place, and the words stay as written', () => {
    const note = withFront({
      title: 'Up to :value[fast.peek_temperature]',
      summary: 'It drew :stated[9 W]{is="fast.load_power"} and :value [fast.load_power]',
    });
    const written = write(note, TWO);
    expect(written.problems.map(({ rule, place }) => `${place.line}:${place.column} ${rule}`)).toEqual([
      '2:26 unknown-figure',
      '3:18 stated-differs',
      expect.stringMatching(/^3:\d+ directive-blank$/),
    ]);
    expect(written.front?.title).toEqual(['Up to ', ':value[fast.peek_temperature]']);
  });

  test('offsets of a value in its file: plain, quotes written twice, blocks with indented lines', () => {
    const at = (source: string, text: string) => [...offsetsIn(source, 0, text)].map((offset) => source[offset] ?? '$').join('');
    expect(at('plain words', 'plain')).toBe('plain ');
    expect(at("it''s so'", "it's so")).toBe("it's so'");
    expect(at('|\n  one\n  two\n', 'one\ntwo')).toBe('one\ntwo\n');
    expect(at('>-\r\n  one\r\n  two\r\n', 'one two')).toBe('one\rtwo\r');
    expect(offsetsIn('caf\\u00e9', 0, 'café')).toEqual([0, 0, 0, 0, 0]);
    expect(at('😀 5 W', '😀 5 W')).toBe('😀 5 W$');
  });
});
