import { describe, expect, it } from 'vitest';
import { headingsOf, testedLine } from '../../../src/compute/pages/note-head.ts';
import { exact } from '../../../src/quantities/uncertainty.ts';
import type { Condition, Run } from '../../../src/register/register.ts';

const run = (clock: string, specimen: string, ambient?: number): Run =>
  ({
    device: 'larch-2',
    specimen,
    setting: [{ name: 'clock', text: clock }],
    context: ambient === undefined ? {} : { ambient: exact(ambient, '°C') },
  }) as unknown as Run;
const shared: Condition[] = [
  { name: 'cooling', text: 'finned lid, no fan' },
  { name: 'workload', text: 'all cores' },
];

describe('compute/pages/note-head', () => {
  it('says in one line what was tested under which conditions', () => {
    const runs = [run('2.0 GHz', 'no-1', 22.8), run('2.4 GHz', 'no-1', 22.3), run('2.4 GHz', 'no-2')];
    expect(testedLine(runs, shared)).toBe(
      'Two settings, three runs, two specimens; room at 22.3\u00a0°C to 22.8\u00a0°C, finned lid, no fan',
    );
    expect(testedLine([run('2.0 GHz', 'no-1')], [])).toBe('One setting, one specimen');
  });

  it('lists headings where there are more than four, without what is marked up in them', () => {
    const heading = (n: number) => `<h2 id="h${n}">Part <em>${n}</em></h2>\n<p>Words.</p>`;
    expect(headingsOf([1, 2, 3, 4].map(heading))).toEqual([]);
    expect(headingsOf([1, 2, 3, 4, 5].map(heading))[4]).toEqual({ id: 'h5', text: 'Part 5' });
  });
});
