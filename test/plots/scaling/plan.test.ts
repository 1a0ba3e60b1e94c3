import { describe, expect, test } from 'vitest';
import { isPresent } from '../../../src/figures/figure.ts';
import { draw } from '../../../src/plots/draw.ts';
import { inkOf, plainColours } from '../../../src/plots/drawing/palette.ts';
import { NARROW, WIDE } from '../../../src/plots/drawing/size.ts';
import { planScaling } from '../../../src/plots/scaling/plan.ts';
import { interval95 } from '../../../src/quantities/uncertainty.ts';
import { figure } from '../../figures/comparison/runs.ts';
import { nist } from '../../statistics/nist.ts';
import { comparison, steps } from '../comparisons.ts';
import { drawable, partsOf } from '../plan-parts.ts';
import { request } from '../subjects.ts';

const FOUR = steps({ base: [1, 1], one: [1.2, 1.15], two: [1.4, 1.28], three: [1.6, 1.42] });

describe('plots/scaling/plan', () => {
  test.each([WIDE, NARROW])('$name: signs stand at clock ratio and speedup, the reference at 1 and 1', (size) => {
    const [panel] = partsOf(drawable(planScaling(FOUR)), size);
    const expected = [
      [1, 1],
      [1.2, 1.15],
      [1.4, 1.28],
      [1.6, 1.42],
    ].map(([clock, speed]) => ({ x: expect.closeTo(panel!.xOf(clock!), 6), y: expect.closeTo(panel!.yOf(speed!), 6) }));
    expect(panel!.signs).toMatchObject(expected);
    expect(new Set(panel!.signs.map(({ shape }) => shape)).size).toBe(4);
    expect(panel!.signs.map(({ stroke }) => stroke)).toEqual([0, 1, 2, 3].map(inkOf));
  });

  test('the broken line runs through 1 and 1 with the slope of linear scaling', () => {
    const [panel] = partsOf(drawable(planScaling(FOUR)), WIDE);
    const linear = panel!.rules.find(({ dash }) => String(dash) !== '1,0')!;
    const share = (panel!.xOf(1) - linear.x) / (linear.x2 - linear.x);
    expect(linear.y + share * (linear.y2 - linear.y)).toBeCloseTo(panel!.yOf(1), 6);
    const slope = (linear.y2 - linear.y) / (linear.x2 - linear.x);
    expect(slope).toBeCloseTo((panel!.yOf(2) - panel!.yOf(1)) / (panel!.xOf(2) - panel!.xOf(1)), 9);
  });

  test('whiskers end where the 95 % intervals of the figures do', () => {
    const [panel] = partsOf(drawable(planScaling(FOUR)), WIDE);
    const speedup = FOUR.figures.get('speedup.two')!;
    if (!isPresent(speedup)) throw new Error('absent');
    const ends = interval95(speedup.quantity)!.map((end) => panel!.yOf(end));
    const upright = panel!.rules.filter(({ stroke, x, x2 }) => stroke === inkOf(2) && x === x2 && x === panel!.signs[2]!.x);
    expect(upright.map(({ y, y2 }) => [y, y2].sort((a, b) => b - a))).toEqual([ends.map((end) => expect.closeTo(end, 6))]);
  });

  // NIST Statistical Reference Datasets, DanWood: y = b1·x^b2 with certified b1 and b2, as ratios to its first observation.
  test('the curve is the certified power law of DanWood', () => {
    const { x, y, certified } = nist('DanWood');
    const score = (value: number) =>
      figure('score', { value, unit: 'points', parts: null }, { test: 'mix', title: 'mix', better: 'higher' });
    const runs = x.map((clock, k) => [`s${k}`, { clock, setting: clock, more: { 'score.mix': score(y[k]!) } }] as const);
    const [panel] = partsOf(drawable(planScaling(comparison(Object.fromEntries(runs)))), WIDE);
    const curve = panel!.rules.filter(({ stroke, dash }) => plainColours(stroke) === 'var(--plot-soft)' && String(dash) === '1,0');
    const [b1, b2] = certified.params as [number, number];
    const certifiedAt = (ratio: number) => panel!.yOf((b1 * (ratio * x[0]!) ** b2) / y[0]!);
    const ratios = x.map((value) => value / x[0]!);
    const [from, to] = [Math.min(...ratios), Math.max(...ratios)];
    expect(curve[0]!.y).toBeCloseTo(certifiedAt(from), 5);
    expect(curve.at(-1)!.y2).toBeCloseTo(certifiedAt(to), 5);
    const middle = curve[curve.length / 2]!;
    expect(middle.y).toBeCloseTo(certifiedAt((from + to) / 2), 5);
  });

  test('title, alternative, method, table and CSV say the same as the figures', () => {
    const { title, alt, method, table, csv } = drawable(planScaling(FOUR));
    expect(title).toBe('Speedup over measured clock, against base: one, two and three');
    expect(alt).toMatch(
      /one at 1\.2 times the clock is 1\.150 times as fast, two at 1\.4 times the clock is 1\.280 times as fast and three/,
    );
    expect(alt).toMatch(
      /fitted power law with the exponent 0\.7\d+ ±\s0\.0\d+ \(95.%\): no verdict: the mean clock of the load phase stands in for that of the scores\.$/,
    );
    expect(method).toContain('Whiskers are 95 % intervals');
    expect(method).toContain('the speed that of the one test.');
    expect(table.rows[0]).toEqual(['base', '1', '', '1', '', '1', '']);
    expect(table.rows[1]!.slice(0, 4)).toEqual(['one', '1.2', '', '1.150']);
    const rows = csv.split('\r\n').map((row) => row.split(','));
    expect(rows[0]!.slice(0, 3)).toEqual(['run', 'clock_ratio', 'clock_low95']);
    expect(rows[2]![4]).toBe('1.15');
    expect(drawable(planScaling(FOUR, 'My title')).title).toBe('My title');
  });

  test('an open sign is a speed that is not told apart, and said to be', () => {
    const plan = drawable(planScaling(steps({ base: [1, 1], same: [1.2, 1.01], other: [1.4, 1.3] })));
    expect(partsOf(plan, WIDE)[0]!.signs.map(({ fill }) => fill)).toEqual([inkOf(0), 'var(--plot-paper)', inkOf(2)]);
    const said = 'A filled sign is a run that differs from base, an open one is not.';
    expect(plan.method).toContain(said);
    expect(drawable(planScaling(FOUR)).method).not.toContain(said);
  });

  test('a run without a clock has no sign, and is named with the reason; so is the missing power law', () => {
    const subject = comparison({
      base: { clock: 2e9, scores: { mix: 100 } },
      fast: { clock: 3e9, scores: { mix: 140 } },
      dark: { scores: { mix: 150 } },
    });
    const { alt, method, table, csv, title } = drawable(planScaling(subject));
    expect(title).toMatch(/: fast$/);
    expect(alt).not.toContain('dark');
    expect(method).toContain('No sign for dark: The run dark has no mean_clock.');
    expect(method).toContain('No power law is drawn. An exponent over the settings takes 4 of them; there are 3 here.');
    expect(table.rows[2]!.slice(0, 4)).toEqual(['dark', 'absent', '', '1.5']);
    expect(csv).toContain('dark,,,,1.5,1.5,1.5,The run dark has no mean_clock.');
  });

  test('nothing to draw is told with its reason', () => {
    expect(planScaling(comparison({ base: { clock: 2e9, scores: { mix: 1 } } }))).toEqual({
      why: 'The comparison has one run alone.',
    });
    expect(planScaling(comparison({ base: { scores: { mix: 1 } }, fast: { scores: { mix: 2 } } }))).toEqual({
      why: 'The run base has no mean_clock.',
    });
    expect(planScaling(comparison({ base: { clock: 1e9 }, fast: { clock: 2e9 } }))).toMatchObject({
      why: expect.stringMatching(/\.$/),
    });
  });

  test('of eight runs every sign is labelled and none looks like another', () => {
    const ratios = Object.fromEntries(Array.from({ length: 8 }, (_, i) => [`run-${i}`, [1 + i / 10, 1 + i / 14] as const]));
    const [panel] = partsOf(drawable(planScaling(steps(ratios))), WIDE);
    expect(panel!.signs).toHaveLength(8);
    expect(new Set(panel!.signs.map(({ shape, stroke }) => `${shape} ${stroke}`)).size).toBe(8);
    const words = panel!.texts.map(({ text }) => text);
    expect(words).toEqual(expect.arrayContaining(Object.keys(ratios)));
    for (const { x, text } of panel!.texts.filter(({ text }) => text.startsWith('run-')))
      expect([text, x > -8 && x < panel!.width + 8]).toEqual([text, true]);
  });

  test('a run looks as its slot says, whatever the order', () => {
    const slotted = { ...FOUR, runs: FOUR.runs.map(({ alias }, i) => ({ alias, slot: [4, 0, 5, 2][i]! })) };
    const [panel] = partsOf(drawable(planScaling(slotted)), WIDE);
    expect(panel!.signs.map(({ stroke }) => stroke)).toEqual([4, 0, 5, 2].map(inkOf));
  });

  test('a reference that is none of the runs is a fault', () => {
    expect(() => planScaling({ ...FOUR, reference: 'gone' })).toThrow('the reference gone is none of the runs compared');
  });
});

