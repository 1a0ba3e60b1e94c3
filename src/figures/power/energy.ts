/** Energy of the whole log and of each phase: by a running counter where there is one, else the integral of power. */
import type { Channel } from '../../intake/log.ts';
import { absent, isReason, type Of, type Reason } from '../absent.ts';
import { fromOf, gapsOf, type Measured, placeOf } from '../average.ts';
import type { Figure } from '../figure.ts';
import { counted, duration } from '../in-words.ts';
import { figureOf } from '../present.ts';
import { readingsOf } from '../readings.ts';
import { channelsOf, type Entry, type Rows, rowsOf, type Soak } from '../soak.ts';
import { errorsOf, quantityOf, samplingPart, scaled, stepOf } from '../sources.ts';
import { type Meter, meterMean } from './meters.ts';

interface Stretch {
  /** '' for the whole log, else `.phase`. */
  readonly suffix: string;
  readonly words: string;
  readonly rows: Rows;
}

/** What an energy is told from: a counter, a meter, or both. */
interface Account {
  readonly name: string;
  readonly counter: Channel | null;
  readonly meter: Meter | null;
}

/** `energy` and `energy.<phase>` of the primary, `energy.<channel>` of the others over the whole log. */
export function energyFigures(soak: Soak, meters: readonly Meter[], why: Reason | null): Entry[] {
  const accounts = accountsOf(soak, meters);
  const whole: Stretch = { suffix: '', words: 'the whole log', rows: { from: 0, to: soak.log.rows } };
  const [primary, ...others] = accounts;
  if (!primary)
    return [
      ['energy', absent('energy', why ?? { absent: 'no-channel', why: 'The log has neither an energy nor a power channel.' })],
    ];
  const phases = soak.phases.map((phase) => ({ suffix: `.${phase.name}`, words: `the ${phase.name} phase`, rows: rowsOf(phase) }));
  return [
    ...[whole, ...phases].map(
      (stretch): Entry => [`energy${stretch.suffix}`, energyOf(soak, primary, stretch, `energy${stretch.suffix}`)],
    ),
    ...others.map((account): Entry => [`energy.${account.name}`, energyOf(soak, account, whole, `energy.${account.name}`)]),
  ];
}

/** Counters first, each with the meter at the same place beside it; then the meters that no counter goes with. */
function accountsOf(soak: Soak, meters: readonly Meter[]): Account[] {
  const counters = channelsOf(soak.log, 'energy').map((counter) => ({
    name: counter.name,
    counter,
    meter: meters.find((meter) => meter.at === (counter.at ?? null)) ?? null,
  }));
  const used = new Set(counters.map((account) => account.meter));
  return [...counters, ...meters.filter((meter) => !used.has(meter)).map((meter) => ({ name: meter.name, counter: null, meter }))];
}

function energyOf(soak: Soak, account: Account, stretch: Stretch, address: string): Figure {
  const { counter, meter } = account;
  const byMeter = meter && integral(soak, meter, stretch, address);
  const byCounter = counter && counterTotal(soak, counter, stretch, address);
  if (byCounter && !isReason(byCounter)) {
    const beside: Of = byMeter && !isReason(byMeter) ? { integral_of_power_j: byMeter.quantity.value } : {};
    return figureOf('energy', soak, byCounter, { of: { over: stretch.words, ...beside }, inferred: byCounter.inferred });
  }
  const outcome = byMeter ??
    byCounter ?? { absent: 'no-channel' as const, why: 'The log has neither an energy nor a power channel.' };
  return figureOf('energy', soak, outcome, { of: { over: stretch.words }, inferred: meter?.inferred ?? [] });
}

/** Mean power times the time that was observed: the trapezoidal rule with gaps left out. */
function integral(soak: Soak, meter: Meter, { rows, words }: Stretch, address: string): Measured | Reason {
  const mean = meterMean(soak, meter, rows, address);
  if (isReason(mean)) return { ...mean, why: `The power of ${meter.name} has fewer than two readings in ${words}.` };
  const { quantity, readings } = mean;
  return {
    quantity: quantityOf(quantity.value * readings.observed, 'J', scaled(quantity.parts ?? [], readings.observed), {
      stated: quantity.repeatabilityOnly !== true,
      step: 0,
    }),
    from: mean.from,
    of: { ...mean.of, method: 'integral of power, trapezoidal rule', observed: duration(readings.observed) },
  };
}

/** Sum of the counter's increases; a fall is a reset, whose step is left out and said. */
function counterTotal(
  soak: Soak,
  counter: Channel,
  { rows, words }: Stretch,
  address: string,
): (Measured & { inferred: readonly string[] }) | Reason {
  const readings = readingsOf(soak.log, counter.values, rows);
  if (readings.y.length < 2)
    return { absent: 'no-readings', why: `The counter ${counter.name} has fewer than two readings in ${words}.` };
  let total = 0;
  let resets = 0;
  for (let i = 1; i < readings.y.length; i++) {
    const increase = readings.y[i]! - readings.y[i - 1]!;
    if (increase < 0) resets++;
    else total += increase;
  }
  const step = stepOf(soak.context, counter);
  const { parts, stated } = errorsOf(soak.context, counter, total);
  const gain = parts.filter((part) => part.source.id.endsWith('/gain'));
  const ends = samplingPart(soak.context, address, (step / Math.sqrt(12)) * Math.sqrt(2 * (resets + 1)), null);
  const { gaps, ...rest } = gapsOf(readings);
  return {
    quantity: quantityOf(total, counter.unit, [...gain, ends], { stated, step }),
    from: fromOf(soak, [counter], readings),
    of: {
      ...placeOf(counter),
      method: 'running counter, last less first',
      ...rest,
      ...(gaps ? { gaps: `${counted(readings.gaps, 'gap')}, counted through` } : {}),
    },
    inferred:
      resets === 0
        ? []
        : [`The counter ${counter.name} fell ${counted(resets, 'time')}: taken as a reset, the step across it is left out.`],
  };
}
