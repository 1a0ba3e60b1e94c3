/** All runs are invented. */
import { describe, expect, test } from 'vitest';
import type { ComputedRun } from '../../../src/compute/contents/site-contents.ts';
import { timelinesOf } from '../../../src/compute/pages/timeline.ts';
import type { Figure } from '../../../src/figures/figure.ts';
import type { Condition } from '../../../src/register/register.ts';
import { figure, part } from '../../figures/comparison/runs.ts';

const GAIN = 'instrument:meter/power/gain';
const PLACE = { file: 'content/runs/invented.md', line: 1, column: 1 };

function condition(name: string, text: string): Condition {
  return { name, text, place: PLACE } as Condition;
}

interface Sketch {
  readonly date: string;
  readonly firmware?: string;
  readonly clock?: string;
  readonly ambient?: string;
  readonly fan?: string;
  readonly rise?: number | null;
  readonly watts?: number;
  readonly at?: string;
}

/** Scatter of 0.1 K, 5 MHz and 0.05 W in each run, and a gain error of 2 % that all of them share. */
function run(id: string, sketch: Sketch): ComputedRun {
  const { date, firmware, clock = '2.2 GHz', ambient = '22 °C', fan = 'none', rise = 30, watts = 10, at = 'board input' } = sketch;
  const scatter = (name: string, u: number) => part(`run:${id}/${name}/sampling`, u);
  const risen: Figure =
    rise === null
      ? { name: 'temperature_rise', absent: 'not-steady', why: 'It did not settle.' }
      : figure('temperature_rise', { value: rise, unit: 'K', parts: [scatter('temperature_rise', 0.1)] });
  const figures = new Map<string, Figure>([
    ['temperature_rise', risen],
    ['mean_clock', figure('mean_clock', { value: 2.2e9, unit: 'Hz', parts: [scatter('mean_clock', 5e6)] })],
    [
      'load_power',
      figure(
        'load_power',
        { value: watts, unit: 'W', parts: [part(GAIN, 0.02 * watts), scatter('load_power', 0.05)] },
        { channel: 'input', at },
      ),
    ],
  ]);
  const conditions = [
    condition('ambient', ambient),
    condition('fan', fan),
    ...(firmware === undefined ? [] : [condition('firmware', firmware)]),
  ];
  return {
    run: { id, title: `Run ${id}`, device: 'larch', specimen: 'no-1', date, setting: [condition('clock', clock)], conditions },
    derived: { figures, phases: [], inferences: [] },
  } as unknown as ComputedRun;
}

/** What a difference says: "2.00 K, told apart", "no difference: …", or null. */
function differences(runs: readonly ComputedRun[]): (string | null)[][] {
  return timelinesOf(runs)[0]!.rows.map(({ cells }) =>
    cells.map(({ difference }) => difference && (difference.absent ?? `${difference.shown} ${difference.detail}`)),
  );
}

describe('compute/pages/timeline', () => {
  test('runs of two firmware versions stand by date, each with date, firmware, link and figures with uncertainty', () => {
    const [timeline, ...more] = timelinesOf([
      run('late', { date: '2026-04-02', firmware: '1.9', ambient: '25 °C', rise: 32 }),
      run('early', { date: '2026-03-10', firmware: '1.8' }),
    ]);
    expect(more).toEqual([]);
    expect(timeline).toMatchObject({ setting: 'clock 2.2\u00a0GHz', conditions: [{ label: 'fan', text: 'none' }] });
    expect(timeline!.columns.map(({ label }) => label)).toEqual(['temperature rise', 'mean clock', 'load power']);
    expect(timeline!.rows.map(({ date, firmware, link }) => [date, firmware, link.path])).toEqual([
      ['2026-03-10', '1.8', 'runs/early/'],
      ['2026-04-02', '1.9', 'runs/late/'],
    ]);
    expect(timeline!.rows[1]!.cells.map(({ figure: { shown, uncertainty } }) => [shown, uncertainty])).toEqual([
      ['32.00\u00a0K', '±\u00a00.20\u00a0K (95\u00a0%)'],
      ['2.200\u00a0GHz', '±\u00a00.010\u00a0GHz (95\u00a0%)'],
      ['10.00\u00a0W', '±\u00a00.40\u00a0W (95\u00a0%)'],
    ]);
  });

  // u = √2 · 0.1 K: 95 % reach 1.96 u = 0.277 K, so that 0.27 K is within and 0.29 K beyond (JCGM 100:2008, G.1.3 and 5.1.2).
  test.each([
    [30.27, 'these two runs do not differ'],
    [30.29, 'these two runs differ'],
    [29.71, 'these two runs differ'],
  ])('a rise of %f K against 30 K is %s', (rise, verdict) => {
    const [first, second] = differences([
      run('a', { date: '2026-03-10', firmware: '1.8' }),
      run('b', { date: '2026-04-02', firmware: '1.9', rise }),
    ]);
    expect(first).toEqual([null, null, null]);
    expect(second![0]!.endsWith(` ${verdict}`)).toBe(true);
    expect(second![1]).toMatch(/ these two runs do not differ$/);
  });

  // Of 10 W and 10.3 W a gain error of 2 % leaves 2 % of 0.3 W in the difference, though each is known to 0.4 W.
  test('what the runs share cancels: one meter tells 0.3 W apart', () => {
    const [, second] = differences([run('a', { date: '2026-03-10' }), run('b', { date: '2026-04-02', watts: 10.3 })]);
    expect(second![2]).toMatch(/^300\u00a0mW board input, these two runs differ$/);
  });

  test('each later run is set against the first, also where the firmware did not change or is not stated', () => {
    const runs = [
      run('c', { date: '2026-05-01', rise: 31 }),
      run('a', { date: '2026-03-10', firmware: '1.8' }),
      run('b', { date: '2026-04-02', firmware: '1.8', rise: 32 }),
    ];
    expect(timelinesOf(runs)[0]!.rows.map(({ firmware }) => firmware)).toEqual(['1.8', '1.8', '']);
    expect(differences(runs).map(([rise]) => rise)).toEqual([
      null,
      '2.00\u00a0K these two runs differ',
      '1.00\u00a0K these two runs differ',
    ]);
  });

  test('an absent figure has no difference; powers of different places have none, with the reason', () => {
    const [, second] = differences([
      run('a', { date: '2026-03-10' }),
      run('b', { date: '2026-04-02', rise: null, at: 'adapter output' }),
    ]);
    expect(second![0]).toBeNull();
    expect(second![2]).toBe('Not subtracted: adapter output in Run b, board input in Run a.');
  });

  test('none where no two runs are alike: another setting, another condition', () => {
    const first = run('a', { date: '2026-03-10', firmware: '1.8' });
    expect(timelinesOf([first])).toEqual([]);
    expect(timelinesOf([first, run('b', { date: '2026-04-02', clock: '2.0 GHz' })])).toEqual([]);
    expect(timelinesOf([first, run('b', { date: '2026-04-02', fan: '40 mm' })])).toEqual([]);
  });

  test('a timeline for each setting that was run more than once', () => {
    const settings = ['2.0 GHz', '2.2 GHz', '2.4 GHz', '2.0 GHz', '2.2 GHz'];
    const runs = settings.map((clock, k) => run(`r${k}`, { date: `2026-03-1${k}`, clock }));
    expect(timelinesOf(runs).map(({ setting, rows }) => [setting, rows.length])).toEqual([
      ['clock 2.0\u00a0GHz', 2],
      ['clock 2.2\u00a0GHz', 2],
    ]);
  });
});
