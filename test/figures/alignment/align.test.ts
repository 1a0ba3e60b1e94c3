import { describe, expect, test } from 'vitest';
import { type Alignment, alignLog } from '../../../src/figures/alignment/align.ts';
import { shiftByEdges } from '../../../src/figures/alignment/by-edges.ts';
import { edgesOf } from '../../../src/figures/alignment/edges.ts';
import { every, logOf } from '../build.ts';
import { logsOf, OFF, pairOf } from './pairs.ts';

const BY_EDGE = { by: 'load edge' } as const;

function aligned(outcome: ReturnType<typeof alignLog>): Alignment {
  if (typeof outcome === 'string') throw new Error(outcome);
  return outcome;
}

/** Of the meter's clock: what was added to it, and by how much that may be off. */
function found(seed: number): { readonly off: number; readonly half: number } {
  const [device, meter] = logsOf(pairOf(seed));
  const { at, u } = aligned(alignLog({ name: 'device', log: device }, { name: 'meter', log: meter, offset: BY_EDGE }));
  return { off: at - (meter.time.start! - device.time.start!) - OFF, half: u * Math.sqrt(3) };
}

describe('figures/alignment', () => {
  // Known truth, simulated: the clocks lie 37 s apart, the meter cuts its seconds off.
  test('two clocks 37 s apart are brought together by the edges of the load, to a second on twenty pairs, within the limits told', () => {
    const pairs = Array.from({ length: 20 }, (_, seed) => found(seed + 1));
    expect(pairs.filter(({ off }) => Math.abs(off) <= 1)).toHaveLength(20);
    expect(pairs.filter(({ off, half }) => Math.abs(off) <= half)).toHaveLength(20);
    expect(Math.max(...pairs.map(({ half }) => half))).toBeLessThan(2.5);
  });

  test('clocks that both tell the instant are taken as they are, and the load says by how much they lie apart', () => {
    const [device, meter] = logsOf(pairOf(1));
    const { at, u, statement, edgesApart } = aligned(alignLog({ name: 'device', log: device }, { name: 'meter', log: meter }));
    expect(at).toBe(meter.time.start! - device.time.start!);
    expect(u).toBe(0);
    expect(statement).toContain('taken to agree');
    expect(Math.abs(edgesApart! + OFF)).toBeLessThan(2);
  });

  test('a stated offset is added to a clock that tells the instant, and its limits count as rectangular (JCGM 100:2008, 4.3.7)', () => {
    const [device, meter] = logsOf(pairOf(1));
    const offset = { by: 'offset', seconds: 37, u: 1 / Math.sqrt(3), distribution: 'rectangular', text: '37 ± 1 s' } as const;
    const told = aligned(alignLog({ name: 'device', log: device }, { name: 'meter', log: meter, offset }));
    expect(told.at).toBe(meter.time.start! - device.time.start! + 37);
    expect(told).toMatchObject({ u: 1 / Math.sqrt(3), distribution: 'rectangular' });
    expect(told.edgesApart).toBeUndefined();
  });

  test('an edge behind empty cells lies after the last reading of its channel, not after the empty row before it', () => {
    const log = logOf(every(1, 1000), {
      input: { quantity: 'power', values: (t) => (t > 280 && t < 300 ? Number.NaN : t >= 300 && t < 800 ? 9 : 3) },
    });
    expect(edgesOf(log)!.edges).toEqual([
      { kind: 'begins', from: 279.5, to: 301 },
      { kind: 'ends', from: 798.5, to: 801 },
    ]);
  });

  const soak = (from: number, to: number, loads: readonly (readonly [number, number])[]) =>
    logOf(
      every(1, to - from).map((t) => t),
      { input: { quantity: 'power', values: (t) => (loads.some(([a, b]) => t + from >= a && t + from < b) ? 9 : 3) } },
    );

  test('a start is when the first row stands after that of the first log; an offset needs instants; without any word there is no clock', () => {
    const first = { name: 'device', log: soak(0, 1000, [[300, 800]]) };
    const log = soak(100, 1000, [[300, 800]]);
    const offset = { by: 'start', seconds: 100, u: 0, text: '100 s' } as const;
    expect(aligned(alignLog(first, { name: 'meter', log, offset })).at).toBe(100);
    expect(alignLog(first, { name: 'meter', log, offset: { ...offset, by: 'offset' } })).toBe('undated');
    const [device, meter] = logsOf(pairOf(1));
    expect(aligned(alignLog({ name: 'device', log: device }, { name: 'meter', log: meter, offset })).at).toBe(100);
    expect(alignLog(first, { name: 'meter', log })).toBe('clocks');
    expect(alignLog(first, { name: 'meter', log, offset: { ...offset, seconds: 5000 } })).toBe('apart');
    expect(alignLog(first, { name: 'meter', log: soak(0, 1000, []), offset: BY_EDGE })).toBe('no-edges');
  });

  test('of two equal loads in one log and one of them in the other, nobody can tell which it is', () => {
    const loads = [
      [500, 1500],
      [2500, 3500],
    ] as const;
    const first = { name: 'device', log: soak(0, 4000, loads) };
    expect(alignLog(first, { name: 'meter', log: soak(300, 1900, loads), offset: BY_EDGE })).toBe('ambiguous');
    expect(aligned(alignLog(first, { name: 'meter', log: soak(300, 3900, loads), offset: BY_EDGE })).at).toBeCloseTo(300, 0);
  });

  test('every further edge narrows the shift; edges of another kind say nothing', () => {
    const edge = (kind: 'begins' | 'ends', from: number, to: number) => ({ kind, from, to });
    const one = shiftByEdges([edge('begins', 10, 12)], [edge('begins', 3, 4)]);
    expect(one).toEqual({ from: 6, to: 9, agree: 1 });
    const two = shiftByEdges([edge('begins', 10, 12), edge('ends', 50, 51)], [edge('begins', 3, 4), edge('ends', 42.5, 43)]);
    expect(two).toEqual({ from: 7, to: 8.5, agree: 2 });
    expect(shiftByEdges([edge('begins', 10, 12)], [edge('ends', 3, 4)])).toBe('none');
  });
});
