import { describe, expect, test } from 'vitest';
import { type Evaluated, evaluate } from '../../../src/words/expression/expression.ts';
import { combinedMargins, type Margins, NONE, ownInterval } from '../../../src/words/expression/interval-margins.ts';
import type { Subject } from '../../../src/words/written.ts';
import { FAST } from '../subjects.ts';

/** Runs whose peak's interval reaches 1 K (a) and 3 K (b) further up than its parts tell: 1.959964 u each way, as for infinite ν. */
const T95 = 1.959963984540054;
function withPeak(value: number, up: number): Subject {
  const parts = [{ source: { id: `run:${value}/scatter`, title: 'scatter', dof: null }, share: 0.1 }];
  const interval: readonly [number, number] = [value - T95 * 0.1, value + T95 * 0.1 + up];
  const peak = {
    name: 'peak_temperature' as const,
    quantity: { value, unit: '°C', parts },
    interval,
    from: { columns: [], rows: null },
  };
  const rise = { ...peak, quantity: { ...peak.quantity, unit: 'K' } };
  return {
    ...FAST,
    figures: new Map([
      ['peak', peak],
      ['rise', rise],
    ]),
  };
}
const SUBJECTS = new Map([
  ['a', withPeak(60, 1)],
  ['b', withPeak(50, 3)],
]);

function slackOf(text: string): Margins {
  const evaluated = evaluate(text, SUBJECTS, { file: 'x.md', line: 1, column: 1 });
  return (evaluated as Evaluated).slack;
}

describe('words/expression/interval-margins', () => {
  test.each([
    ['a.peak', [0, 1]],
    ['a.peak - b.peak', [3, 1]],
    ['a.rise + b.rise', [0, 4]],
    ['-a.rise', [1, 0]],
    ['a.rise * 2', [0, 2]],
    ['-2 * a.rise', [2, 0]],
    ['a.rise / b.rise', [(3 * 60) / 2500, 1 / 50]],
    ['mean(a.peak, b.peak)', [0, 2]],
    ['abs(b.rise - a.rise)', [3, 1]],
    ['max(a.peak, b.peak)', [0, 4]],
  ] as const)('%s', (text, [down, up]) => {
    const slack = slackOf(text);
    expect(Math.abs(slack[0] - down)).toBeLessThan(1e-9);
    expect(Math.abs(slack[1] - up)).toBeLessThan(1e-9);
  });

  test('without slack an expression has no interval of its own', () => {
    expect(ownInterval({ quantity: { value: 1, unit: 'W', parts: [] }, slack: NONE })).toBeUndefined();
    expect(combinedMargins([NONE, NONE], [1, -1])).toEqual([0, 0]);
  });
});
