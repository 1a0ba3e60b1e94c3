import { describe, expect, test } from 'vitest';
import { align, timeTitle } from '../../../../src/plots/drawing/lines/align.ts';
import { loggedRun } from '../../../../src/plots/trace/logged-run.ts';
import { type Shape, subject } from '../../subjects.ts';

const run = (alias: string, shape: Shape = {}) => loggedRun(subject(alias, shape));

describe('plots/drawing/lines/align', () => {
  test('runs are aligned where their loads begin, in minutes', () => {
    const alignment = align([run('rated', { idle: 300 }), run('fast', { idle: 120, load: 3000 })]);
    expect(alignment).toEqual({ origins: [300, 120], atLoad: true, time: { unit: 'min', seconds: 60 }, from: -5, to: 55 });
    expect(timeTitle(alignment)).toBe('Time since load start (min)');
  });

  test('a run without a load phase puts all at their first rows', () => {
    const alignment = align([run('rated'), run('bare', { noPhases: true })]);
    expect(alignment).toMatchObject({ origins: [0, 0], atLoad: false, from: 0 });
    expect(timeTitle(alignment)).toBe('Time since the first row (min)');
  });

  test('a load phase that lies outside the log does not count', () => {
    const rated = subject('rated');
    const phases = rated.derived.phases.map((phase) => (phase.name === 'load' ? { ...phase, toRow: phase.fromRow } : phase));
    expect(align([loggedRun({ ...rated, derived: { ...rated.derived, phases } })])).toMatchObject({ origins: [0], atLoad: false });
  });

  test('short logs are in seconds, long ones in hours', () => {
    expect(align([run('short', { idle: 60, load: 120, coolDown: 60 })]).time.unit).toBe('s');
    expect(align([run('long', { load: 50_000, step: 100 })]).time.unit).toBe('h');
  });
});
