/** Invented published states and notes, for the tests of corrections. */

import type { Note } from '../../../src/register/register.ts';
import type { PublishedEntry, PublishedState } from '../../../src/register/sealed/published-states.ts';

/** A number in a sentence: `It reached ■.` */
export function entry(expression: string, shown: string, more: Partial<PublishedEntry> = {}): PublishedEntry {
  const [, digits = '0', unit = ''] = /^([\d.]+) ?(.*)$/.exec(shown) ?? [];
  const pattern = more.pattern ?? 'It reached ■.';
  return {
    line: 20,
    column: 12,
    kind: 'value',
    text: expression,
    expression,
    value: Number(digits),
    unit,
    u: 0.1,
    shown,
    verdict: 'printed',
    sentence: pattern.replace('■', shown),
    pattern,
    held: ['runs/larch-fast'],
    ...more,
  };
}

export function state(entries: readonly PublishedEntry[], more: Partial<PublishedState> = {}): PublishedState {
  return {
    format: 1,
    of: 'notes/larch',
    title: 'A faster Larch',
    date: '2026-03-20',
    entries,
    plots: [],
    addresses: ['notes/larch/', 'notes/larch/ledger.json'],
    sources: [
      { name: 'data/fast.csv', sha256: 'a' },
      { name: 'the methods', sha256: 'm' },
    ],
    history: [],
    ...more,
  };
}

export function note(more: Partial<Note> = {}): Note {
  return {
    id: 'larch',
    file: 'content/notes/larch.md',
    title: 'A faster Larch',
    body: '',
    bodyLine: 1,
    placeOf: () => ({ file: 'content/notes/larch.md', line: 4, column: 1 }),
    text: '',
    kind: 'note',
    date: '2026-03-20',
    status: 'published',
    runs: new Map([['fast', 'larch-fast']]),
    comparisons: new Map(),
    highlights: [],
    ...more,
  };
}

/** A correction of the front matter. */
export function reason(number: string, now: string, since: string, why = 'The probe was read twice.') {
  return { number, now, since, reason: why, place: { file: 'content/notes/larch.md', line: 9, column: 5 } };
}
