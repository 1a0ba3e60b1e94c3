import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { queryOf, readAddress } from '../../../src/browser/compare/address.ts';
import { EMPTY_VIEW, MOST_PLOTS, QUANTITIES, UNITS, type View } from '../../../src/browser/compare/view.ts';
import type { QuantityKind } from '../../../src/intake/log.ts';

const id = fc.stringMatching(/^[a-z0-9]{1,6}(-[a-z0-9]{1,4}){0,2}$/);
const quantity = fc.constantFrom(...(Object.keys(QUANTITIES) as QuantityKind[]));
const shown = fc.record({ quantity, channel: fc.option(fc.stringMatching(/^[a-z][a-z0-9_]{0,8}$/)) });
const units = fc.record(
  Object.fromEntries(Object.entries(UNITS).map(([name, spellings]) => [name, fc.constantFrom(...spellings)])) as Record<
    string,
    fc.Arbitrary<string>
  >,
  { requiredKeys: [] },
);
const seconds = fc.option(fc.integer({ min: -1e8, max: 1e8 }).map((thousandths) => thousandths / 1000));

const view: fc.Arbitrary<View> = fc
  .record({
    runs: fc.uniqueArray(id, { maxLength: 8 }),
    show: fc.uniqueArray(shown, { minLength: 1, maxLength: MOST_PLOTS, selector: (each) => `${each.quantity}.${each.channel}` }),
    as: fc.constantFrom('absolute', 'rise'),
    units,
    ends: fc.tuple(seconds, seconds),
    pick: fc.nat(),
    named: fc.boolean(),
  })
  .map(({ runs, show, as, units, ends: [a, b], pick, named }) => {
    const ordered = a === null || b === null || a < b ? { from: a, to: b } : { from: null, to: a };
    return { runs, reference: named && runs.length > 0 ? runs[pick % runs.length]! : null, show, as, units, ...ordered } as View;
  });

describe('the address of a free comparison', () => {
  test('holds every view, and gives it back', () => {
    fc.assert(
      fc.property(view, (each) => {
        expect(readAddress(queryOf(each))).toEqual({ view: each, remarks: [] });
      }),
      { numRuns: 500, seed: 1 },
    );
  });

  test('is one for each view, short, and has nothing to escape', () => {
    fc.assert(
      fc.property(view, (each) => {
        const query = queryOf(each);
        expect(queryOf(readAddress(query).view)).toBe(query);
        expect(query).toMatch(/^$|^\?[a-zA-Z0-9+&=._-]+$/);
      }),
      { seed: 2 },
    );
    expect(queryOf(EMPTY_VIEW)).toBe('');
    const two = { ...EMPTY_VIEW, runs: ['larch-rated', 'larch-fast'] };
    expect(queryOf(two)).toBe('?runs=larch-rated+larch-fast');
    expect(queryOf({ ...two, reference: 'larch-fast', as: 'rise', units: { temperature: '°F' }, from: 0, to: 3600 })).toBe(
      '?runs=larch-rated+larch-fast&reference=larch-fast&as=rise&units=degF&from=0&to=3600',
    );
  });

  test('survives what mail and chat programs make of it', () => {
    const runs = ['larch-rated', 'larch-fast'];
    for (const query of [
      '?runs=larch-rated%2Blarch-fast',
      '?runs=larch-rated%20larch-fast',
      '?runs=larch-rated,larch-fast',
      'runs=larch-rated+larch-fast+',
    ])
      expect(readAddress(query)).toEqual({ view: { ...EMPTY_VIEW, runs }, remarks: [] });
  });

  test.each([
    ['?colour=red', '“colour” is not part of an address of this page.'],
    ['?runs=a&runs=b', '“runs” stands more than once: the first counts.'],
    ['?runs=a+Not_An_Id', '“Not_An_Id” is not the id of a run.'],
    ['?runs=a&reference=b', 'The reference b is none of the runs: the first run is the reference.'],
    ['?as=felt', '“as=felt” is none of absolute, rise: temperatures stand as they were read.'],
    ['?units=degR', '“degR” is not a unit of this page: degF, GHz, MHz, W, mW, A, mA, V, mV.'],
    ['?units=GHz+MHz', 'Two units of clock are asked for: the first counts.'],
    ['?from=soon', '“from=soon” is not a number of seconds.'],
    ['?from=60&to=60', 'The window from 60 s to 60 s holds nothing: all of the time is drawn.'],
    [
      '?show=warmth',
      /^“warmth” is nothing that can be drawn: temperature, ambient, .*, or one of these with a channel after a dot\.$/,
    ],
    ['?show=clock+power+current+voltage+fan', 'The address asks for 5 plots: the first 4 are drawn.'],
    ['?__proto__=1', '“__proto__” is not part of an address of this page.'],
  ])('%s is remarked upon', (query, remark) => {
    expect(readAddress(query).remarks).toEqual([typeof remark === 'string' ? remark : expect.stringMatching(remark)]);
  });

  test('of thousands of characters is cited in part', () => {
    const [long, many] = [
      readAddress(`?runs=${'A'.repeat(6000)}`),
      readAddress(`?${Array.from({ length: 300 }, (_, at) => `p${at}=1`).join('&')}`),
    ];
    expect(long.remarks).toEqual([`“${'A'.repeat(60)}…” is not the id of a run.`]);
    expect(many.remarks).toHaveLength(7);
    expect(many.remarks[6]).toBe('294 more parts of the address were not understood.');
  });

  test('is read whatever stands there: each time a view that has an address', () => {
    const word = fc.oneof(
      fc.string(),
      fc.constantFrom('runs', 'show', 'as', 'from', 'to', 'units', 'reference', 'a', 'clock', 'rise', '1', 'degF'),
    );
    const query = fc.array(fc.tuple(word, word)).map((pairs) => new URLSearchParams(pairs).toString());
    fc.assert(
      fc.property(fc.oneof(query, fc.string()), (text) => {
        const { view: read } = readAddress(text);
        expect(readAddress(queryOf(read))).toEqual({ view: read, remarks: [] });
      }),
      { numRuns: 500, seed: 3 },
    );
  });
});
