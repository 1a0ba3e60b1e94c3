import { describe, expect, test } from 'vitest';
import { edgeWarnings } from '../../../../src/compute/steps/runs/edge-warnings.ts';
import { contextOf, every, logOf, phase } from '../../../figures/build.ts';

const log = logOf(every(1, 3600), { meter: { quantity: 'power', values: (t) => (t >= 300 && t < 3000 ? 8 : 2) } });
const warnings = (...phases: ReturnType<typeof phase>[]) => edgeWarnings(log, { context: contextOf({ phases }) }).problems;

describe('compute/steps/runs/edge-warnings', () => {
  test('a phase that begins late is warned of at its line, with the seconds and what to write', () => {
    expect(warnings(phase('load', 360, 3000))).toMatchObject([
      {
        rule: 'phase-off',
        severity: 'warning',
        place: { line: 1 },
        found: 'phase `load` begins 60 s after the load does, which begins 300 s after the first row by the channel `meter`',
        remedy: 'write `load: 300 s .. 3000 s` and fit the phases beside, or say why it is so under `known`, with `phase: load`',
      },
    ]);
  });

  test('a load inside idle is warned of', () => {
    expect(warnings(phase('idle', 0, 3600))).toMatchObject([
      { found: 'phase `idle` holds 2700 s of load, from 300 s after the first row on, by the channel `meter`' },
    ]);
  });

  test('nothing is warned of where the phases fit, or are inferred', () => {
    expect(warnings(phase('idle', 0, 300), phase('load', 300, 3000))).toEqual([]);
    expect(edgeWarnings(log, { context: contextOf({ phases: 'auto' }) }).problems).toEqual([]);
  });

  test('what the author has explained goes to the page and is warned of no more; an explanation of nothing is', () => {
    const place = { file: 'run.md', line: 9, column: 3 };
    const known = [{ phase: 'load', reason: 'The first minute is left out on purpose.', place, found: [] }];
    const late = edgeWarnings({ ...log, known }, { context: contextOf({ phases: [phase('load', 360, 3000)] }) });
    expect(late.problems).toEqual([]);
    expect(late.known).toMatchObject([
      { found: ['phase `load` begins 60 s after the load does, which begins 300 s after the first row by the channel `meter`'] },
    ]);
    const fits = edgeWarnings({ ...log, known }, { context: contextOf({ phases: [phase('load', 300, 3000)] }) });
    expect(fits.problems).toMatchObject([{ rule: 'known-idle', place, found: 'nothing is warned of the phase `load`' }]);
  });
});
