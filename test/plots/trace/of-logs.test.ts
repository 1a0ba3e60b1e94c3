import { describe, expect, test } from 'vitest';
import { isPlan, type Plan } from '../../../src/plots/drawing/plan.ts';
import { planTrace } from '../../../src/plots/trace/of-logs.ts';
import type { PlotRequest } from '../../../src/register/requests.ts';
import { channel, logOf, request, subject } from '../subjects.ts';

type Subjects = readonly ReturnType<typeof subject>[];

function planned(subjects: Subjects, channels: readonly string[] = [], more: Partial<PlotRequest> = {}): Plan {
  const plan = planTrace(request('trace', subjects, channels, more), subjects);
  if (!isPlan(plan)) throw new Error(JSON.stringify(plan));
  return plan;
}

const rated = subject('rated', { rise: 40 });
const fast = subject('fast', { rise: 55 });

describe('plots/trace/of-logs', () => {
  test('titles say what was found, with what is drawn below; or what is drawn, where nothing is told of it', () => {
    const two = planned([rated, fast]);
    expect([two.title, two.about]).toEqual([
      'Rated throttles after 10.0\u00a0min and fast after 10.0\u00a0min',
      'Temperature of soc over time: rated and fast',
    ]);
    expect(planned([rated], ['soc', 'core_clock', 'flag']).about).toBe('Temperature, clock and throttle flag over time: rated');
    expect(planned([rated], [], { rise: true }).title).toBe('Rise over ambient of soc over time: rated');
  });

  test('the alternative tells the figures of the page, when the highest reading was, and the limit', () => {
    const { alt } = planned([rated, fast]);
    const peak = /rated peak under load (\d+\.\d)\u00a0°C/.exec(alt)!;
    // The invented course ends at 22 °C + 40 K; half of its scatter is 0.2 K.
    expect(Math.abs(Number(peak[1]) - 62)).toBeLessThanOrEqual(0.3);
    expect(alt).toMatch(/^Line chart over 50 min, from −5 to 45 min since load start\. /);
    expect(alt).toContain('Throttle limit: 80 °C.');
  });

  test('a channel without figures is told by its range, a flag by when it went up', () => {
    const fan = channel('fan', 'fan', '1', [...rated.log.channels[0]!.values].map(Math.round), 1);
    const cooled = { ...rated, log: logOf([...rated.log.time.seconds], [fan], 2) };
    expect(planned([cooled], ['fan']).alt).toMatch(/rated between 22 and 62, highest reading at \d+ min/);
    expect(planned([rated], ['flag']).alt).toContain('rated up for the first time at 10 min.');
  });

  test('the method tells how many readings, the thinning, the means and the gaps', () => {
    expect(planned([rated]).method).toBe(
      'Time counts from the start of the load. Of 1501 readings, the first, last, lowest and highest in each column of two pixels are drawn, so that no extreme is lost.',
    );
    const noisy = subject('noisy', { scatter: 3, step: 1, gap: [900, 1200] });
    expect(planned([noisy]).method).toMatch(
      /drawn pale, their means over 20 s heavy\. The line breaks where readings are missing\.$/,
    );
    expect(planned([rated, subject('bare', { noPhases: true })]).method).toMatch(/^Time counts from the first row of each log/);
  });

  test('the CSV holds every extreme', () => {
    const values = planned([rated])
      .csv.split('\r\n')
      .slice(1, -1)
      .map((row) => Number(row.split(',')[3]));
    expect(Math.max(...values)).toBeCloseTo(Math.max(...rated.log.channels[0]!.values), 8);
    expect(Math.min(...values)).toBeCloseTo(Math.min(...rated.log.channels[0]!.values), 8);
  });

  test('the table gives readings near round times, and nothing inside a gap', () => {
    const { table } = planned([subject('gappy', { gap: [900, 1500] })]);
    expect(table.head).toEqual(['Time (min)', 'gappy (°C)']);
    const at = new Map(table.rows.map(([time, value]) => [time, value]));
    expect(at.get('−5')).toMatch(/^2[12]\.\d$/);
    expect(at.get('15')).toBe('');
  });

  test('clocks are in GHz, from zero where they would all but reach it', () => {
    const { layOut, csv } = planned([rated], ['core_clock']);
    expect(csv).toContain(',2.4,GHz,reading');
    expect(domains(layOut({ ...SIZE }))).toEqual([[0, 2.5]]);
  });

  test('channels of one run share a panel by quantity; several runs have a panel for each channel', () => {
    const panels = (plan: Plan) => (plan.layOut(SIZE).vconcat as unknown[]).length;
    expect(panels(planned([rated], ['soc', 'core_clock', 'board']))).toBe(3);
    const hub = channel(
      'hub',
      'temperature',
      '°C',
      [...rated.log.channels[0]!.values].map((value) => value - 5),
      0.1,
    );
    const both = { ...rated, log: logOf([...rated.log.time.seconds], [rated.log.channels[0]!, hub], 2) };
    expect(panels(planned([both], ['soc', 'hub']))).toBe(1);
    expect(panels(planned([both, { ...both, alias: 'again' }], ['soc', 'hub']))).toBe(2);
  });

  test('a rise without an ambient is refused where the rise is asked for', () => {
    const bare = subject('bare', { noAmbient: true });
    const problems = planTrace(request('trace', [bare], [], { rise: true }), [bare]);
    expect(problems).toMatchObject([{ rule: 'no-ambient', found: 'the run bare has no ambient, so its rise cannot be drawn' }]);
    expect(isPlan(planTrace(request('trace', [bare]), [bare]))).toBe(true);
  });
});

const SIZE = {
  name: 'wide',
  width: 720,
  font: 14,
  small: 13,
  height: 300,
  stackedHeight: 190,
  timeTicks: 8,
  valueTicks: 6,
  markers: 6,
} as const;

/** Value domains of the panels' first lines. */
function domains(spec: Readonly<Record<string, unknown>>): unknown[] {
  const panels = spec.vconcat as { layer: { mark: { type: string }; encoding: { y: { scale: { domain: unknown } } } }[] }[];
  return panels.map(({ layer }) => layer.find(({ mark }) => mark.type === 'line')!.encoding.y.scale.domain);
}
