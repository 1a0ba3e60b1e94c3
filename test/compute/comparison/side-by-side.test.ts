import { describe, expect, test } from 'vitest';
import { sideBySide } from '../../../src/compute/comparison/side-by-side.ts';
import { comparison, run } from './gathered.ts';

const { shared, apart } = sideBySide(
  comparison(
    run('rated', { log: { file: 'data/a.csv', sha256: '0123456789abcdef'.repeat(4), rows: 2, span_s: 1 } }),
    run('fast', { conditions: { firmware: '1.9', airflow: 'still air' }, ambient: [23, 0.5, 'stated'], date: '2026-03-12' }),
  ),
);
const row = (label: string) => apart.find((each) => each.label === label);

describe('compute/comparison/side-by-side', () => {
  test('what all runs share is said once', () => {
    expect(shared).toEqual([
      { label: 'date', text: '2026-03-12' },
      { label: 'device', text: 'Larch 2' },
      { label: 'specimen', text: 'no-1' },
      { label: 'cooling', text: 'no fan' },
      { label: 'system', text: 'image 4' },
      { label: 'workload', text: 'mix 3.1' },
      { label: 'instruments', text: 'Probe' },
    ]);
  });

  test('the rest has a cell a run, the setting first; what is not as in the reference is marked', () => {
    expect(apart.map(({ label }) => label)).toEqual([
      'clock',
      'firmware',
      'ambient, measured under load',
      'airflow',
      'log, SHA-256',
    ]);
    expect(row('clock')!.cells).toEqual([
      { text: '2.0 GHz', differs: false },
      { text: '2.6 GHz', differs: true },
    ]);
  });

  test('what one run does not state is said so, and differs', () => {
    expect(row('airflow')!.cells).toEqual([
      { text: 'not stated', differs: false },
      { text: 'still air', differs: true },
    ]);
    expect(row('ambient, measured under load')!.cells[1]).toEqual({ text: 'not stated', differs: true });
  });

  test('a log is told by the beginning of its digest; that each run has its own is no news', () => {
    expect(row('log, SHA-256')!.cells).toEqual([
      { text: '0123456789ab…', differs: false },
      { text: 'aaaaaaaaaaaa…', differs: false },
    ]);
  });

  test('places of measurement are listed', () => {
    const channels = [{ name: 'input', quantity: 'power', at: 'wall', instrument: '' }];
    const { shared: alike } = sideBySide(comparison(run('rated', { channels }), run('fast', { channels })));
    expect(alike).toContainEqual({ label: 'power measured at', text: 'wall' });
  });
});
