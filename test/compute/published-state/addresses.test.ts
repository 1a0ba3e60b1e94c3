import { describe, expect, it } from 'vitest';
import { keepAddresses } from '../../../src/compute/published-state/addresses.ts';
import type { Note } from '../../../src/register/register.ts';
import { note, state } from './states.ts';

const PLOT = ['notes/larch/plots/trace.svg', 'notes/larch/plots/trace.png', 'notes/larch/plots/trace.csv'];
const STATE = state([], { addresses: ['notes/larch/', 'notes/larch/ledger.json', ...PLOT] });

function kept(standing: Record<string, string[]>, ...notes: Note[]) {
  return keepAddresses([STATE], new Map(Object.entries(standing).map(([key, all]) => [key, new Set(all)])), notes);
}

const was = (...addresses: string[]) => addresses.map((address) => ({ address, place: { file: 'x', line: 1, column: 1 } }));

describe('compute/published-state/addresses', () => {
  it('finds nothing where all addresses stand', () => {
    expect(kept({ 'notes/larch': [...STATE.addresses] }, note())).toEqual({ redirects: [], problems: [] });
  });

  it('stops where a page would vanish, once for all below it', () => {
    const { problems } = kept({});
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({
      rule: 'vanished-address',
      severity: 'error',
      place: { file: 'content/published/notes-larch.json' },
      found: 'the published address notes/larch/ would vanish',
    });
    expect(problems[0]?.remedy).toContain('`was: notes/larch/`');
  });

  it('stops where a plot would vanish, once for its three files', () => {
    const { problems } = kept({ 'notes/larch': ['notes/larch/', 'notes/larch/ledger.json'] }, note());
    expect(problems.map(({ found }) => found)).toEqual(['the published plot notes/larch/plots/trace would vanish']);
  });

  it('stops where a record copy would vanish that was published with a note, whatever became of the note', () => {
    const copy = 'record-copies/larch-steps-0123456789ab/';
    const held = state([], { addresses: ['notes/larch/', copy] });
    const standing = (...copies: string[]) =>
      new Map([
        ['notes/larch', new Set(['notes/larch/'])],
        ['record-copies', new Set(copies)],
      ]);
    expect(keepAddresses([held], standing(copy), [note()]).problems).toEqual([]);
    expect(keepAddresses([held], standing(), [note()]).problems).toMatchObject([
      {
        rule: 'vanished-address',
        place: { file: 'content/published/notes-larch.json' },
        found: `the published record copy ${copy} would vanish`,
        expected: 'content/record-copies/larch-steps-0123456789ab.json',
      },
    ]);
  });

  it('leads from a former page to the new one, file by file where it has the same', () => {
    const moved = note({ id: 'new', was: was('notes/larch/') });
    const { redirects, problems } = kept({ 'notes/new': ['notes/new/', 'notes/new/plots/trace.svg'] }, moved);
    expect(problems).toEqual([]);
    expect(redirects).toEqual([
      { from: 'notes/larch/', to: 'notes/new/' },
      { from: 'notes/larch/ledger.json', to: 'notes/new/' },
      { from: 'notes/larch/plots/trace.svg', to: 'notes/new/plots/trace.svg' },
      { from: 'notes/larch/plots/trace.png', to: 'notes/new/' },
      { from: 'notes/larch/plots/trace.csv', to: 'notes/new/' },
    ]);
  });

  it('leads on from the pages below a former page that no state knows, as from itself', () => {
    const below = ['notes/new/', 'notes/new/ledger/', 'notes/new/ledger.json', 'runs/fast/'];
    const moved = note({ id: 'new', was: was('notes/old/', 'runs/old/') });
    const { redirects } = keepAddresses([], new Map([['notes/new', new Set(below)]]), [moved]);
    expect(redirects).toEqual([
      { from: 'notes/old/', to: 'notes/new/' },
      { from: 'notes/old/ledger/', to: 'notes/new/ledger/' },
      { from: 'runs/old/', to: 'notes/new/' },
    ]);
  });

  it('stops where a page stands at an earlier address: it would never lead on', () => {
    const place = { file: 'content/notes/new.md', line: 4, column: 5 };
    const claims = ['runs/fast/', 'notes/larch/', 'notes/gone/'].map((address) => ({ address, place }));
    const standing = { 'notes/larch': [...STATE.addresses, 'runs/fast/'], 'notes/new': ['notes/new/'] };
    const { redirects, problems } = kept(standing, note(), note({ id: 'new', was: claims }));
    expect(problems).toMatchObject([
      { rule: 'standing-address', place, found: '`was` names `runs/fast/`, at which a page of this site stands' },
      { rule: 'standing-address', place, found: '`was` names `notes/larch/`, at which a page of this site stands' },
    ]);
    expect(redirects).toEqual([{ from: 'notes/gone/', to: 'notes/new/' }]);
  });

  it('leads from a plot that is gone to the page', () => {
    const gone = note({ was: was('notes/larch/plots/trace') });
    const { redirects, problems } = kept({ 'notes/larch': ['notes/larch/', 'notes/larch/ledger.json'] }, gone);
    expect(problems).toEqual([]);
    expect(redirects).toEqual(PLOT.map((from) => ({ from, to: 'notes/larch/' })));
  });

  it('stops where a run that it showed would vanish, once for all states, until the run that it is now says so', () => {
    const states = [
      state([], { addresses: ['notes/larch/', 'runs/old/'] }),
      state([], { of: 'notes/b', addresses: ['notes/b/', 'runs/old/'] }),
    ];
    const standing = new Map([
      ['notes/larch', new Set(['notes/larch/', 'runs/new/'])],
      ['notes/b', new Set(['notes/b/', 'runs/new/'])],
    ]);
    const notes = [note(), note({ id: 'b' })];
    expect(keepAddresses(states, standing, notes).problems).toMatchObject([
      {
        rule: 'vanished-address',
        found: 'the published address runs/old/ would vanish',
        expected: 'a run of that id which a published note uses, or one that takes its place',
      },
    ]);
    expect(keepAddresses(states, standing, notes, new Set(['runs/old/']))).toEqual({ redirects: [], problems: [] });
    // Withdrawn for good: a note tells what became of it.
    const told = note({ was: was('runs/old/') });
    expect(keepAddresses(states, standing, [told, notes[1]!])).toEqual({
      redirects: [{ from: 'runs/old/', to: 'notes/larch/' }],
      problems: [],
    });
  });

  it('tells a note that is gone once, whatever runs went with it', () => {
    const gone = state([], { addresses: ['notes/larch/', 'runs/old/', 'devices/old/', 'comparisons/old/'] });
    expect(keepAddresses([gone], new Map(), []).problems.map(({ found }) => found)).toEqual([
      'the published address notes/larch/ would vanish',
    ]);
  });

  it('leads also from an address that no state holds', () => {
    const named = note({ was: was('notes/before-all/') });
    expect(kept({ 'notes/larch': [...STATE.addresses] }, named).redirects).toEqual([
      { from: 'notes/before-all/', to: 'notes/larch/' },
    ]);
  });
});
