import { describe, expect, test } from 'vitest';
import { derive } from '../../../src/figures/derive.ts';
import type { AbsentFigure, Figure } from '../../../src/figures/figure.ts';
import { readScores } from '../../../src/figures/scores/read-scores.ts';
import { divide, subtract } from '../../../src/quantities/arithmetic.ts';
import type { Quantity } from '../../../src/quantities/quantity.ts';
import { degreesOfFreedom, interval95, standardUncertainty } from '../../../src/quantities/uncertainty.ts';
import { expectNear } from '../../statistics/near.ts';
import { autoMileage } from '../../statistics/nist.ts';
import { type ChannelSketch, contextOf, every, instrumentOf, logOf, presentAt } from '../build.ts';

interface Given {
  readonly run?: string;
  readonly start?: number | null;
  readonly seconds?: ArrayLike<number>;
  readonly channels?: Readonly<Record<string, ChannelSketch>>;
  readonly gaps?: readonly { readonly row: number; readonly length: number }[];
}

function figuresOf(table: string, given: Given = {}): ReadonlyMap<string, Figure> {
  const { scores, problems } = readScores(new TextEncoder().encode(table), 'data/scores.csv');
  expect(problems).toEqual([]);
  const log = logOf(given.seconds ?? every(1, 100), given.channels ?? {});
  const time = { ...log.time, start: given.start ?? null, gaps: given.gaps ?? [] };
  const meter = instrumentOf('meter', 'power', { ofReading: 0.01 * Math.sqrt(3) });
  return derive({ ...log, time }, contextOf({ run: given.run ?? 'soak', instruments: { meter } }), { scores }).figures;
}

function table(values: readonly (number | string)[], unit = 'points', better = 'higher'): string {
  return `test,value,unit,better\n${values.map((value) => `mix,${value},${unit},${better}`).join('\n')}\n`;
}

const absentAt = (figures: ReadonlyMap<string, Figure>, address: string) => figures.get(address) as AbsentFigure;
const power = (watts: (t: number) => number): ChannelSketch => ({
  quantity: 'power',
  values: watts,
  instrument: 'meter',
  at: 'board input',
});

describe('score', () => {
  // JCGM 100:2008, 4.4.3 and Table 1 (from memory; mean 100.145, s 1.489, u 0.333 as printed there).
  const GUM = [
    96.9, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95, 101.11, 101.2, 101.57,
    101.84, 102.36, 102.72,
  ];

  test('mean, spread and uncertainty of the mean are those of the GUM', () => {
    const score = presentAt(figuresOf(table(GUM)), 'score.mix');
    expectNear(score.quantity.value, 100.145, 1e-12);
    expect(Number(score.of?.spread).toFixed(3)).toBe('1.489');
    expect(standardUncertainty(score.quantity)?.toFixed(3)).toBe('0.333');
    expect(degreesOfFreedom(score.quantity)).toBeCloseTo(19, 9);
    expect(score).toMatchObject({
      from: { file: 'data/scores.csv', columns: ['test', 'value'], rows: [2, 21] },
      of: { test: 'mix', title: 'mix', better: 'higher', n: 20 },
    });
  });

  // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.3 (AUTO83B): Welch's interval −11.915248 to −8.757621 with 136.874977
  // degrees of freedom (further digits of the package @stdlib/stats-ttest2).
  test('the difference of two runs is Welch’s', () => {
    // By size: in the handbook's order neighbours are alike, and then the scatter says more than Welch's.
    const { us, japan } = autoMileage();
    const bySize = (values: readonly number[]) => values.toSorted((a, b) => a - b);
    const [a, b] = [
      presentAt(figuresOf(table(bySize(us)), { run: 'a' }), 'score.mix'),
      presentAt(figuresOf(table(bySize(japan)), { run: 'b' }), 'score.mix'),
    ];
    const difference = subtract(a.quantity, b.quantity) as Quantity;
    expectNear(degreesOfFreedom(difference)!, 136.874976672583, 1e-11);
    const [low, high] = interval95(difference)!;
    expectNear(low, -11.915248094638, 1e-11);
    expectNear(high, -8.757620595312, 1e-11);
  });

  // Each repeat goes with the one before: 1, 1, 1, 1, −1, −1 … is worth a few repeats, not sixteen.
  test('repeats that go together are worth fewer; alternating and sorted ones are taken as they are', () => {
    const blocks = [1, 1, 1, 1, -1, -1, -1, -1, 1, 1, 1, 1, -1, -1, -1, -1].map((sign) => 100 + sign);
    const uOf = (values: readonly number[]) =>
      standardUncertainty(presentAt(figuresOf(table(values.map((value) => value.toFixed(2)))), 'score.mix').quantity)!;
    const plain = Math.sqrt(16 / 15) / 4;
    expectNear(uOf(blocks.toSorted((a, b) => a - b)), plain, 1e-9);
    expectNear(uOf(blocks.map((_, k) => 100 + (k % 2 === 0 ? 1 : -1))), plain, 1e-9);
    expect(uOf(blocks)).toBeGreaterThan(1.8 * plain);
    expect(presentAt(figuresOf(table(blocks)), 'score.mix').of?.repeats_worth).toBeLessThan(5);
  });

  test('of one repeat the uncertainty is unknown', () => {
    const { quantity, of } = presentAt(figuresOf(table([54.1])), 'score.mix');
    expect(quantity).toEqual({ value: 54.1, unit: 'points', parts: null, step: 0.1 });
    expect(of).not.toHaveProperty('spread');
  });

  // A rectangle of one step's width: JCGM 100:2008, F.2.2.1.
  test('equal repeats are still uncertain by their step over √12', () => {
    const { quantity } = presentAt(figuresOf(table(['54.10', '54.10', '54.10'])), 'score.mix');
    expectNear(standardUncertainty(quantity)!, 0.01 / Math.sqrt(12), 1e-12);
    expect(degreesOfFreedom(quantity)).toBeNull();
  });

  test('repeats without a result are counted; without any result it is absent', () => {
    expect(presentAt(figuresOf(table([5, 'NA', 7])), 'score.mix').of).toMatchObject({ n: 2, without_result: 1 });
    expect(absentAt(figuresOf(table(['NA', 'NA'])), 'score.mix')).toEqual({
      name: 'score',
      absent: 'no-readings',
      why: 'No repeat of mix gave a result.',
      of: { test: 'mix', title: 'mix', better: 'higher' },
    });
  });

  test('a run without scores has no such figures', () => {
    const { figures } = derive(logOf(every(1, 10), {}), contextOf());
    expect([...figures.keys()].filter((key) => /score|task/.test(key))).toEqual([]);
  });
});

