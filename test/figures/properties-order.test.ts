/** The order in which rows and columns stand: of a log it is that of time, of a table it says nothing. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derive } from '../../src/figures/derive.ts';
import { type Figure, isPresent } from '../../src/figures/figure.ts';
import { readScores } from '../../src/figures/scores/read-scores.ts';
import { readSurface } from '../../src/figures/surface/read-surface.ts';
import type { RunTables } from '../../src/figures/tables.ts';
import { contextOf, every, instrumentOf, logOf, noise } from './build.ts';
import { bytesOf, ofLog, readLog, soakRows } from './soak-file.ts';

/** Bits of every figure, or the reason for its absence; lines of the file are left out, for these do move. */
function bits(figures: ReadonlyMap<string, Figure>): unknown {
  const told = [...figures].map(([address, figure]) =>
    isPresent(figure) ? [address, figure.quantity, figure.interval ?? null] : [address, figure.absent],
  );
  return Object.fromEntries(told.map(([address, ...rest]) => [address, rest]));
}

describe('properties: reordered rows and columns of a log', () => {
  // Every moved row lands three or more rows later, and none of those between is moved, so that each is behind the time there.
  const moves = fc.uniqueArray(fc.tuple(fc.integer({ min: 1, max: 58 }), fc.integer({ min: 3, max: 6 })), {
    minLength: 1,
    maxLength: 6,
    selector: ([block]) => block,
  });

  test('rows that stand out of order are set aside, never sorted: figures are those of the log without them', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), moves, (seed, moved) => {
        const rows = soakRows(seed).map((cells) => cells.join(','));
        const taken = new Map(moved.map(([block, by]) => [10 * block, 10 * block + by]));
        const without = rows.filter((_, row) => !taken.has(row));
        const late = (row: number) => [...taken].filter(([, to]) => to === row).map(([from]) => rows[from]!);
        const reordered = rows.flatMap((text, row) => [...(taken.has(row) ? [] : [text]), ...late(row)]);
        const log = readLog(reordered);
        expect(log.setAside.map(({ reason }) => reason)).toEqual(moved.map(() => 'the time runs backward'));
        expect(log.rows).toBe(without.length);
        const [a, b] = [ofLog(readLog(without)), ofLog(log)];
        expect(bits(b)).toEqual(bits(a));
        expect(isPresent(b.get('temperature_rise')!)).toBe(true);
      }),
      { numRuns: 25 },
    );
  });

  test('columns in another order change nothing, to the last bit', () => {
    const header = ['Time [s]', 'SoC [°C]', 'Board [W]'];
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), orderOf(3), (seed, order) => {
        const rows = soakRows(seed);
        const turned = (cells: readonly string[]) => order.map((at) => cells[at]!).join(',');
        const log = readLog(rows.map(turned), turned(header));
        expect(bits(ofLog(log))).toEqual(bits(ofLog(readLog(rows.map((cells) => cells.join(','))))));
      }),
      { numRuns: 12 },
    );
  });
});

function orderOf(count: number): fc.Arbitrary<number[]> {
  const all = Array.from({ length: count }, (_, k) => k);
  return fc.shuffledSubarray(all, { minLength: count, maxLength: count });
}

/** Rows and columns of a table as made, the same with columns in another order, and with rows too. */
interface Turned {
  readonly header: string;
  readonly rows: readonly string[];
}

function turnings(head: readonly string[], rows: fc.Arbitrary<string[][]>): fc.Arbitrary<readonly [Turned, Turned, Turned]> {
  const whole = rows.chain((made) => fc.tuple(fc.constant(made), orderOf(made.length), orderOf(head.length)));
  return whole.map(([made, order, columns]) => {
    const turned = (cells: readonly string[]) => columns.map((at) => cells[at]!).join(',');
    const plain = { header: head.join(','), rows: made.map((cells) => cells.join(',')) };
    const aside = { header: turned(head), rows: made.map(turned) };
    return [plain, aside, { ...aside, rows: order.map((at) => turned(made[at]!)) }];
  });
}

const METERS = {
  meter: instrumentOf('meter', 'power', { ofReading: 0.01, absolute: 0.02 }),
  camera: instrumentOf('camera', 'temperature', { ofReading: 0.02, absolute: 2, larger: true }),
};

