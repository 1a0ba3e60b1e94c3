import { Cite } from '@citation-js/core';
import '@citation-js/plugin-bibtex';
import { describe, expect, it } from 'vitest';
import { bibtex } from '../../../src/compute/cite/bibtex.ts';
import { cslJson } from '../../../src/compute/cite/csl.ts';
import { plainCitation } from '../../../src/compute/cite/plain.ts';
import { nameOf, type Reference, versionOf } from '../../../src/compute/cite/reference.ts';

const REFERENCE: Reference = {
  key: 'note-a-clock-2026',
  authors: ['Rowan Alder (invented)', 'Birch, Ö. P.'],
  title: 'Paying for a clock',
  publisher: 'Bench notes',
  date: '2026-03-21',
  url: 'https://bench.example/notes/a-clock/',
  version: versionOf('2026-05-02', '0123456789abcdef', 'ledger'),
};

/** Every character that TeX takes for itself. */
const HARD = '50 % of {a} & b_c #1 ~ ^ $ \\ x?';

interface Item {
  readonly [key: string]: unknown;
  readonly author?: readonly object[];
}

/** What a reader of BibTeX that we did not write makes of it (citation-js 0.9.0). */
function read(text: string): Item {
  return (new Cite(text).data as Item[])[0]!;
}

describe('compute/cite', () => {
  it('is one line of text', () => {
    expect(plainCitation(REFERENCE)).toBe(
      'Rowan Alder (invented) and Ö. P. Birch (2026): Paying for a clock. Bench notes, 2026-03-21. https://bench.example/notes/a-clock/ (corrected 2026-05-02; ledger SHA-256 0123456789ab).',
    );
  });

  it('begins with the publication where no author is named, and names it once', () => {
    expect(plainCitation({ ...REFERENCE, authors: [], title: 'How hot?', version: 'v' })).toBe(
      'Bench notes (2026): How hot? 2026-03-21. https://bench.example/notes/a-clock/ (v).',
    );
  });

  it('begins with the title where nobody is named at all', () => {
    expect(plainCitation({ ...REFERENCE, authors: [], publisher: '', version: 'v' })).toBe(
      'Paying for a clock. (2026) 2026-03-21. https://bench.example/notes/a-clock/ (v).',
    );
  });

  it('is BibTeX that another reader takes as it was meant', () => {
    const { title, author, issued, URL, note, id, publisher } = read(bibtex(REFERENCE));
    expect({ title, issued, URL, note, id, publisher }).toEqual({
      id: REFERENCE.key,
      title: REFERENCE.title,
      issued: { 'date-parts': [[2026, 3, 21]] },
      URL: REFERENCE.url,
      note: REFERENCE.version,
      publisher: 'Bench notes',
    });
    // The reader has no names in one piece: it takes them for family names.
    expect(author).toEqual([{ family: 'Rowan Alder (invented)' }, { family: 'Birch', given: 'Ö. P.' }]);
  });

  it('keeps every character that TeX takes for itself', () => {
    const { title, author } = read(bibtex({ ...REFERENCE, title: HARD, authors: [`A ${HARD}`, 'Alder and Sons', 'Birch, C_d'] }));
    expect(title).toBe(HARD);
    expect(author).toEqual([{ family: `A ${HARD}` }, { family: 'Alder and Sons' }, { family: 'Birch', given: 'C_d' }]);
  });

  it('has every brace closed, as BibTeX counts them: those behind a backslash too', () => {
    const text = bibtex({ ...REFERENCE, title: 'A lone { or } }', publisher: '}', authors: ['{ and {', 'Al}der, R{'] });
    let depth = 0;
    for (const sign of text.replace(/^@misc\{/, '').replace(/\}\n$/, '')) {
      depth += sign === '{' ? 1 : sign === '}' ? -1 : 0;
      expect(depth).toBeGreaterThanOrEqual(0);
    }
    expect(depth).toBe(0);
    expect(read(text)).toMatchObject({ title: 'A lone { or } }', publisher: '}' });
  });

  it.each(['Alder, Rowan, Jr', 'Alder and Sons, Larch Works', 'Alder,', ', Rowan'])('does not guess how %s divides', (author) => {
    expect(nameOf(author)).toEqual({ literal: author });
  });

  it('is CSL-JSON in which names that their author did not set apart stay whole', () => {
    expect(cslJson(REFERENCE)).toEqual([
      {
        id: REFERENCE.key,
        type: 'report',
        title: REFERENCE.title,
        author: [{ literal: 'Rowan Alder (invented)' }, { family: 'Birch', given: 'Ö. P.' }],
        publisher: 'Bench notes',
        issued: { 'date-parts': [[2026, 3, 21]] },
        URL: REFERENCE.url,
        version: REFERENCE.version,
      },
    ]);
  });

  it('is CSL-JSON of which another reader changes nothing', () => {
    // citation-js holds input against the fields and types of the CSL-JSON schema, and leaves out what does not fit.
    const [item] = new Cite(cslJson(REFERENCE)).data as Item[];
    const { _graph, ...kept } = item!;
    expect(kept).toEqual(cslJson(REFERENCE)[0]);
  });
});
