import { describe, expect, it } from 'vitest';
import { pageDates } from '../../../src/compute/discovery/dates.ts';
import type { PageModel } from '../../../src/compute/results.ts';

/** The part of a page's model that its date hangs on. */
const page = (path: string, model: object) => [path, model as PageModel] as const;
const link = (path: string) => ({ title: '', path });

const CORRECTED = page('notes/larch/', {
  kind: 'note',
  date: '2026-03-20',
  corrections: [{ since: '2026-05-02' }, { since: '2026-04-01' }],
});
const SCRIPT = page('scripts/larch/', { kind: 'script', date: '2026-03-25', corrections: [] });
const run = (path: string, date: string, ...notes: string[]) => page(path, { kind: 'run', date, notes: notes.map(link) });

describe('compute/discovery/dates', () => {
  it('gives a note the day of its newest correction, and its ledger and prompter that of their own page', () => {
    const dates = pageDates([
      CORRECTED,
      SCRIPT,
      page('notes/larch/ledger/', { kind: 'ledger', of: link('notes/larch/') }),
      page('scripts/larch/prompter/', { kind: 'prompter', script: link('scripts/larch/') }),
    ]);
    expect(Object.fromEntries(dates)).toEqual({
      'notes/larch/': '2026-05-02',
      'scripts/larch/': '2026-03-25',
      'notes/larch/ledger/': '2026-05-02',
      'scripts/larch/prompter/': '2026-03-25',
    });
  });

  it('gives a run, device or comparison the newest of its own days and of the notes that use it', () => {
    const runs = [{ date: '2026-03-10' }, { date: '2026-06-01' }];
    const dates = pageDates([
      CORRECTED,
      run('runs/used/', '2026-03-10', 'notes/larch/'),
      run('runs/later/', '2026-06-01', 'notes/larch/'),
      page('devices/larch-2/', { kind: 'device', specimens: [{ runs }], notes: [link('notes/larch/')] }),
      page('comparisons/steps/', { kind: 'comparison', runs: runs.slice(0, 1), notes: [link('notes/larch/')] }),
      page('record-copies/steps-0123/', { kind: 'record-copy', date: '2026-04-02' }),
    ]);
    expect(dates.get('runs/used/')).toBe('2026-05-02');
    expect(dates.get('runs/later/')).toBe('2026-06-01');
    expect(dates.get('devices/larch-2/')).toBe('2026-06-01');
    expect(dates.get('comparisons/steps/')).toBe('2026-05-02');
    expect(dates.get('record-copies/steps-0123/')).toBe('2026-04-02');
  });

  it('gives lists the day of what is newest in them, and what hangs on no date none', () => {
    const lists = ['home', 'runs', 'compare'].map((kind) => page(kind, { kind }));
    const dates = pageDates([
      CORRECTED,
      SCRIPT,
      ...lists,
      page('method/', { kind: 'method' }),
      page('search/', { kind: 'search' }),
    ]);
    for (const [path] of lists) expect(dates.get(path), path).toBe('2026-05-02');
    expect([dates.has('method/'), dates.has('search/')]).toEqual([false, false]);
    expect(pageDates(lists).size).toBe(0);
  });
});
