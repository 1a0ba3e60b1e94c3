import { describe, expect, test } from 'vitest';
import { isPlan, type Plan } from '../../../src/plots/drawing/plan.ts';
import { WIDE } from '../../../src/plots/drawing/size.ts';
import { textWidth } from '../../../src/plots/drawing/text-width.ts';
import { planStepResponse } from '../../../src/plots/step-response/plan.ts';
import { request, subject } from '../subjects.ts';

interface Mark {
  readonly x: number;
  readonly x2?: number;
  readonly text?: string;
}

type Subjects = readonly ReturnType<typeof subject>[];

function planned(subjects: Subjects): Plan {
  const plan = planStepResponse(request('step-response', subjects), subjects);
  if (!isPlan(plan)) throw new Error(JSON.stringify(plan));
  return plan;
}

const rated = subject('rated', { rise: 40 });
/** Texts of a panel's labels. */
const texts = (plan: Plan, panel: number) => {
  const { layer } = (plan.layOut(WIDE).vconcat as { layer: { mark: { type: string }; data: { values: { text: string }[] } }[] }[])[
    panel
  ]!;
  return layer.find(({ mark }) => mark.type === 'text')!.data.values.map(({ text }) => text);
};

describe('plots/step-response/plan', () => {
  // The invented course is 40 K·(1 − exp(−t/300 s)): one time constant is 5 min, and 63.2 % of the step is reached there
  // (the definition of a first-order system's time constant; common practice, no source).
  test('the fitted curve follows the course, and one time constant is marked', () => {
    const plan = planned([rated]);
    const fit = plan.csv
      .split('\r\n')
      .filter((row) => row.endsWith(',fit'))
      .map((row) => row.split(',').map(Number));
    for (const [, , minutes, value] of fit) expect(Math.abs(value! - 40 * (1 - Math.exp(-minutes! / 5)))).toBeLessThan(0.2);
    expect(texts(plan, 0)).toContainEqual(expect.stringMatching(/^τ = (4\.9\d|5\.0\d?|300|30[01]|29\d)/));
    expect(plan.alt).toMatch(/rated ends at 4\d\.\d K|rated ends at 39\.\d K/);
    expect(plan.alt).toContain('time constant');
  });

  test('what the fit leaves over stands below, around zero', () => {
    const plan = planned([rated]);
    expect(texts(plan, 1)).toEqual(['Measured less fitted (K)']);
    const rest = plan.csv
      .split('\r\n')
      .filter((row) => row.endsWith('measured less fitted'))
      .map((row) => Number(row.split(',')[3]));
    expect(rest.length).toBeGreaterThan(20);
    expect(Math.max(...rest.map(Math.abs))).toBeLessThan(0.5);
  });

  test('in a room that warms, the fit leaves as little over: readings stand over the room as the device felt it', () => {
    const plan = planned([subject('rated', { rise: 40, warming: 6, scatter: 0 })]);
    const rest = plan.csv
      .split('\r\n')
      .filter((row) => row.endsWith('measured less fitted'))
      .map((row) => Number(row.split(',')[3]));
    expect(rest.length).toBeGreaterThan(20);
    expect(Math.max(...rest.map(Math.abs))).toBeLessThan(0.05);
    expect(plan.method).toContain('as it reaches the device, later by its time constant');
  });

  test('without a fit the reason stands in the method, and no residuals', () => {
    const short = subject('brief', { load: 240, coolDown: 900 });
    const figure = short.derived.figures.get('time_constant')!;
    const plan = planned([short]);
    expect('why' in figure && plan.method.endsWith(`No fit for brief: ${figure.why}`)).toBe(true);
    expect(plan.layOut(WIDE).vconcat).toHaveLength(1);
    expect(texts(plan, 0)).toContain('brief, no fit');
    expect(plan.csv).not.toContain(',fit');
    expect(plan.table.head).toEqual(['Time (s)', 'brief, no fit measured (K)']);
  });

  test('temperatures stand as they are where no ambient is known; a mixture is refused', () => {
    const bare = subject('bare', { noAmbient: true });
    expect(texts(planned([bare]), 0)[0]).toBe('Temperature (°C)');
    expect(planStepResponse(request('step-response', [rated, bare]), [rated, bare])).toMatchObject([{ rule: 'no-ambient' }]);
  });

  test('a run without a load, and a channel that is no temperature, are refused', () => {
    const idle = subject('bare', { noPhases: true });
    expect(planStepResponse(request('step-response', [idle]), [idle])).toMatchObject([
      { rule: 'no-load', found: 'the run bare has no load to draw the response to: The run has no load phase: none is declared' },
    ]);
    expect(planStepResponse(request('step-response', [rated], ['board']), [rated])).toMatchObject([{ rule: 'wrong-channels' }]);
  });

  test('no rule of another run crosses the name of a time constant', () => {
    const plan = planned([rated, subject('brisk', { rise: 45 }), subject('fast', { rise: 55 })]);
    const { layer } = (plan.layOut(WIDE).vconcat as { layer: { mark: { type: string }; data: { values: Mark[] } }[] }[])[0]!;
    const marks = (type: string) => layer.find(({ mark }) => mark.type === type)!.data.values;
    const upright = marks('rule').filter(({ x, x2 }) => x === x2);
    const names = marks('text').filter(({ text }) => text?.startsWith('τ'));
    expect([upright.length, names.length]).toEqual([3, 3]);
    for (const { x, text } of names) {
      expect(upright.filter((rule) => rule.x > x && rule.x < x + textWidth(text!, WIDE.small))).toEqual([]);
    }
  });
});
