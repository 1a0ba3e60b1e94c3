import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  EVERYTHING,
  isActive,
  isDate,
  type Known,
  type Query,
  readAddress,
  without,
  writeAddress,
} from '../../../src/browser/runs/query.ts';

const KNOWN: Known = {
  device: ['larch-2', 'sedge-1'],
  specimen: ['no-1', 'no-2'],
  maker: ['tannery-row-computing'],
  outcome: ['throttled', 'held-at-limit', 'not-steady'],
  clock: ['800MHz', '2.0GHz', '2.6GHz'],
  order: ['title', '-title', 'date', '-date', 'peak_temperature', '-peak_temperature'],
};

const oneOf = (ids: readonly string[]) => fc.constantFrom('', ...ids);
const day = fc
  .date({ min: new Date('1990-01-01'), max: new Date('2099-12-31'), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10));
const end = fc.oneof(fc.constant(''), day);
const queries: fc.Arbitrary<Query> = fc.record({
  words: fc.string({ unit: 'grapheme' }).map((words) => (words.trim() === '' ? '' : words)),
  device: oneOf(KNOWN.device),
  specimen: oneOf(KNOWN.specimen),
  maker: oneOf(KNOWN.maker),
  outcome: oneOf(KNOWN.outcome),
  clock: fc.record({ from: oneOf(KNOWN.clock), to: oneOf(KNOWN.clock) }),
  date: fc.record({ from: end, to: end }),
  order: fc.constantFrom(...KNOWN.order),
});

describe('browser/runs/query', () => {
  it('brings every query through the address and back', () => {
    fc.assert(
      fc.property(queries, (query) => {
        expect(readAddress(writeAddress(query), KNOWN)).toEqual({ query, told: [] });
      }),
    );
  });

  it('never throws on an address, and tells all that it ignores', () => {
    fc.assert(
      fc.property(
        fc.webQueryParameters(),
        fc.array(fc.tuple(fc.constantFrom(...Object.keys(EVERYTHING)), fc.string())),
        (text, pairs) => {
          const address = `?${text}&${new URLSearchParams(pairs)}`;
          const { query, told } = readAddress(address, KNOWN);
          // What was kept is read the same again, and nothing more is told of it.
          expect(readAddress(writeAddress(query), KNOWN).told).toEqual([]);
          const asked = new Set([...new URLSearchParams(address).keys()]);
          for (const name of asked)
            if (!Object.hasOwn(EVERYTHING, name)) expect(told.some((sentence) => sentence.includes(`“${name}”`))).toBe(true);
        },
      ),
    );
  });

  it('writes short addresses that people can read', () => {
    expect(writeAddress(EVERYTHING)).toBe('');
    const query: Query = {
      ...EVERYTHING,
      words: 'hour soak',
      device: 'larch-2',
      clock: { from: '2.0GHz', to: '' },
      date: { from: '2026-03-01', to: '2026-03-31' },
      order: '-peak_temperature',
    };
    expect(writeAddress(query)).toBe(
      '?words=hour+soak&device=larch-2&clock=2.0GHz..&date=2026-03-01..2026-03-31&order=-peak_temperature',
    );
    expect(writeAddress({ ...EVERYTHING, clock: { from: '2.0GHz', to: '2.0GHz' } })).toBe('?clock=2.0GHz');
  });

  it.each([
    ['?device=larch-3', 'No run here has the device “larch-3”; it is ignored. Did you mean “larch-2”?'],
    ['?outcome=melted', 'No run here has the outcome “melted”; it is ignored.'],
    ['?clock=2.0GHz..9GHz', 'No run here has the clock “9GHz”; it is ignored.'],
    ['?clock=..2.0GHz..2.6GHz', 'No run here has the clock “2.0GHz..2.6GHz”; it is ignored.'],
    ['?date=2026-02-30..', '“2026-02-30” is not a date such as 2026-03-14; it is ignored.'],
    ['?order=-weight', 'Runs cannot be put in the order “-weight”; it is ignored.'],
    ['?devices=larch-2', '“devices” is not a filter of this page; it is ignored. Did you mean “device”?'],
    ['?toString=1', '“toString” is not a filter of this page; it is ignored.'],
    ['?device=larch-2&device=sedge-1', '“device” stands in the address twice; the first counts.'],
  ])('tells what is wrong with %s', (address, sentence) => {
    expect(readAddress(address, KNOWN).told).toEqual([sentence]);
  });

  it('takes the first of two that stand in the address', () => {
    expect(readAddress('?device=larch-2&device=sedge-1', KNOWN).query.device).toBe('larch-2');
  });

  it('keeps the rest of an address that is partly wrong', () => {
    const { query } = readAddress('?device=larch-9x9&clock=2.0GHz..9GHz&words=soak', KNOWN);
    expect(query).toEqual({ ...EVERYTHING, words: 'soak', clock: { from: '2.0GHz', to: '' } });
  });

  it('knows days of the calendar', () => {
    expect(['2024-02-29', '2026-12-31'].every(isDate)).toBe(true);
    expect(['2026-02-29', '2026-13-01', '2026-1-1', '', '20260101', 'abcd-ef-gh'].some(isDate)).toBe(false);
  });

  it('takes single filters out', () => {
    const query: Query = { ...EVERYTHING, device: 'larch-2', date: { from: '2026-03-01', to: '' } };
    expect(isActive(query, 'date')).toBe(true);
    expect(isActive(without(query, 'date'), 'date')).toBe(false);
    expect(without(query, 'date').device).toBe('larch-2');
  });
});
