import { describe, expect, it } from 'vitest';
import type { Gathered, GatheredRun } from '../../../src/compute/models/gathered.ts';
import { changedSince, type Living } from '../../../src/compute/record-copies/changed-since.ts';
import { recorded, recordedRun, temperature } from './recorded.ts';

const THEN: Gathered = recorded();
const RUNS = THEN.runs;

/** The site as it was, but for what differs. */
function living(more: Partial<Living> = {}): Living {
  return { comparison: THEN, runs: new Map(RUNS.map((run) => [run.run, run])), methods: THEN.methods, ...more };
}

/** The site where the fast run is another. */
function fastIs(more: Parameters<typeof recordedRun>[2], peak = 71.3): Living {
  const fast: GatheredRun = recordedRun('fast', peak, more);
  return living({ runs: new Map([...living().runs, [fast.run, fast]]), comparison: { ...THEN, runs: [RUNS[0]!, fast] } });
}

const NOTHING = { comparison: [], gone: [], files: [], stated: [], figures: [], methods: [] };

describe('compute/record-copies/changed-since', () => {
  it('says nothing where nothing changed', () => {
    expect(changedSince(THEN, living())).toEqual({ nothing: true, ...NOTHING });
  });

  it('names the runs that are gone, and the comparison needs none of them', () => {
    expect(changedSince(THEN, living({ comparison: null, runs: new Map([[RUNS[0]!.run, RUNS[0]!]]) }))).toEqual({
      nothing: false,
      ...NOTHING,
      gone: [{ alias: 'fast', title: 'The fast setting' }],
    });
  });

  it('says of a run that is called otherwise now how it is called, and nothing else', () => {
    const [first, fast] = RUNS as readonly [GatheredRun, GatheredRun];
    const runs = new Map([
      [first.run, first],
      [fast.run, { ...fast, run: 'larch-quicker' }],
    ]);
    expect(changedSince(THEN, living({ runs }))).toEqual({
      nothing: false,
      ...NOTHING,
      stated: [{ run: 'The fast setting', label: 'id', was: 'larch-fast', is: 'larch-quicker' }],
    });
  });

  it('a comparison that is gone is no change of what it was made from: the page says so beside it', () => {
    expect(changedSince(THEN, living({ comparison: null })).nothing).toBe(true);
  });

  it('tells a log and tables by their digests', () => {
    const log = { ...RUNS[1]!.log!, sha256: 'e'.repeat(64) };
    const tables = [{ file: 'data/larch-2/other.csv', sha256: 'f'.repeat(64) }];
    expect(changedSince(THEN, fastIs({ log, tables })).files).toEqual([
      { run: 'The fast setting', file: 'data/larch-2/fast-soak.csv', was: 'a'.repeat(64), is: 'e'.repeat(64) },
      { run: 'The fast setting', file: 'data/larch-2/fast-scores.csv', was: 'b'.repeat(64), is: '' },
      { run: 'The fast setting', file: 'data/larch-2/other.csv', was: '', is: 'f'.repeat(64) },
    ]);
    const moved = { ...RUNS[1]!.log!, file: 'data/elsewhere.csv' };
    expect(changedSince(THEN, fastIs({ log: moved })).nothing).toBe(true);
  });

  it('sets what is stated then and now side by side', () => {
    const changed = changedSince(
      THEN,
      fastIs({
        setting: [{ label: 'clock', text: '2.8 GHz' }],
        conditions: [{ label: 'cooling', text: 'a fan' }],
        instruments: [{ id: 'probe', title: 'Probe, recalibrated', accuracy: 'temperature ± 0.5 K' }],
      }),
    );
    expect(changed.stated.map(({ label, was, is }) => [label, was, is])).toEqual([
      ['clock', '2.6 GHz', '2.8 GHz'],
      ['ambient', '22.4 ± 0.5 °C', ''],
      ['Probe', 'temperature ± 1 K', 'temperature ± 0.5 K'],
      ['cooling', '', 'a fan'],
    ]);
  });

  it('a setting and a condition of one name stay apart', () => {
    const both = { setting: [{ label: 'mode', text: 'a' }], conditions: [{ label: 'mode', text: 'b' }] };
    const then = recorded({ runs: [RUNS[0]!, recordedRun('fast', 71.3, both)] as never });
    const now = fastIs({ ...both, conditions: [{ label: 'mode', text: 'c' }] });
    expect(changedSince(then, now).stated).toEqual([{ run: 'The fast setting', label: 'mode', was: 'b', is: 'c' }]);
  });

  it('prints figures that changed as pages print them, and by how many of their standard uncertainties', () => {
    expect(changedSince(THEN, fastIs({}, 72.5)).figures).toEqual([
      {
        of: 'The fast setting',
        finer: 0,
        rows: [
          {
            address: 'peak_temperature',
            label: 'peak temperature',
            detail: 'soc, load',
            was: '71.3\u00a0°C, ±\u00a01.0\u00a0K (95\u00a0%)',
            is: '72.5\u00a0°C, ±\u00a01.0\u00a0K (95\u00a0%)',
            by: 'by +1.20\u00a0K, 2.4 of its standard uncertainties',
          },
        ],
      },
    ]);
  });

  it('counts figures that changed by less than is printed', () => {
    expect(changedSince(THEN, fastIs({}, 71.3001)).figures).toEqual([{ of: 'The fast setting', rows: [], finer: 1 }]);
    expect(changedSince(THEN, fastIs({}, 71.3 + 1e-10)).nothing).toBe(true);
  });

  it('says of a figure that is absent on one side why, and of one that only one side has that the other has none', () => {
    const absent = { absent: 'no-channel', why: 'There is no temperature channel.' };
    const changed = changedSince(THEN, fastIs({ figures: { peak_temperature: absent, mean_clock: temperature(1) } }));
    expect(changed.figures[0]!.rows.map(({ address, was, is, by }) => [address, was.slice(0, 30), is.slice(0, 40), by])).toEqual([
      ['peak_temperature', '71.3\u00a0°C, ±\u00a01.0\u00a0K (95\u00a0%)', 'absent: There is no temperature channel.', ''],
      ['mean_clock', 'none', expect.stringContaining('1.0\u00a0°C'), ''],
      ['time_to_throttle', 'absent: It did not throttle.', 'none', ''],
    ]);
  });

  it('compares the figures of the comparison by run, whatever its aliases are now', () => {
    const figures = { 'rise_delta.quick': { ...temperature(8), unit: 'K' } };
    const comparison = { ...THEN, runs: [RUNS[0]!, { ...RUNS[1]!, alias: 'quick' }], figures };
    const { figures: changed } = changedSince(THEN, living({ comparison }));
    expect(changed.map(({ of, rows }) => [of, rows.map(({ address, by }) => [address, by])])).toEqual([
      ['the comparison', [['rise_delta.fast', 'by \u22121.75\u00a0K, 3.5 of its standard uncertainties']]],
    ]);
  });

  it('says in words what became of the comparison', () => {
    const third = { ...RUNS[1]!, alias: 'brisk', run: 'larch-brisk', title: 'The brisk setting' };
    const comparison = { ...THEN, title: 'Two others', reference: 'brisk', runs: [RUNS[0]!, third] };
    expect(changedSince(THEN, living({ comparison })).comparison).toEqual([
      'It is now titled “Two others”.',
      'Its reference run is now “The brisk setting”.',
      'It now has “The brisk setting” too.',
      'It no longer has “The fast setting”.',
    ]);
  });

  it('names the methods that are another version, or are no longer there', () => {
    expect(changedSince(THEN, living({ methods: { rise_delta: 'x' } })).methods).toEqual([
      { name: 'peak_temperature', label: 'peak temperature' },
      { name: 'rise_delta', label: expect.any(String) },
    ]);
  });
});
