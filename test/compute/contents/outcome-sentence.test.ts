import { describe, expect, it } from 'vitest';
import { outcomeSentence } from '../../../src/compute/contents/outcome-sentence.ts';
import type { Figure, FigureMap, RunFigures } from '../../../src/figures/figure.ts';
import { exact } from '../../../src/quantities/uncertainty.ts';

const present = (name: string, value: number, unit: string): readonly [string, Figure] => [
  name,
  { name: name as Figure['name'], quantity: exact(value, unit), from: { columns: [], rows: null } },
];
const run = (...figures: readonly (readonly [string, Figure])[]): RunFigures => ({
  figures: new Map(figures) as FigureMap,
  phases: [],
  inferences: [],
});

describe('compute/contents/outcome-sentence', () => {
  it('tells of a run that throttled when, what of its clock it kept, and how long it was held', () => {
    const throttled = run(
      present('time_to_throttle', 1182, 's'),
      present('sustained_ratio', 0.936, '1'),
      present('held_at_limit', 2496, 's'),
      present('steady_temperature', 83.5, '°C'),
    );
    expect(outcomeSentence(throttled)).toBe(
      'Throttled after 19.7\u00a0min, kept 93.6\u00a0% of its clock, spent 41.6\u00a0min at its temperature limit.',
    );
  });

  it('tells of a run that settled where, and how far below its limit it stayed', () => {
    const settled = run(present('steady_temperature', 59.5, '°C'), present('throttle_headroom', 23.5, 'K'));
    expect(outcomeSentence(settled)).toBe('Settled at 59.5\u00a0°C, 23.5\u00a0K below its throttle limit at the hottest reading.');
  });

  it('tells of one that did not settle that it had not, and the hottest reading', () => {
    const climbing: readonly [string, Figure] = [
      'steady_temperature',
      { name: 'steady_temperature', absent: 'not-steady', why: 'It was still climbing.' },
    ];
    expect(outcomeSentence(run(climbing, present('peak_temperature', 71, '°C')))).toBe(
      'Had not settled when the load ended, hottest reading 71\u00a0°C.',
    );
  });

  it('tells of one whose load was too short to settle that it ended before', () => {
    const short: readonly [string, Figure] = [
      'steady_temperature',
      { name: 'steady_temperature', absent: 'too-short', why: 'The load lasted 14 min.' },
    ];
    expect(outcomeSentence(run(short, present('peak_temperature', 63.5, '°C')))).toBe(
      'Ended before it could settle, hottest reading 63.5\u00a0°C.',
    );
  });

  it('says nothing where no figure tells anything', () => {
    expect(outcomeSentence(run())).toBe('');
  });
});
