/** Runs that were repeated, and specimens that were made alike: what a few values say of how far they lie apart. */
import type { Figure } from '../../src/figures/figure.ts';
import { repeatFigures } from '../../src/figures/repeats/repeats.ts';
import { random } from '../simulator/random.ts';
import { type Asked, count, emptyTally, type Tally } from './asked.ts';
import { heldAt } from './holds.ts';

export const REPEATED: Readonly<Record<string, Asked>> = {
  repeatability: { words: 'standard deviation with which the load power of a specimen was drawn, run by run', kind: 'mean or fit' },
  specimen_spread: { words: 'standard deviation with which the load powers of specimens were drawn', kind: 'mean or fit' },
};

/** Seeds of repeats lie far from all others. */
const SEEDS = 4_000_000;
/** W. */
const MEAN = 8;

/** Counts over one group of three to six runs of one specimen, and one of three to six specimens, for each seed. */
export function tallyRepeats(seeds: readonly number[]): Tally {
  const tally = emptyTally(Object.keys(REPEATED));
  for (const seed of seeds) {
    const draw = random(SEEDS + seed);
    for (const name of Object.keys(REPEATED)) {
      const deviation = 0.02 + 0.2 * draw.uniform();
      const size = 3 + Math.floor(4 * draw.uniform());
      const runs = Array.from({ length: size }, (_, k) => ({
        run: `r${k}`,
        specimen: name === 'repeatability' ? 'no-1' : `no-${k}`,
        date: `2026-03-0${k + 1}`,
        likeness: 'same',
        figures: new Map([['load_power', powerOf(MEAN + deviation * draw.normal())]]),
      }));
      count(tally, name, heldAt(repeatFigures('larch', runs), `${name}.r0.load_power`, deviation));
    }
  }
  return tally;
}

function powerOf(value: number): Figure {
  return { name: 'load_power', quantity: { value, unit: 'W', parts: [] }, from: { columns: [], rows: null } };
}
