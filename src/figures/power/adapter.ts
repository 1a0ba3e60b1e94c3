/** What an adapter hands on of the power that it takes from the wall. */
import type { Channel } from '../../intake/log.ts';
import { divide } from '../../quantities/arithmetic.ts';
import { seriesMean } from '../../statistics/series-mean.ts';
import { absent, isReason, noPhase, type Reason } from '../absent.ts';
import { fromOf, gapsOf, type Measured } from '../average.ts';
import type { Figure } from '../figure.ts';
import { orRefused } from '../joined.ts';
import { valuesBeside } from '../origin.ts';
import { present } from '../present.ts';
import { readingsOf } from '../readings.ts';
import { phaseOf, rowsOf, type Soak } from '../soak.ts';
import { intervalOf, quantityOf, samplingPart } from '../sources.ts';
import { type Meter, meterWords } from './meters.ts';

/** Behind the adapter, the nearest place first. */
const BEHIND = ['adapter output', 'board input'] as const;

/** Mean power behind the adapter over mean power at the wall, in the same rows of the load. */
export function adapterEfficiency(soak: Soak, meters: readonly Meter[]): Figure {
  const ratio = efficiency(soak, meters);
  return isReason(ratio) ? absent('adapter_efficiency', ratio) : present('adapter_efficiency', soak, ratio);
}

function efficiency(soak: Soak, meters: readonly Meter[]): Measured | Reason {
  const wall = meters.find(({ at }) => at === 'wall');
  const behind = BEHIND.flatMap((place) => meters.filter(({ at }) => at === place))[0];
  if (!wall || !behind) {
    const why = 'It takes a power at the wall and one at the adapter output or board input; the log does not have both.';
    return { absent: 'no-channel', why };
  }
  const phase = phaseOf(soak, 'load');
  if (!phase) return noPhase(soak, 'load');
  const rows = rowsOf(phase);
  const beside = valuesBeside(soak.log, { values: behind.values, ...logOf(behind) }, logOf(wall));
  const both = wall.values.map((value, row) => (Number.isNaN(beside[row]!) ? Number.NaN : value));
  const taken = readingsOf(soak.log, both, rows);
  const given = readingsOf(
    soak.log,
    beside.map((value, row) => (Number.isNaN(both[row]!) ? Number.NaN : value)),
    rows,
  );
  if (taken.y.length < 2) return { absent: 'no-readings', why: 'Fewer than two rows of the load have both powers.' };
  const [input, output] = [taken, given].map(
    ({ y, weights, observed }) => seriesMean(y, observed > 0 ? weights : undefined).mean,
  ) as [number, number];
  if (!(input > 0)) return { absent: 'out-of-range', why: 'No power was taken from the wall.' };
  const quantity = ratioOf(soak, { wall, behind, taken, given, input, output });
  if (isReason(quantity)) return quantity;
  const interval = intervalOf(quantity);
  if (interval && interval[0] > 1) {
    const why = `More power was measured at the ${behind.at} than at the wall: one of the two meters, or one of the places, is wrong.`;
    return { absent: 'out-of-range', why };
  }
  const of = { ...meterWords(behind), at: `${behind.at} over wall`, phase: 'load', ...gapsOf(taken) };
  return { quantity, from: fromOf(soak, [...wall.channels, ...behind.channels], taken), of };
}

/** The log of what a meter reads. */
function logOf({ channels: [first] }: Meter): Pick<Channel, 'log'> {
  return first?.log === undefined ? {} : { log: first.log };
}

interface Both {
  readonly wall: Meter;
  readonly behind: Meter;
  readonly taken: ReturnType<typeof readingsOf>;
  readonly given: ReturnType<typeof readingsOf>;
  readonly input: number;
  readonly output: number;
}

/** Errors that the two meters share cancel by source. Loads that swing move both powers: the scatter is that of what one tells not of the other. */
function ratioOf(soak: Soak, { wall, behind, taken, given, input, output }: Both): Measured['quantity'] | Reason {
  const phase = rowsOf(phaseOf(soak, 'load')!);
  const meterOnly = (meter: Meter, value: number) => {
    const errors = meter.errorsAt(value, phase);
    return quantityOf(value, 'W', errors.parts, { stated: errors.stated, step: 0 });
  };
  const ratio = orRefused(divide(meterOnly(behind, output), meterOnly(wall, input)));
  if (isReason(ratio)) return ratio;
  const left = given.y.map((value, i) => value - (output / input) * taken.y[i]!);
  const { u, dof } = seriesMean(left, given.observed > 0 ? given.weights : undefined);
  const hidden = Math.hypot(behind.grain, (output / input) * wall.grain) / Math.sqrt(12);
  const share = Math.max(u, hidden) / input;
  const sampling = samplingPart(soak.context, 'adapter_efficiency', share, u > hidden && Number.isFinite(dof) ? dof : null);
  return quantityOf(ratio.value, '1', [...(ratio.parts ?? []), sampling], { stated: !ratio.repeatabilityOnly, step: 0 });
}
