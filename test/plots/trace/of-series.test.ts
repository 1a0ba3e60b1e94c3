import { describe, expect, test } from 'vitest';
import { runSeries } from '../../../src/plots/data/run-series.ts';
import { draw } from '../../../src/plots/draw.ts';
import { drawIn } from '../../../src/plots/drawing/draw-in.ts';
import type { PlotSubject } from '../../../src/plots/drawing/drawn.ts';
import { NARROW, WIDE } from '../../../src/plots/drawing/size.ts';
import { planTrace } from '../../../src/plots/trace/of-logs.ts';
import { type ComparedRunSeries, planComparedTrace } from '../../../src/plots/trace/of-series.ts';
import { drawable } from '../plan-parts.ts';
import { channel, logOf, request, type Shape, subject } from '../subjects.ts';

const TEMPERATURE = { panels: [{ quantity: 'temperature' }] } as const;

function compared(subjects: readonly PlotSubject[], more: Partial<ComparedRunSeries> = {}): ComparedRunSeries[] {
  return subjects.map((each, slot) => {
    const series = JSON.parse(JSON.stringify(runSeries(each)));
    return { alias: each.alias, title: each.title, series, slot, figures: each.derived.figures, ...more };
  });
}
/** Readings come in steps, as sensors give them. */
function inSteps(each: PlotSubject): PlotSubject {
  const channels = each.log.channels.map((one) =>
    one.quantity === 'temperature' ? { ...one, values: one.values.map((value) => Math.round(value * 10) / 10) } : one,
  );
  return { ...each, log: { ...each.log, channels } };
}
const runs = (...shapes: readonly (readonly [alias: string, shape?: Shape])[]) =>
  shapes.map(([alias, shape]) => inSteps(subject(alias, shape)));

interface Layer {
  readonly mark: { readonly type: string };
  readonly data: { readonly values: readonly { readonly x: number; readonly y: number; readonly k: number }[] };
  readonly encoding: Readonly<Record<'x' | 'y', { readonly scale?: { readonly domain: readonly number[] } }>>;
}
const panelsOf = (plan: ReturnType<typeof drawable>, size = WIDE) =>
  plan.layOut(size).vconcat as { readonly layer: readonly Layer[] }[];
const linesOf = ({ layer }: { readonly layer: readonly Layer[] }) => layer.filter(({ mark }) => mark.type === 'line');

