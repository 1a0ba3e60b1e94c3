import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EVERYTHING, type Query } from '../../../src/browser/runs/query.ts';
import { answering, ordered, type Row } from '../../../src/browser/runs/rows.ts';

const CLOCKS = ['1.0GHz', '2.0GHz', '2.6GHz'];
const ROW: Row = {
  device: 'larch-2',
  specimen: 'no-1',
  maker: 'tannery-row',
  outcomes: ['throttled', 'steady'],
  clock: 1,
  date: '2026-03-14',
  text: 'fast setting, hour soak in a closed cupboard',
  keys: {},
};
const answers = (query: Partial<Query>, row: Partial<Row> = {}) =>
  answering([{ ...ROW, ...row }], { ...EVERYTHING, ...query }, CLOCKS)[0];

describe('browser/runs/rows', () => {
  it.each<[Partial<Query>, boolean]>([
    [{}, true],
    [{ device: 'larch-2', specimen: 'no-1', maker: 'tannery-row', outcome: 'steady' }, true],
    [{ device: 'sedge-1' }, false],
    [{ specimen: 'no-2' }, false],
    [{ maker: 'old-quay' }, false],
    [{ outcome: 'not-steady' }, false],
    [{ words: 'SOAK  clös' }, true],
    [{ words: 'soak open' }, false],
    [{ clock: { from: '2.0GHz', to: '2.0GHz' } }, true],
    [{ clock: { from: '', to: '1.0GHz' } }, false],
    [{ clock: { from: '2.6GHz', to: '' } }, false],
    [{ date: { from: '2026-03-14', to: '2026-03-14' } }, true],
    [{ date: { from: '2026-03-15', to: '' } }, false],
    [{ date: { from: '', to: '2026-03-13' } }, false],
  ])('answers %j: %s', (query, expected) => {
    expect(answers(query)).toBe(expected);
  });

  it('leaves a run without a clock setting out of every range of the clock, and of no other filter', () => {
    expect(answers({ clock: { from: '', to: '2.6GHz' } }, { clock: null })).toBe(false);
    expect(answers({ device: 'larch-2' }, { clock: null })).toBe(true);
  });

  const keys = fc.array(fc.option(fc.integer({ min: 0, max: 5 }), { nil: null }), { maxLength: 20 });
  it('orders both ways, equal rows as they stand, absent ones last', () => {
    fc.assert(
      fc.property(keys, fc.boolean(), (values, descending) => {
        const rows = values.map((value) => ({ ...ROW, keys: { load_power: value } }));
        const order = ordered(rows, descending ? '-load_power' : 'load_power');
        expect(order.toSorted((a, b) => a - b)).toEqual(values.map((_value, index) => index));
        for (const [at, index] of order.entries()) {
          const next = order[at + 1];
          if (next === undefined) continue;
          const [a, b] = [values[index]!, values[next]!];
          if (a === b) expect(index).toBeLessThan(next);
          else if (a === null || b === null) expect(b).toBeNull();
          else expect(a < b).toBe(!descending);
        }
      }),
    );
  });
});
