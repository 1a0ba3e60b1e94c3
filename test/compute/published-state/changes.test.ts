import { describe, expect, it } from 'vitest';
import { changesSince, isChanged } from '../../../src/compute/published-state/changes.ts';
import { entry, state } from './states.ts';

const PEAK = entry('fast.peak_temperature', '71.3 °C', { pattern: 'It reached ■ there.' });
const POWER = entry('fast.load_power', '5.25 W', { pattern: 'It drew ■.' });

describe('compute/published-state/changes', () => {
  it('names the figures by how much, and the sentences that print differently, nothing else', () => {
    const now = state([{ ...PEAK, value: 72.1, shown: '72.1 °C', sentence: 'It reached 72.1 °C there.', u: 0.4 }, POWER]);
    const [changed] = changesSince([state([PEAK, POWER])], [now]);
    expect(changed?.figures).toHaveLength(1);
    expect(changed?.figures[0]).toMatchObject({ number: 'fast.peak_temperature', was: '71.3 °C', is: '72.1 °C', unit: 'K' });
    expect(changed?.figures[0]?.difference).toBeCloseTo(0.8, 9);
    expect(changed?.figures[0]?.standardUncertainties).toBeCloseTo(2, 9);
    expect(changed?.sentences).toEqual([
      { line: 20, column: 12, before: 'It reached 71.3 °C there.', after: 'It reached 72.1 °C there.' },
    ]);
    expect(changed).toMatchObject({ noLongerHeld: [], plots: [], added: [], removed: [] });
  });

  it('tells a figure that moved within its rounding, and no sentence', () => {
    const [changed] = changesSince([state([PEAK])], [state([{ ...PEAK, value: 71.31 }])]);
    expect(changed?.figures).toHaveLength(1);
    expect(changed?.sentences).toEqual([]);
  });

  it('tells a difference across units in the unit of what it is', () => {
    const now = entry('fast.load_power', '5300 mW', { pattern: 'It drew ■.', unit: 'mW', value: 5300 });
    expect(changesSince([state([POWER])], [state([now])])[0]?.figures[0]?.difference).toBeCloseTo(50, 6);
    // 71.3 °C and 162.14 °F: a difference of scales with different zeros.
    const fahrenheit = { ...PEAK, shown: '162.14 °F', unit: '°F', value: 162.14 };
    expect(changesSince([state([PEAK])], [state([fahrenheit])])[0]?.figures[0]?.difference).toBeCloseTo(1.8, 6);
  });

  it('tells stated numbers and claims that are decided otherwise, plots, and numbers that came or went', () => {
    const claim = entry('a < b', 'hotter', { kind: 'claim', verdict: 'holds', unit: 'K' });
    const fails = { ...claim, verdict: 'fails' as const, rests: '1 against 2' };
    const plot = { id: 'trace', title: 'Over time', sha256: '1' };
    const then = state([claim, POWER], { plots: [plot, { ...plot, id: 'gone' }] });
    const now = state([fails, PEAK], {
      plots: [
        { ...plot, sha256: '2' },
        { ...plot, id: 'new' },
      ],
    });
    const [changed] = changesSince([then], [now]);
    expect(changed?.noLongerHeld).toMatchObject([{ kind: 'claim', words: 'hotter', verdict: 'fails', rests: '1 against 2' }]);
    expect(changed?.plots.map(({ id, how }) => `${how} ${id}`)).toEqual(['changed trace', 'added new', 'removed gone']);
    expect(changed?.added).toEqual(['value fast.peak_temperature: 71.3 °C (line 20)']);
    expect(changed?.removed).toEqual(['value fast.load_power: 5.25 W (line 20)']);
  });

  it('finds nothing between equals', () => {
    expect(changesSince([state([PEAK])], [state([PEAK])]).filter(isChanged)).toEqual([]);
  });

  it('tells a number of a table that became absent as a change of its sentence, not as removed', () => {
    const number = entry('fast.time_constant', '9.1 min', { kind: 'table', pattern: 'time constant: ■' });
    const absent = [
      { kind: 'table' as const, line: 31, column: 1, expression: 'fast.time_constant', why: 'The log is too short.' },
    ];
    const [changed] = changesSince([state([number])], [state([], { absent })]);
    expect(changed).toMatchObject({
      figures: [{ number: 'fast.time_constant', was: '9.1 min', is: 'absent', difference: null, standardUncertainties: null }],
      sentences: [{ line: 31, before: 'time constant: 9.1 min', after: 'time constant: absent' }],
      removed: [],
    });
  });

  it('tells a stated number whose figure became absent as no longer held, with the reason', () => {
    const stated = entry('fast.time_constant', 'about nine minutes', { kind: 'stated', verdict: 'holds', unit: 's', value: 540 });
    const absent = [{ kind: 'stated' as const, line: 31, column: 4, expression: 'fast.time_constant', why: 'The power changed.' }];
    const [changed] = changesSince([state([stated])], [state([], { absent })]);
    expect(changed).toMatchObject({
      sentences: [],
      figures: [],
      removed: [],
      noLongerHeld: [{ line: 31, column: 4, words: 'about nine minutes', verdict: 'cannot be told', rests: 'The power changed.' }],
    });
  });
});
