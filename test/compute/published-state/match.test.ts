import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { matchEntries, matchStates } from '../../../src/compute/published-state/match.ts';
import { entry } from './states.ts';

const inWords = ({ pairs, removed, added }: ReturnType<typeof matchEntries>) => ({
  pairs: pairs.map(({ was, is }) => `${was.shown} > ${is.shown}`),
  removed: removed.map(({ shown }) => shown),
  added: added.map(({ shown }) => shown),
});

describe('compute/published-state/match', () => {
  it('matches numbers of one expression by their sentence, whatever their order', () => {
    const was = [entry('a.b', '1 K', { pattern: 'First ■.' }), entry('a.b', '2 K', { pattern: 'Then ■.' })];
    const is = [entry('a.b', '3 K', { pattern: 'Then ■.' }), entry('a.b', '4 K', { pattern: 'First ■.' })];
    expect(inWords(matchEntries(was, is)).pairs).toEqual(['2 K > 3 K', '1 K > 4 K']);
  });

  it('takes a number of a table that became absent, or no longer is, for a change; one whose table is gone was removed', () => {
    const number = entry('a.b', '1 K', { kind: 'table', pattern: 'rise: ■', sentence: 'rise: 1 K' });
    const other = entry('c.d', '2 K', { kind: 'table' });
    const absent = [{ kind: 'table' as const, line: 7, column: 1, expression: 'a.b', why: 'The log is too short.' }];
    const gone = matchStates({ entries: [number, other] }, { entries: [], absent });
    expect(inWords(gone)).toEqual({ pairs: ['1 K > absent'], removed: ['2 K'], added: [] });
    expect(gone.pairs[0]?.is).toMatchObject({ line: 7, sentence: 'rise: absent', rests: 'The log is too short.' });
    expect(inWords(matchStates({ entries: [], absent }, { entries: [number] }))).toEqual({
      pairs: ['absent > 1 K'],
      removed: [],
      added: [],
    });
    expect(inWords(matchStates({ entries: [number, { ...number, shown: '3 K' }] }, { entries: [], absent }))).toEqual({
      pairs: ['1 K > absent'],
      removed: ['3 K'],
      added: [],
    });
  });

  it('matches by the words beside a number where its sentence was edited', () => {
    const was = [
      entry('a.b', '1 K', { pattern: 'Here it rose ■ in the end.' }),
      entry('a.b', '2 K', { pattern: 'There it fell ■ at once.' }),
    ];
    const is = [
      entry('a.b', '3 K', { pattern: 'On day two there it fell ■ at once, oddly.' }),
      entry('a.b', '4 K', { pattern: 'Here it rose ■ in the night.' }),
    ];
    expect(inWords(matchEntries(was, is)).pairs).toEqual(['2 K > 3 K', '1 K > 4 K']);
  });

  it('matches the rest in order, and tells what was added and removed', () => {
    const was = [entry('a.b', '1 K', { pattern: 'Old ■.' }), entry('a.c', '2 K')];
    const is = [entry('a.b', '3 K', { pattern: 'New ■.' }), entry('a.b', '4 K', { pattern: 'Newer ■.' }), entry('a.d', '5 K')];
    expect(inWords(matchEntries(was, is))).toEqual({ pairs: ['1 K > 3 K'], removed: ['2 K'], added: ['4 K', '5 K'] });
  });

  it('keeps kinds apart, and reads an expression without regard to its blanks', () => {
    const was = [entry('a.b - a.c', '1 K'), entry('a.b', '1 K', { kind: 'highlight', pattern: '' })];
    const is = [entry('a.b  - a.c', '2 K'), entry('a.b', '2 K')];
    expect(inWords(matchEntries(was, is))).toEqual({ pairs: ['1 K > 2 K'], removed: ['1 K'], added: ['2 K'] });
  });

  it('uses every number once, and a note matches itself', () => {
    const some = fc.record({ expression: fc.constantFrom('a.b', 'a.c'), pattern: fc.constantFrom('x ■ y', 'z ■', '■') });
    const entries = fc.array(some.map(({ expression, pattern }) => entry(expression, '1 K', { pattern })));
    fc.assert(
      fc.property(entries, entries, (was, is) => {
        const { pairs, removed, added } = matchEntries(was, is);
        expect(new Set([...pairs.map((pair) => pair.was), ...removed])).toEqual(new Set(was));
        expect(pairs.length + removed.length).toBe(was.length);
        expect(pairs.length + added.length).toBe(is.length);
        expect(matchEntries(was, was).pairs.every((pair) => pair.was === pair.is || pair.was.pattern === pair.is.pattern)).toBe(
          true,
        );
      }),
    );
  });
});
