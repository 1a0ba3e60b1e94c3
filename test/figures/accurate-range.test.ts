import { describe, expect, test } from 'vitest';
import { rangeMarks, rangeWords } from '../../src/figures/accurate-range.ts';
import type { RunContext } from '../../src/figures/context.ts';

const sensor = { name: 'soc', quantity: 'temperature', instrument: 'probe' } as unknown as Parameters<typeof rangeWords>[1];

function context(stated: object): RunContext {
  const probe = { id: 'probe', accuracy: {}, accurate: { temperature: stated } };
  return { instruments: { probe } } as unknown as RunContext;
}

describe('figures/accurate-range', () => {
  test.each([
    [9.999, { below_accurate_range: true }],
    [10, {}],
    [90, {}],
    [90.001, { above_accurate_range: true }],
  ])('from 10 to 90, both counted in: %d', (reading, words) => {
    expect(rangeWords(context({ from: 10, to: 90 }), sensor, reading)).toEqual(words);
  });

  test('an end that nothing states is open', () => {
    expect(rangeWords(context({ to: 90 }), sensor, -1e6)).toEqual({});
    expect(rangeWords(context({ from: 10 }), sensor, 1e6)).toEqual({});
  });

  test('what is computed from figures outside lies outside too', () => {
    expect(rangeMarks({ of: { below_accurate_range: true } } as never, {} as never)).toEqual({ below_accurate_range: true });
    expect(rangeMarks({} as never, { of: {} } as never)).toEqual({});
  });
});