function ofTables(tables: RunTables): ReadonlyMap<string, Figure> {
  const random = noise(7);
  const log = logOf(every(1, 600), {
    board: { quantity: 'power', values: () => 8 + random(), instrument: 'meter', at: 'board input' },
    core: { quantity: 'clock', values: () => 2e9 * (1 + 0.01 * random()) },
  });
  return derive(log, contextOf({ instruments: METERS, ambient: { value: 23, unit: '°C', parts: [] } }), tables).figures;
}

const withoutDrift = (figures: ReadonlyMap<string, Figure>) =>
  new Map([...figures].filter(([, { name }]) => name !== 'score_drift'));

describe('properties: reordered rows and columns of tables', () => {
  test('scores: no figure changes, to the last bit, but the drift, whose repeats are in the order of the rows', () => {
    const repeat = fc.record({
      test: fc.constantFrom('grid', 'sort', 'mix'),
      value: fc.integer({ min: 100, max: 99_999 }),
      lost: fc.constantFrom(false, false, false, true),
      start: fc.integer({ min: 0, max: 550 }),
      length: fc.integer({ min: 5, max: 40 }),
    });
    const rows = fc.array(repeat, { minLength: 2, maxLength: 24 }).map((made) =>
      made.map(({ test: title, value, lost, start, length }, k) => {
        const better = title === 'sort' ? 'lower' : 'higher';
        return [
          title,
          String(k + 1),
          lost ? 'NA' : (value / 100).toFixed(2),
          'points',
          better,
          `${start} s`,
          `${start + length} s`,
        ];
      }),
    );
    const head = ['test', 'repeat', 'value', 'unit', 'better', 'start', 'end'];
    const figuresOf = ({ header, rows: lines }: Turned) => {
      const { scores, problems } = readScores(bytesOf(header, lines), 'data/scores.csv');
      expect(problems).toEqual([]);
      return ofTables({ scores });
    };
    fc.assert(
      fc.property(turnings(head, rows), ([plain, aside, turned]) => {
        const figures = figuresOf(plain);
        expect([...figures.keys()].some((address) => address.startsWith('score.'))).toBe(true);
        expect(bits(figuresOf(aside))).toEqual(bits(figures));
        const inOtherOrder = figuresOf(turned);
        expect([...inOtherOrder.keys()].sort()).toEqual([...figures.keys()].sort());
        expect(bits(withoutDrift(inOtherOrder))).toEqual(bits(withoutDrift(figures)));
      }),
      { numRuns: 100 },
    );
  });

  test('surface: no figure changes, to the last bit', () => {
    const spot = fc.record({
      part: fc.constantFrom('lid', 'base', 'bezel'),
      contact: fc.constantFrom('touched briefly', 'held', 'none'),
      // Few values, so that spots are often equally hot.
      tenths: fc.integer({ min: 400, max: 420 }),
      emissivity: fc.constantFrom('0.95 ± 0.02', '0.85 ± 0.05', '0.9', '0.3'),
    });
    const rows = fc.array(spot, { minLength: 2, maxLength: 10 }).map((made) =>
      made.map(({ part, contact, tenths, emissivity }, k) => {
        return [`Spot ${k}`, part, 'rubber', contact, (tenths / 10).toFixed(1), '0.95', emissivity, '23.4 ± 1.0'];
      }),
    );
    const head = ['spot', 'part', 'material', 'contact', 'reading [°C]', 'emissivity_set', 'emissivity', 'reflected [°C]'];
    const figuresOf = ({ header, rows: lines }: Turned) => {
      const { surface, problems } = readSurface(bytesOf(header, lines), 'data/surface.csv', 'camera');
      expect(problems).toEqual([]);
      return ofTables({ surface });
    };
    fc.assert(
      fc.property(turnings(head, rows), ([plain, , turned]) => {
        const figures = figuresOf(plain);
        expect(figures.has('surface.spot-1') && figures.has('hottest_surface')).toBe(true);
        expect(bits(figuresOf(turned))).toEqual(bits(figures));
      }),
      { numRuns: 100 },
    );
  });
});
