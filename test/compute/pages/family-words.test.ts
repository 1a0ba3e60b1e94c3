import { describe, expect, test } from 'vitest';
import { familiesOf, familyModel } from '../../../src/compute/pages/family-words.ts';
import type { FamilyRow } from '../../../src/figures/checks/families.ts';

const row = (of: Partial<FamilyRow>): FamilyRow => ({
  cell: '',
  asked: 'energy.load',
  figure: 'energy',
  trials: 50,
  why: '',
  ...of,
});

describe('compute/pages/family-words', () => {
  const model = familyModel([
    'gaps',
    {
      title: 'Gaps',
      words: 'A log with a gap.',
      trials: 50,
      rows: [
        row({ cell: 'short', present: 50, held: 48, ratio: 1.1, pairs: 50, apart: 2 }),
        row({ cell: 'long', present: 40, held: 40, ratio: 2, why: 'It is wide.', bounds: 10, falseBounds: 1 }),
        row({ cell: 'hidden', present: 50, held: 5, why: 'No log can know.', beyond: true }),
        row({ cell: 'whole', absent: 50, caused: 50 }),
        row({ cell: 'short', asked: 'a gap is named', figure: null, said: 49, atLeast: 0.95 }),
      ],
    },
  ]);

  test('intervals of a figure, over all sets of parameters', () => {
    expect(model).toMatchObject({ id: 'family-gaps', title: 'Gaps', trials: 50 });
    expect(model.intervals).toEqual([
      {
        name: 'energy',
        label: 'energy',
        cells: 4,
        present: '93.3 %',
        held: '97.8 %',
        of: 90,
        least: '96.0 %',
        most: '100.0 %',
        ratio: '1.10 to 2.00',
        why: ['It is wide.', 'No log can know.'],
      },
    ]);
  });

  test('the rest in sentences', () => {
    expect(model.sayings).toEqual([
      'The energy holds least, 96.0 %, in this set: short.',
      'Where no log can know, the energy holds 10.0 % or more; least in this set: hidden.',
      'Bounds of the energy where it is absent: 1 of 10 were false.',
      'Identical runs told apart by the energy: 2 of 50 pairs (4.0 %).',
      'The energy must be absent: it was, for the cause that there is, in 50 of 50 runs.',
      '“a gap is named”: 49 of 50, and should be in at least 95 %.',
    ]);
  });

  test('a figure has the families that ask for it, by anchors of the accuracy page', () => {
    const [level] = familiesOf('idle_power');
    expect(level!.id).toBe('family-level');
    expect(level!.words).toMatch(
      /^\d+\.\d % of \d+ cases; \d+\.\d % to \d+\.\d % by set of parameters; \d+\.\d % where no log can know/,
    );
    expect(familiesOf('no_such_figure')).toEqual([]);
  });
});
