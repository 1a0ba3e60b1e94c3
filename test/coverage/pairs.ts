/** Two simulated soaks made on one bench: what their comparison says of the difference. */
import { compare } from '../../src/figures/comparison/compare.ts';
import { alone } from '../../src/figures/comparison/compared.ts';
import type { Figure } from '../../src/figures/figure.ts';
import { type Asked, count, emptyTally, type Tally, TWIN } from './asked.ts';
import { heldAt } from './holds.ts';
import type { Known } from './soak.ts';
import { TRUTHS } from './truths.ts';

export interface Soaked {
  readonly seed: number;
  readonly known: Known;
  readonly figures: ReadonlyMap<string, Figure>;
}

interface PairTruth extends Asked {
  /** Name of the single run's figure. */
  readonly of: string;
}

export const PAIRS: Readonly<Record<string, PairTruth>> = {
  power_delta: {
    words: `difference of the mean powers of two loads, read by one meter${TWIN}`,
    kind: 'mean or fit',
    of: 'load_power',
  },
  rise_delta: {
    words: `difference of the rises of two loads, read by one sensor and one thermometer${TWIN}`,
    kind: 'mean or fit',
    of: 'temperature_rise',
  },
  clock_delta: {
    words: `difference of the mean clocks of two loads, one of which at least throttled${TWIN}`,
    kind: 'mean or fit',
    of: 'mean_clock',
  },
};

/** Counts for two runs of a pair, the first as the reference. */
export function tallyPair(first: Soaked, second: Soaked): Tally {
  const tally = emptyTally(Object.keys(PAIRS));
  const [reference, other] = [first, second].map(({ seed, figures }, k) => ({
    alias: ['first', 'second'][k]!,
    run: `soak-${seed}`,
    device: 'larch',
    specimen: 'no-1',
    figures,
  }));
  const figures = compare({ id: 'pair', reference: alone(reference!), others: [alone(other!)] });
  for (const [name, { of }] of Object.entries(PAIRS)) {
    const [base, own] = [truthOf(of, first), truthOf(of, second)];
    const truth = base === null || own === null ? null : own - base;
    const known = of === 'mean_clock' && !throttled(first) && !throttled(second) ? null : truth;
    count(tally, name, heldAt(figures, `${name}.second`, known));
  }
  return tally;
}

/** A load that did not throttle ran at its setting, exactly. */
function truthOf(name: string, { known }: Soaked): number | null {
  if (name === 'mean_clock' && known.truth.firstThrottle === null) return known.options.setting.clock;
  return TRUTHS[name]!.of(known, 'die');
}

function throttled({ known }: Soaked): boolean {
  return known.truth.firstThrottle !== null;
}
