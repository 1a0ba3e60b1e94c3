import { describe, expect, it } from 'vitest';
import type { ComputedNote, SiteContents } from '../../../src/compute/contents/site-contents.ts';
import {
  correctedNumbers,
  correctionsOf,
  correctionsText,
  feedModel,
  markCorrected,
} from '../../../src/compute/pages/corrections.ts';
import type { Correction } from '../../../src/register/sealed/published-states.ts';
import type { LedgerEntry } from '../../../src/words/written.ts';
import { note } from '../published-state/states.ts';

const correction = (number: string, was: string, is: string, more: Partial<Correction> = {}): Correction => ({
  since: '2026-05-02',
  number,
  was,
  is,
  reason: 'The probe was read twice.',
  sentence: `It was ${was}.`,
  ...more,
});
const OPEN = [
  correction('fast.peak_temperature', '71.3 °C', '72.1 °C'),
  correction('fast.load_power', '5.2 W', '5.4 W'),
  correction('fast.load_power', '5.0 W', '5.2 W', { since: '2026-04-11', closed: '2026-04-12' }),
];
const entry = (expression: string, shown: string, kind = 'value') => ({ expression, shown, kind }) as LedgerEntry;
const computed = (entries: readonly LedgerEntry[], more = {}) =>
  ({
    note: note(more),
    written: { pieces: [], plots: [], entries, problems: [] },
    plots: [],
    pictures: [],
    reaches: [],
  }) as ComputedNote;
/** Knows none of the runs: readers then see the aliases. */
const REGISTER = { runs: new Map(), comparisons: new Map(), attempts: new Map() };
const partsWith = (corrections: typeof OPEN, notes: readonly ComputedNote[]) =>
  ({ notes, corrections: new Map([['notes/larch', corrections]]), register: REGISTER }) as unknown as SiteContents;
const parts = (...notes: ComputedNote[]) => partsWith(OPEN, notes);
/** Of these corrections, in the order of the page. */
const idsOf = (corrections: typeof OPEN) =>
  correctionsOf(partsWith(corrections, []), computed([])).corrections.flatMap(({ numbers }) => numbers.map(({ id }) => id));

describe('compute/pages/corrections', () => {
  it('puts those of one day and reason together, each under its figure in words', () => {
    const one = computed([]);
    const { corrections, correctionsFile } = correctionsOf(parts(one), one);
    expect(correctionsFile).toBe('notes/larch/corrections.txt');
    expect(corrections.map(({ since, closed, numbers }) => [since, closed, numbers.map(({ label }) => label)])).toEqual([
      ['2026-05-02', undefined, ['peak temperature of fast', 'load power of fast']],
      ['2026-04-11', '2026-04-12', ['load power of fast']],
    ]);
    expect(idsOf(OPEN)).toEqual([
      expect.stringMatching(/^corrected:2026-05-02-fast\.peak_temperature-[a-z0-9]{5}$/),
      expect.stringMatching(/^corrected:2026-05-02-fast\.load_power-[a-z0-9]{5}$/),
      expect.stringMatching(/^corrected:2026-04-11-fast\.load_power-[a-z0-9]{5}$/),
    ]);
    // A newer one stands first and moves none of the others.
    expect(idsOf([correction('fast.energy', '19 kJ', '20 kJ', { since: '2026-06-01' }), ...OPEN]).slice(1)).toEqual(idsOf(OPEN));
    expect(feedModel(parts(one))?.entries.map(({ path }) => path)).toEqual(idsOf(OPEN).map((id) => `notes/larch/#${id}`));
    expect(correctionsText(parts(one), one)[0]?.[1]).toContain('2026-05-02: load power of fast, 5.2 W is now 5.4 W.');
  });

  it('marks the corrected numbers of the text alone: not highlights, not what stands as it was published, not what is closed', () => {
    const one = computed([
      entry('fast.peak_temperature', '72.1\u00a0°C'),
      entry('fast.mean_clock', '2.5\u00a0GHz'),
      entry('fast.load_power', '5.4\u00a0W'),
      entry('fast.load_power', '5.0\u00a0W'),
      entry('fast.peak_temperature', '72.1\u00a0°C', 'highlight'),
    ]);
    const corrected = correctedNumbers(parts(one), one);
    expect([...corrected]).toEqual([
      [1, idsOf(OPEN)[0]],
      [3, idsOf(OPEN)[1]],
    ]);
    const anchor = (number: number) =>
      `<a class="held" id="a.b-0000${number}" href="#held:a.b-0000${number}" data-n="${number}">x</a>`;
    expect(markCorrected(`<p>${anchor(1)} ${anchor(2)}</p>`, corrected)).toBe(
      `<p>${anchor(1)}<a class="corrected" href="#${idsOf(OPEN)[0]}" aria-label="corrected since">†</a> ${anchor(2)}</p>`,
    );
  });

  it('has no file and no entry where nothing was corrected; no held-back note is in the feed', () => {
    const other = computed([], { id: 'other' });
    expect(correctionsOf(parts(other), other)).toEqual({ corrections: [], correctionsFile: '' });
    const held = computed([], { status: 'held back' });
    expect(feedModel(parts(held))).toBeNull();
    expect(feedModel(parts(held, other))).toEqual({ entries: [], updated: '2026-03-20' });
    expect(feedModel(parts(computed([])))?.entries).toHaveLength(3);
  });
});