describe('energy per task, power and clock in a score’s own time', () => {
  const windows = (...pairs: readonly (readonly [string, string])[]) =>
    `test,value,unit,better,start,end\n${pairs.map(([start, end], k) => `mix,${k + 1},points,higher,${start},${end}`).join('\n')}\n`;

  test('a constant power takes power times time; the clock is that of the window alone', () => {
    const figures = figuresOf(windows(['10 s', '30 s'], ['40 s', '60 s']), {
      channels: {
        board: power(() => 8),
        cpu: { quantity: 'clock', values: (t) => ((t >= 10 && t <= 30) || (t >= 40 && t <= 60) ? 2e9 : 1e9) },
      },
    });
    const energy = presentAt(figures, 'energy_per_task.mix');
    expectNear(energy.quantity.value, 160, 1e-12);
    expect(energy).toMatchObject({ of: { test: 'mix', n: 2, spread: 0, at: 'board input' }, from: { rows: [12, 62] } });
    expectNear(presentAt(figures, 'score_power.mix').quantity.value, 8, 1e-12);
    expectNear(presentAt(figures, 'score_clock.mix').quantity.value, 2e9, 1e-12);
  });

  // Burden and Faires, composite trapezoidal rule (from memory): 1·3 + 1·4 + 2·5 + 3·4.5 = 30.5.
  test('uneven steps: 30.5 J', () => {
    const figures = figuresOf(windows(['0 s', '7 s']), {
      seconds: [0, 1, 2, 4, 7],
      channels: { board: { ...power(() => 0), values: [2, 4, 4, 6, 3] } },
    });
    expectNear(presentAt(figures, 'energy_per_task.mix').quantity.value, 30.5, 1e-12);
  });

  test('instants are found where the log tells its own', () => {
    const at = windows(['2026-03-11T15:00:10Z', '2026-03-11T15:00:30Z']);
    const channels = { board: power((t) => (t < 10 ? 100 : 5)) };
    expectNear(presentAt(figuresOf(at, { start: 1773241200, channels }), 'energy_per_task.mix').quantity.value, 100, 1e-12);
    expect(absentAt(figuresOf(at, { channels }), 'energy_per_task.mix')).toMatchObject({
      absent: 'no-condition',
      why: 'The log tells no date and zone, so that the times of the scores cannot be found in it.',
    });
  });

  const pulsed = (lag: number) => (t: number) => {
    const place = (((t - lag) % 40) + 40) % 40;
    return place >= 10 && place <= 35 ? 8 : 2;
  };
  const five = windows(...[0, 40, 80, 120, 160].map((at) => [`${at + 10} s`, `${at + 35} s`] as const));

  test.each([4, -4])('power that is %s s behind the stated times leaves that much open, however many repeats there are', (lag) => {
    const given = { seconds: every(1, 220), channels: { board: power(pulsed(lag)) } };
    const { quantity, of } = presentAt(figuresOf(five, given), 'energy_per_task.mix');
    expect(of?.lag).toMatch(
      lag > 0 ? /^[34](\.\d)? s behind the stated starts and ends$/ : /^[34](\.\d)? s ahead of the stated starts and ends$/,
    );
    const [low, high] = interval95(quantity)!;
    expect(low).toBeLessThan(200);
    expect(high).toBeGreaterThan(200);
    expect(high - low).toBeLessThan(90);
    const alone = figuresOf(windows(['50 s', '75 s']), given);
    expect(presentAt(alone, 'energy_per_task.mix').of).toHaveProperty('lag');
  });

  test('power that keeps to the stated times, or that no pause interrupts, has no lag', () => {
    for (const [watts, step] of [
      [pulsed(0), 1],
      [pulsed(0), 5],
      [() => 8, 1],
    ] as const) {
      const figures = figuresOf(five, { seconds: every(step, Math.floor(220 / step)), channels: { board: power(watts) } });
      const { quantity, of } = presentAt(figures, 'energy_per_task.mix');
      expectNear(quantity.value, 200, 1e-9);
      expect(of).not.toHaveProperty('lag');
    }
  });

  test('power so far behind that it is nobody’s: no energy', () => {
    const given = { seconds: every(1, 220), channels: { board: power(pulsed(9)) } };
    expect(absentAt(figuresOf(five, given), 'energy_per_task.mix')).toMatchObject({
      absent: 'too-short',
      why: expect.stringMatching(/ (8|9)(\.\d)? s behind/),
    });
  });

  test('the meter’s gain is shared, and cancels in a ratio; the scatter of the repeats does not', () => {
    const values = [8, 8.2, 8.4];
    const figures = figuresOf(windows(['0 s', '10 s'], ['20 s', '30 s'], ['40 s', '50 s']), {
      channels: { board: power((t) => values[Math.floor(t / 20)]!) },
    });
    const energy = presentAt(figures, 'energy_per_task.mix').quantity;
    const shares = new Map(energy.parts!.map(({ source, share }) => [source.id, share]));
    expectNear(shares.get('instrument:meter/power/gain')!, 0.82, 1e-9);
    expectNear(shares.get('run:soak/energy_per_task.mix/sampling')!, 2 / Math.sqrt(3), 1e-9);
    const ratio = divide(energy, presentAt(figures, 'score_power.mix').quantity) as Quantity;
    expect(ratio.parts!.every(({ source, share }) => !source.id.endsWith('gain') || Math.abs(share) < 1e-12)).toBe(true);
  });

  test('a running counter is preferred to the integral', () => {
    const figures = figuresOf(windows(['10 s', '20 s']), {
      channels: { board: power(() => 8), meter: { quantity: 'energy', values: (t) => 9 * t, at: 'board input' } },
    });
    const energy = presentAt(figures, 'energy_per_task.mix');
    expectNear(energy.quantity.value, 90, 1e-12);
    expect(energy.of).toMatchObject({ method: 'running counter, last less first' });
  });

  test.each([
    ['no times', table([1, 2]), {}, 'no-readings', 'The table of scores does not say when repeat 1 started and ended.'],
    [
      'outside the log',
      windows(['90 s', '120 s']),
      {},
      'out-of-range',
      'The log does not cover the time that the repeats took: they were done before or after it.',
    ],
    [
      'a gap',
      windows(['10 s', '30 s']),
      { gaps: [{ row: 20, length: 6 }] },
      'no-readings',
      'The log has a gap in the time that the repeats took.',
    ],
    [
      'no offset',
      windows(['2026-03-11 15:00:10', '2026-03-11 15:00:30']),
      {},
      'no-condition',
      'The times of the scores state no offset from UTC, and the log declares no zone.',
    ],
  ] as const)('absent: %s', (_, scores, given, code, why) => {
    const figures = figuresOf(scores, { channels: { board: power(() => 8) }, ...given });
    expect(absentAt(figures, 'energy_per_task.mix')).toMatchObject({ absent: code, why, of: { test: 'mix' } });
    expect(figures.has('score_clock.mix')).toBe(false);
  });

  test('absent without power or clock, whatever the windows', () => {
    const figures = figuresOf(windows(['10 s', '30 s']));
    expect(absentAt(figures, 'energy_per_task.mix')).toMatchObject({ absent: 'no-channel' });
    expect(absentAt(figures, 'score_power.mix')).toMatchObject({ absent: 'no-channel' });
    expect(absentAt(figures, 'score_clock.mix')).toMatchObject({ absent: 'no-channel', why: 'The log has no clock channel.' });
  });

  test('a repeat outside the log is left out, and the number says so', () => {
    const figures = figuresOf(windows(['10 s', '30 s'], ['90 s', '120 s']), { channels: { board: power(() => 8) } });
    expect(presentAt(figures, 'energy_per_task.mix').of).toMatchObject({ n: 1 });
  });
});