describe('plots/trace/of-series', () => {
  const both = runs(['rated', { rise: 40 }], ['fast', { rise: 55, idle: 120 }]);

  test.each([
    ['temperature', false],
    ['rise over ambient', true],
  ])('%s from series is what a note draws from the logs: words, axes, phases', (_, rise) => {
    const fromLogs = drawable(planTrace(request('trace', both, [], { rise }), both));
    const fromSeries = drawable(planComparedTrace(compared(both), { ...TEMPERATURE, rise }));
    for (const key of ['title', 'alt', 'method'] as const) expect(fromSeries[key]).toBe(fromLogs[key]);
    expect(fromSeries.table.head).toEqual(fromLogs.table.head);
    expect(fromSeries.table.rows).toHaveLength(fromLogs.table.rows.length);
    for (const size of [WIDE, NARROW]) {
      const [one, other] = [panelsOf(fromLogs, size)[0]!, panelsOf(fromSeries, size)[0]!];
      expect(linesOf(other)[0]!.encoding.x.scale).toEqual(linesOf(one)[0]!.encoding.x.scale);
      expect(linesOf(other)[0]!.encoding.y.scale).toEqual(linesOf(one)[0]!.encoding.y.scale);
      expect(other.layer[0]!.data).toEqual(one.layer[0]!.data);
    }
  });

  test('a point drawn from a series is within a step of the line drawn from the log', () => {
    const steady = runs(['rated', { scatter: 0 }]);
    const [line] = linesOf(panelsOf(drawable(planComparedTrace(compared(steady), TEMPERATURE)))[0]!);
    const { values } = steady[0]!.log.channels[0]!;
    for (const { x, y } of line!.data.values) {
      const row = Math.round((x * 60 + 300) / 2);
      expect(Math.abs(y - values[row]!)).toBeLessThanOrEqual(0.0501);
    }
  });

  test('runs are aligned where their loads begin', () => {
    const [line] = linesOf(panelsOf(drawable(planComparedTrace(compared(both), TEMPERATURE)))[0]!);
    const first = (k: number) => line!.data.values.find((value) => value.k === k)!.x;
    expect([first(0), first(1)]).toEqual([-5, -2]);
  });

  test('a run without a load phase puts all at their first rows', () => {
    const mixed = runs(['rated'], ['bare', { noPhases: true }]);
    const { method, table } = drawable(planComparedTrace(compared(mixed), TEMPERATURE));
    expect(method).toMatch(/^Time counts from the first row of each log: not every run has a load phase\./);
    expect(table.rows[0]![0]).toBe('0');
  });

  test('panels by quantity and by channel, from top to bottom', () => {
    const plan = drawable(
      planComparedTrace(compared(both), {
        panels: [{ quantity: 'power' }, { channel: 'core_clock' }, { quantity: 'throttle_flag' }],
      }),
    );
    expect(plan.title).toBe('Power, clock and throttle flag over time: rated and fast');
    expect(panelsOf(plan)).toHaveLength(3);
    expect(plan.table.head.slice(1, 3)).toEqual(['power, rated (W)', 'power, fast (W)']);
  });

  test('a run that lacks a channel is left out of its panel and named; so is one without an ambient', () => {
    const cool = { ...both[1]!, log: logOf([...both[1]!.log.time.seconds], both[1]!.log.channels.slice(0, 1), 2) };
    const partly = compared([both[0]!, cool]);
    const clocks = drawable(planComparedTrace(partly, { panels: [{ quantity: 'clock' }, { quantity: 'fan' }] }));
    expect(clocks.method).toContain('Not drawn: fast has no readings of clock. No run has readings of fan.');
    expect(panelsOf(clocks)).toHaveLength(1);
    const unknown = compared([both[0]!, subject('bare', { noAmbient: true })]);
    const rise = drawable(planComparedTrace(unknown, { ...TEMPERATURE, rise: true }));
    expect(rise.method).toContain('Not drawn: bare has no known ambient.');
    expect(rise.table.head).toEqual(['Time (min)', 'rated (K)']);
  });

  test('one name in two units is not put on one axis', () => {
    const odd = { ...both[1]!, log: logOf([0, 2, 4], [channel('soc', 'fan', '1', [1, 2, 3], 1)], 2) };
    const { method } = drawable(planComparedTrace(compared([both[0]!, odd]), { panels: [{ channel: 'soc' }] }));
    expect(method).toContain('Not drawn: fast has soc in another unit, 1.');
  });

  test('power of different places is drawn with a word of it', () => {
    const [rated, fast] = compared(both);
    const channels = fast!.series.channels.map((each) => (each.name === 'board' ? { ...each, at: 'wall' } : each));
    const { method } = drawable(
      planComparedTrace([rated!, { ...fast!, series: { ...fast!.series, channels } }], { panels: [{ quantity: 'power' }] }),
    );
    expect(method).toContain('Mind that power is measured at the board input in rated and at the wall in fast.');
  });

  test('a window shows its readings alone, and tells of them instead of the whole run', () => {
    const plan = drawable(planComparedTrace(compared(both), { ...TEMPERATURE, window: [600, 1200] }));
    const [line] = linesOf(panelsOf(plan)[0]!);
    expect(line!.encoding.x.scale!.domain).toEqual([10, 20]);
    for (const { x } of line!.data.values) expect(x >= 10 && x <= 20).toBe(true);
    expect(plan.alt).toMatch(
      /^Line chart over 10 min, from 10 to 20 min since load start\. Temperature: rated between \d+\.\d °C and/,
    );
    expect(planComparedTrace(compared(both), { ...TEMPERATURE, window: [99_000, 99_100] })).toEqual({
      why: 'No run has a reading in this stretch of time.',
    });
  });

  test('units that fit are used, limits and readings alike; others stay as they are', () => {
    const plan = drawable(
      planComparedTrace(compared(both), {
        panels: [{ quantity: 'temperature' }, { quantity: 'power' }, { quantity: 'clock' }],
        units: ['°F', 'mW'],
      }),
    );
    expect(plan.table.head).toEqual(expect.arrayContaining(['temperature, rated (°F)', 'power, rated (mW)', 'clock, rated (GHz)']));
    expect(plan.alt).toContain('Throttle limit: 176 °F.');
    expect(plan.alt).toMatch(/rated peak under load 1\d\d\.\d\s°F, steady at 1\d\d\.\d\s°F/);
    const column = plan.table.head.indexOf('temperature, rated (°F)');
    const celsius = drawable(planComparedTrace(compared(both), TEMPERATURE)).table.rows.map((row) =>
      Number(row[1]!.replace('−', '-')),
    );
    const fahrenheit = plan.table.rows.map((row) => Number(row[column]!));
    // 0 °C = 32 °F, 100 °C = 212 °F (NIST SP 811, B.8).
    celsius.forEach((value, i) => {
      expect(fahrenheit[i]).toBeCloseTo((value * 180) / 100 + 32, 0);
    });
    const rise = drawable(planComparedTrace(compared(both), { ...TEMPERATURE, rise: true, units: ['°F'] }));
    expect(rise.table.head[1]).toBe('rated (K)');
  });

  test('without figures the alternative tells the range', () => {
    const bare = compared(both).map(({ figures: _figures, ...rest }) => rest);
    expect(drawable(planComparedTrace(bare, TEMPERATURE)).alt).toMatch(
      /Temperature: rated between \d+\.\d °C and \d+\.\d °C, highest reading/,
    );
  });

  test('eight runs differ by colour, dash and marker together; thirteen are too many; none is nothing', () => {
    const many = (count: number) =>
      Array.from({ length: count }, (_, i) => ({ ...compared([both[0]!])[0]!, alias: `run-${i}`, slot: i }));
    const [panel] = panelsOf(drawable(planComparedTrace(many(8), TEMPERATURE)));
    const styled = linesOf(panel!)[0]!.encoding as unknown as Record<
      'stroke' | 'strokeDash',
      { scale: { range: readonly unknown[] } }
    >;
    const looks = styled.stroke.scale.range.map((ink, k) => `${ink} ${styled.strokeDash.scale.range[k]}`);
    expect(new Set(looks).size).toBe(8);
    expect(planComparedTrace(many(13), TEMPERATURE)).toEqual({ why: '13 runs in one plot: at most 12 can still be told apart.' });
    expect(planComparedTrace([], TEMPERATURE)).toEqual({ why: 'There is no run to draw.' });
    expect(planComparedTrace(many(2), { panels: [] })).toEqual({ why: 'No channel is asked for.' });
    expect(planComparedTrace(many(2), { panels: [{ channel: 'nope' }] })).toEqual({ why: 'No run has readings of nope.' });
  });

  test('one run alone has its channels as panels, labelled with their names', () => {
    const plan = drawable(planComparedTrace(compared([both[0]!]), { panels: [{ channel: 'soc' }, { channel: 'board' }] }));
    expect(plan.about).toBe('Temperature and power over time: rated');
    expect(plan.table.head).toEqual(['Time (min)', 'temperature, soc (°C)', 'power, board (W)']);
  });

  test('is drawn in both sizes without a warning, close to what the logs give', async () => {
    const plan = drawable(planComparedTrace(compared(both), TEMPERATURE));
    const fromLogs = await draw(request('trace', both), both, 'p');
    for (const size of [WIDE, NARROW]) {
      const { svg, warnings } = await drawIn(size, plan, 'p');
      expect(warnings).toEqual([]);
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
      const height = / height="([\d.]+)"/.exec(svg)![1];
      expect(fromLogs[size.name]).toContain(` height="${height}"`);
    }
  });
});
