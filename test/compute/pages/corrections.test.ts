import { describe, expect, it } from 'vitest';
import {
  correctedNumbers,
  correctionsOf,
  correctionsText,
  feedModel,
  markCorrected,
} from '../../../src/compute/pages/corrections.ts';
import type { ComputedNote, Parts } from '../../../src/compute/pages/parts.ts';
import type { Correction } from '../../../src/register/published.ts';
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
  ({ note: note(more), written: { pieces: [], plots: [], entries, problems: [] }, plots: [], reaches: [] }) as ComputedNote;
const parts = (...notes: ComputedNote[]) => ({ notes, corrections: new Map([['notes/larch', OPEN]]) }) as unknown as Parts;

describe('compute/pages/corrections', () => {
  it('puts those of one day and reason together, each under its figure in words', () => {
    const one = computed([]);
    const { corrections, correctionsFile } = correctionsOf(parts(one), one);
    expect(correctionsFile).toBe('notes/larch/corrections.txt');
    expect(
      corrections.map(({ since, closed, numbers }) => [since, closed, numbers.map(({ id, label }) => `${id} ${label}`)]),
    ).toEqual([
      ['2026-05-02', undefined, ['c-1 peak temperature of fast', 'c-2 load power of fast']],
      ['2026-04-11', '2026-04-12', ['c-3 load power of fast']],
    ]);
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
      [1, 'c-1'],
      [3, 'c-2'],
    ]);
    const anchor = (number: number) => `<a class="held" id="n-${number}" href="#h-${number}" data-n="${number}">x</a>`;
    expect(markCorrected(`<p>${anchor(1)} ${anchor(2)}</p>`, corrected)).toBe(
      `<p>${anchor(1)}<a class="corrected" href="#c-1" aria-label="corrected since">†</a> ${anchor(2)}</p>`,
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
