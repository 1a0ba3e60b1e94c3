import { describe, expect, it } from 'vitest';
import type { ComputedRun } from '../../../src/compute/contents/site-contents.ts';
import { evidenceOf } from '../../../src/compute/pages/evidence.ts';
import type { PagePlot } from '../../../src/compute/results.ts';
import { exact } from '../../../src/quantities/uncertainty.ts';

const figure = (name: string) => [name, { name, quantity: exact(1, '1'), from: { columns: ['soc'], rows: [2, 9] } }] as const;
/** A run whose log counts from 300 s before its load to 600 s after its beginning, drawn on 450 px from 20 px. */
const run = (windows: Record<string, readonly [number, number]>): ComputedRun =>
  ({ derived: { figures: new Map(Object.keys(windows).map(figure)) }, summary: { windows } }) as unknown as ComputedRun;
const along = { unit: 'min', seconds: 60, zero: 300, from: -5, to: 10, wide: [20, 450], narrow: [30, 150] } as const;
const trace = [{ id: 'trace', along }] as unknown as PagePlot[];

describe('compute/pages/evidence', () => {
  it('places the stretch that a figure was made from in both drawings', () => {
    const { evidence, windows } = evidenceOf(run({ peak_temperature: [300, 900] }), trace);
    expect(windows).toEqual([{ wide: [170, 300], narrow: [80, 100] }]);
    expect(evidence).toMatchObject([{ window: 0, figure: { anchor: 'peak_temperature' } }]);
  });

  it('gives figures of the same rows one stretch, and a single row the least that can be seen', () => {
    const found = evidenceOf(run({ load_power: [300, 900], mean_clock: [300, 900], peak_power: [420, 420] }), trace);
    expect(found.evidence.map(({ window }) => window)).toEqual([0, 0, 1]);
    expect(found.windows[1]).toEqual({ wide: [230, 3], narrow: [100, 3] });
  });

  it('has nothing to show without a trace', () => {
    expect(evidenceOf(run({ load_power: [300, 900] }), [])).toEqual({ evidence: [], windows: [] });
  });
});
