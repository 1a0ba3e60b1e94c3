/** A comparison whose settings have several runs: its page, its record copy; all is invented. */
import { describe, expect, test } from 'vitest';
import { comparisonModel } from '../../../src/compute/comparison/comparison-page.ts';
import type { Gathered } from '../../../src/compute/models/gathered.ts';
import { comparedSettings, firstRuns } from '../../../src/compute/models/gathered-figures.ts';
import { copyId } from '../../../src/compute/record-copies/copy.ts';
import { readCopyForm } from '../../../src/register/sealed/record-copies.ts';
import { comparison, run } from './gathered.ts';

const CONTEXT = { path: 'comparisons/x/', body: '', status: 'published', notes: [], copies: [], has: () => true } as const;

const AGAIN = run('rated 2', { run: 'rated-two', series: { ...run('rated').series, run: 'rated-two' } });

const SEVERAL: Gathered = {
  ...comparison(run('rated'), AGAIN, run('fast')),
  settings: { fast: ['fast'], rated: ['rated', 'rated 2'] },
};

describe('a setting of several runs', () => {
  test('settings stand in the order of their first runs, each with its runs', () => {
    const { reference, others } = comparedSettings(SEVERAL);
    expect(reference.runs.map(({ run: id }) => id)).toEqual([SEVERAL.runs[0]!.run, 'rated-two']);
    expect(others.map(({ alias, runs }) => [alias, runs.length])).toEqual([['fast', 1]]);
    expect(firstRuns(SEVERAL).map(({ alias }) => alias)).toEqual(['rated', 'fast']);
  });

  test('the page has a column a setting, and lists every run', () => {
    const model = comparisonModel(SEVERAL, { plots: [], undrawn: [] }, CONTEXT);
    expect(model.own.columns).toEqual(['rated', 'fast']);
    expect(model.own.caption).toContain('Each setting, as the mean of its runs');
    expect(model.runs.map(({ alias }) => alias)).toEqual(['rated', 'rated 2', 'fast']);
  });

  test('a record copy holds it, and refuses settings that are not made of its runs', () => {
    const copied = (record: unknown) => {
      const content = { format: 1, date: '2026-03-20', record } as const;
      return readCopyForm(JSON.stringify({ ...content, id: copyId(content as never), sha256: 'e'.repeat(64) }), 'x.json');
    };
    expect(copied(SEVERAL)).not.toHaveProperty('rule');
    expect(copied({ ...SEVERAL, settings: { rated: ['rated'], fast: ['fast'] } })).toMatchObject({ rule: 'record-copy' });
    expect(copied({ ...SEVERAL, settings: { rated: ['rated 2', 'rated'], fast: ['fast'] } })).toMatchObject({
      rule: 'record-copy',
    });
  });
});
