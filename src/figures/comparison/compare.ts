/** Runs side by side → the figures that only several runs have. */

import type { FigureMap } from '../figure.ts';
import { scalingFigures } from '../scaling/scaling.ts';
import type { Entry } from '../soak.ts';
import type { Compared } from './compared.ts';
import { clockDelta, powerDelta, riseDelta } from './differences.ts';
import { ratioFigures } from './ratios.ts';
import { pairsOf } from './relative.ts';
import { testsOf } from './tests.ts';

/**
 * Derives every figure of a comparison, present with its uncertainty or absent with the reason. Keys are addresses without the
 * comparison's alias: `speedup.fast`, `speedup.fast.<test>`, `scaling_exponent`. What two runs share (an instrument, an ambient, the
 * reference itself) is carried by source, so that it cancels where it should. In whatever order the figures of a run stand, the result
 * has the same bits: a browser reads them sorted by address (`read-published.ts`).
 */
export function compare(comparison: Compared): FigureMap {
  const tests = testsOf([comparison.reference, ...comparison.others]);
  const pairs = pairsOf(comparison, tests);
  const entries: Entry[] = [
    ...pairs.flatMap((pair): Entry[] => [
      ...ratioFigures(pair),
      [`power_delta.${pair.run.alias}`, powerDelta(pair)],
      [`rise_delta.${pair.run.alias}`, riseDelta(pair)],
      [`clock_delta.${pair.run.alias}`, clockDelta(pair)],
    ]),
    ...scalingFigures(comparison, pairs, tests),
  ];
  return new Map(entries);
}
