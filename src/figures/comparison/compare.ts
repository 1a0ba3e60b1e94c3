/** Runs side by side, by setting → the figures that only several runs have. */

import type { Figure } from '../figure.ts';
import { scalingFigures } from '../scaling/scaling.ts';
import type { Compared } from './compared.ts';
import { couldTell } from './could-tell.ts';
import { clockDelta, powerDelta, riseDelta } from './differences.ts';
import { ratioFigures } from './ratios.ts';
import { pairsOf } from './relative.ts';
import { settled } from './settings.ts';
import type { Tested } from './tested.ts';
import { testsOf } from './tests.ts';
import { withVerdicts } from './verdicts.ts';

/**
 * Derives every figure of a comparison, present with its uncertainty or absent with the reason. Keys are addresses without the
 * comparison's alias: `speedup.fast`, `speedup.fast.<test>`, `scaling_exponent`. A setting with several runs has their mean, and verdicts
 * rest on how runs of one setting lie apart (`settings.ts`, `verdicts.ts`). What two settings share (an instrument, an ambient, the
 * reference itself) is carried by source, so that it cancels where it should. In whatever order the figures of a run stand, the result
 * has the same bits: a browser reads them sorted by address (`read-figures-json.ts`).
 */
export function compare(comparison: Compared): ReadonlyMap<string, Figure> {
  const together = settled(comparison);
  const settings = [together.reference, ...together.others];
  const tests = testsOf(settings);
  const pairs = pairsOf(together, tests);
  const all = withVerdicts([
    ...pairs.flatMap((pair): Tested[] => [...ratioFigures(pair), powerDelta(pair), riseDelta(pair), clockDelta(pair)]),
    ...scalingFigures(comparison.id, together, pairs, tests),
  ]);
  return new Map([...all.map(({ address, figure }) => [address, figure] as const), ...couldTell(all, settings.length)]);
}