describe.each(['scaling', 'deltas', 'scores'] as const)('plots/draw, %s of a comparison', (kind) => {
  test('is drawn without problems or warnings, colours by variable', async () => {
    const sketch = { more: {}, clock: 1e9, scores: { mix: [3, 0.1, 4], copy: [5, 0.2, 4] } } as const;
    const more = (watts: number) => ({ load_power: figure('load_power', { value: watts, unit: 'W', parts: [] }) });
    const subject = comparison({ rated: { ...sketch, more: more(4) }, fast: { ...sketch, clock: 2e9, more: more(5) } });
    const plot = await draw(request(kind, []), [], 'p', [], subject);
    expect(plot.problems).toEqual([]);
    for (const svg of [plot.wide, plot.narrow]) {
      expect(svg).toMatch(/^<svg role="img" aria-label="/);
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
      expect(svg).not.toMatch(/(?:fill|stroke)="(?!none|var\(--plot-[a-z0-9]+\)|transparent)/);
      expect(svg).toMatch(/fill="var\(--plot-2\)"[^>]*>fast</);
    }
  });

  test('what a comparison lacks is a located error', async () => {
    const { problems, wide } = await draw(request(kind, []), [], 'p', [], comparison({ a: {}, b: {} }));
    expect(wide).toBe('');
    expect(problems).toMatchObject([
      { rule: 'no-figures', severity: 'error', place: { line: 14 }, expected: expect.stringMatching(/^a run beside/) },
    ]);
    expect(problems[0]!.found).toMatch(
      new RegExp(`^the comparison has nothing that a plot of the kind \`${kind}\` draws: .*[^.]$`),
    );
  });
});
