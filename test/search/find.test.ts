import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Document, SearchFile } from '../../src/search/document.ts';
import { openIndex } from '../../src/search/find.ts';
import { plainWord, wordsOf } from '../../src/search/terms.ts';
import { writeIndex } from '../../src/search/write.ts';

const page = (kind: string, name: string, title: string, text: string): Document => ({
  kind,
  name,
  title,
  path: `${kind}/${name}/`,
  text,
});
const DOCUMENTS = [
  page('notes', 'hot-lid', 'A lid that keeps its heat', 'The lid reached 71.3 °C under load, 4.5 K more than the Fällboard.'),
  page('runs', 'larch-fast', 'Fast setting, hour soak', 'Larch 2, specimen no-1, 2026-03-14. clock 2.6 GHz.'),
  page('figures', 'steady_temperature', 'steady temperature', 'Mean over the last window of the load. Unit: °C.'),
  page('figures', 'load_power', 'load power', 'Mean power of the load phase, at 71 places. Unit: W.'),
];
/** As the browser has it: through JSON. */
const through = (documents: readonly Document[]) => openIndex(JSON.parse(JSON.stringify(writeIndex(documents))) as SearchFile);
const find = through(DOCUMENTS);
const found = (query: string) => find(query).hits.map(({ path }) => path);

describe('search', () => {
  it.each([
    ['heat', ['notes/hot-lid/']],
    ['STEADY', ['figures/steady_temperature/']],
    ['steady_temperature', ['figures/steady_temperature/']],
    ['temp', ['figures/steady_temperature/']],
    ['stedy', ['figures/steady_temperature/']],
    ['71.3', ['notes/hot-lid/']],
    ['71.3 °C', ['notes/hot-lid/']],
    ['fallboard', ['notes/hot-lid/']],
    ['larch-fast', ['runs/larch-fast/']],
    ['hot-lid', ['notes/hot-lid/']],
    ['2026-03-14', ['runs/larch-fast/']],
    ['2.6 GHz', ['runs/larch-fast/']],
  ])('%s finds %j', (query, paths) => {
    expect(found(query)).toEqual(paths);
    expect(find(query).all).toBe(true);
  });

  it('puts what has a word in its title before what has it in its text', () => {
    expect(found('load')).toEqual(['figures/load_power/', 'figures/steady_temperature/', 'notes/hot-lid/']);
  });

  it('looks for all words first, then says that it looked for some', () => {
    expect(find('mean power').all).toBe(true);
    const some = find('lid phase');
    expect(some.all).toBe(false);
    expect(some.hits.map(({ path }) => path).toSorted()).toEqual(['figures/load_power/', 'notes/hot-lid/']);
    expect(find('zeppelin')).toEqual({ hits: [], all: false });
    expect(find(' … ')).toEqual({ hits: [], all: true });
  });

  it('does not guess at numbers', () => {
    expect(found('2027')).toEqual([]);
    expect(found('72.3')).toEqual([]);
  });

  it('writes the same bytes for the same documents', () => {
    expect(JSON.stringify(writeIndex(DOCUMENTS))).toBe(JSON.stringify(writeIndex(structuredClone(DOCUMENTS))));
    expect(writeIndex(DOCUMENTS).format).toBe(1);
  });

  it('refuses two documents of one path', () => {
    expect(() => writeIndex([DOCUMENTS[0]!, DOCUMENTS[0]!])).toThrow();
  });

  // Against a plain look through all texts: a page that has every word as it stands is always among what is found.
  it('misses no document that has all the words', () => {
    const word = fc.constantFrom('amber', 'basalt', 'cedar', 'delta', '12.5', '800', 'MHz', 'W');
    const texts = fc.array(fc.array(word, { maxLength: 6 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(texts, fc.array(word, { minLength: 1, maxLength: 3 }), (bodies, words) => {
        const documents = bodies.map((body, at) => page('notes', `n-${at}`, `Note ${at}`, body.join(' ')));
        const whole = documents.filter(({ text }) => {
          const has = new Set(wordsOf(text).map(plainWord));
          return words.every((each) => has.has(plainWord(each)));
        });
        const paths = through(documents)(words.join(' ')).hits.map(({ path }) => path);
        for (const { path } of whole) expect(paths).toContain(path);
      }),
    );
  });

  it('never throws on a query', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary' }), (query) => void find(query)));
  });
});
