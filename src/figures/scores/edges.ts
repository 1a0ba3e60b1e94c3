/** What a lag of the power behind the stated starts and ends of repeats leaves open. */
import type { Part } from '../../quantities/quantity.ts';
import { mean } from '../../statistics/mean.ts';
import { isReason, type Reason } from '../absent.ts';
import { plain } from '../in-words.ts';
import { stepIn } from '../origin.ts';
import type { Meter } from '../power/meters.ts';
import type { Soak } from '../soak.ts';
import { type Lag, lagOf, PowerInTime, riseOf } from './edge-lag.ts';
import type { Scores } from './score-table.ts';
import { type Window, windowsOf } from './windows.ts';

/** The power of a run, with all repeats that its log covers. */
export interface Edges {
  readonly power: PowerInTime;
  readonly windows: readonly Window[];
  /** s between the meter's rows. */
  readonly row: number;
  /** By all repeats of all tests. */
  readonly lag: Lag;
}

/** Null where there is no meter. */
export function edgesOf(soak: Soak, scores: Scores | undefined, meter: Meter | Reason | null): Edges | null {
  if (!scores || meter === null || isReason(meter)) return null;
  const windows = scores.tests.flatMap((test) => {
    const found = windowsOf(soak, test);
    return isReason(found) ? [] : found;
  });
  if (windows.length === 0) return null;
  const power = new PowerInTime(soak.log.time.seconds, meter.values);
  const row = stepIn(soak.log, meter.channels[0]?.log) ?? 0;
  return { power, windows, row, lag: lagOf(power, windows, row) };
}

export interface TestEdges {
  /** J of one repeat. */
  readonly part: Part;
  /** J: the lag times the rise of the power. */
  readonly moved: number;
  /** s: mean length of the repeats. */
  readonly length: number;
  /** `4 s behind the stated starts and ends`. */
  readonly words: string;
}

/**
 * Lag times rise, as limits to both sides: whether the meter lags, two clocks differ or the device itself is late, the log doesn't tell. The larger
 * of the lags that the test's own repeats and those of all tests show. One source in all figures of the run. Null where no lag shows.
 */
export function edgesOfTest(soak: Soak, { power, windows, row, lag }: Edges, own: readonly Window[]): TestEdges | null {
  const found = lagOf(power, own, row);
  const larger = Math.abs(found.seconds) > Math.abs(lag.seconds) ? found : lag;
  if (larger.seconds === 0) return null;
  const most = Math.abs(larger.seconds) + larger.step;
  const moved = most * riseOf(power, own, windows, larger);
  if (!(moved > 0)) return null;
  const source = {
    id: `run:${soak.context.run}/edges-of-repeats`,
    title: 'lag between the power and the stated times of the repeats',
    dof: null,
  };
  const words = `${plain(Number(Math.abs(larger.seconds).toPrecision(2)))} s ${larger.seconds > 0 ? 'behind' : 'ahead of'} the stated starts and ends`;
  return { part: { source, share: moved / Math.sqrt(3) }, moved, length: mean(own.map(({ from, to }) => to - from)), words };
}
