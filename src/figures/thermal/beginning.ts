/** How a load began, by its power or its delivered clock: whether that was seen, and until when it was a boost. */
import { quantile } from '../../statistics/quantile.ts';
import { tellingClock } from '../clock/throttle.ts';
import { loadIsLogged } from '../load-changed.ts';
import type { Meter } from '../power/meters.ts';
import { readingsOf } from '../readings.ts';
import { phaseOf, rowsOf, type Soak } from '../soak.ts';

/** Means over this many seconds, or of three readings where these are further apart, … */
const BLOCK = 10;
/** … jump where neighbours differ by more than this share of their median: what leakage adds comes slowly. */
const JUMP = 0.03;
/** A boost is looked for in this share of the load. */
const MOST_SHARE = 1 / 6;
/** Jumps that come later at this share of their rate in the beginning belong to the whole load. */
const AS_DENSE = 0.5;

/** s since the load began, until its last jump there; 0 without one. Null where no channel shows what the load was. */
export function beginningOf(soak: Soak, meter: Meter | null): number | null {
  const load = phaseOf(soak, 'load');
  if (!load || !loadIsLogged(soak, meter)) return null;
  const clock = tellingClock(soak);
  const seen = [meter?.values, clock?.shows === 'delivered' ? clock.values : undefined].filter((values) => values !== undefined);
  return Math.max(0, ...seen.map((values) => lastJump(blocksOf(soak, values, load), (load.to - load.from) * MOST_SHARE)));
}

interface Block {
  /** s since the load began: where the block before ends. */
  readonly from: number;
  /** s since the load began. */
  readonly to: number;
  readonly mean: number;
}

function blocksOf(soak: Soak, values: Float64Array, load: NonNullable<ReturnType<typeof phaseOf>>): Block[] {
  const { t, y } = readingsOf(soak.log, values, rowsOf(load));
  const blocks: Block[] = [];
  for (let i = 0; i < t.length; ) {
    const from = t[i]!;
    let [sum, n] = [0, 0];
    while (i < t.length && (t[i]! < from + BLOCK || n < 3)) {
      sum += y[i++]!;
      n++;
    }
    blocks.push({ from: from - load.from, to: t[Math.min(i, t.length - 1)]! - load.from, mean: sum / n });
  }
  return blocks;
}

/**
 * End of the block that a jump ends in; 0 where they go on later: a load that comes and goes all along has no beginning of its own.
 * The first block may hold the edge of the load itself.
 */
function lastJump(blocks: readonly Block[], within: number): number {
  if (blocks.length < 4) return 0;
  const means = blocks.map(({ mean }) => mean);
  const least = JUMP * Math.abs(quantile(means, 0.5));
  const jumps = blocks.slice(2).filter((_, k) => Math.abs(means[k + 2]! - means[k + 1]!) > least);
  const early = jumps.filter(({ from }) => from <= within);
  const later = jumps.length - early.length;
  return later * MOST_SHARE >= AS_DENSE * early.length * (1 - MOST_SHARE) ? 0 : (early[early.length - 1]?.to ?? 0);
}
