/** Energy of the whole log and of each phase: by a running counter where there is one, else the integral of power. */
import type { Channel } from '../../intake/log.ts';
import type { Part } from '../../quantities/quantity.ts';
import { absent, isReason, type Of, type Reason } from '../absent.ts';
import { fromOf, type Measured, placeOf } from '../average.ts';
import type { Figure } from '../figure.ts';
import type { Span } from '../gaps.ts';
import { counted } from '../in-words.ts';
import { figureOf } from '../present.ts';
import { readingsOf } from '../readings.ts';
import { channelsOf, type Entry, type Rows, rowsOf, type Soak } from '../soak.ts';
import { errorsOf, quantityOf, samplingPart, stepOf } from '../sources.ts';
import { acrossResets } from './counter-resets.ts';
import { integralOf, type Piece, piecesOf } from './integral.ts';
import type { Meter } from './meters.ts';

interface Stretch {
  /** '' for the whole log, else `.phase`. */
  readonly suffix: string;
  readonly words: string;
  readonly rows: Rows;
  /** Of a phase; null for the whole log. */
  readonly span: Span | null;
  /** What its scatter is told by: the phases and what lies between them. */
  readonly pieces: readonly Piece[];
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
  const whole: Stretch = {
    suffix: '',
    words: 'the whole log',
    rows: { from: 0, to: soak.log.rows },
    span: null,
    pieces: piecesOf(soak),
  };
  const [primary, ...others] = accounts;
  if (!primary)
    return [
      ['energy', absent('energy', why ?? { absent: 'no-channel', why: 'The log has neither an energy nor a power channel.' })],
    ];
  const phases = soak.phases.map((phase) => ({
    suffix: `.${phase.name}`,
    words: `the ${phase.name} phase`,
    rows: rowsOf(phase),
    span: phase,
    pieces: [{ name: phase.name, rows: rowsOf(phase), span: phase }],
  }));
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

/**
 * Energy of a stretch between two instants, by the primary account of the run: a counter where there is one, else the integral of
 * `meter`. Null where there is neither.
 */
export function energyWithin(
  soak: Soak,
  meter: Meter | null,
  { rows, ...span }: Span & { readonly rows: Rows },
  address: string,
): Measured | Reason | null {
  const [account] = accountsOf(soak, meter ? [meter] : []);
  if (!account) return null;
  const pieces = [{ name: null, rows, span }];
  const stretch: Stretch = { suffix: '', words: 'the time that the task took', rows, span, pieces };
  if (account.counter) return counterTotal(soak, account.counter, stretch, address);
  return account.meter && integralOf(soak, account.meter, stretch, address);
}

function energyOf(soak: Soak, account: Account, stretch: Stretch, address: string): Figure {
  const { counter, meter } = account;
  const byMeter = meter && integralOf(soak, meter, stretch, address);
  const byCounter = counter && counterTotal(soak, counter, stretch, address);
  if (byCounter && !isReason(byCounter)) {
    const beside: Of = byMeter && !isReason(byMeter) ? { integral_of_power_j: byMeter.quantity.value } : {};
    return figureOf('energy', soak, byCounter, { of: { over: stretch.words, ...beside }, inferred: byCounter.inferred });
  }
  const outcome = byMeter ??
    byCounter ?? { absent: 'no-channel' as const, why: 'The log has neither an energy nor a power channel.' };
  const over: Of = { over: stretch.words };
  if (isReason(outcome)) return absent('energy', { ...outcome, of: { ...outcome.of, ...over } });
  return figureOf('energy', soak, outcome, { of: over, inferred: meter?.inferred ?? [] });
}

/**
 * Sum of the counter's increases; a fall is a reset, and the step across it is guessed from the steps about it. At the edges of a phase the
 * counter is read between the two rows about the edge, by a straight line.
 */
function counterTotal(soak: Soak, counter: Channel, { rows, words, span }: Stretch, address: string): Counted | Reason {
  const readings = readingsOf(soak.log, counter.values, rows);
  if (readings.y.length < 2)
    return { absent: 'no-readings', why: `The counter ${counter.name} has fewer than two readings in ${words}.` };
  const edges = span ? edgeShares(soak.log.time.seconds, counter.values, rows, span) : 0;
  const { counted: sure, guessed, resets } = acrossResets(readings);
  const total = edges + sure + (guessed?.value ?? 0);
  const step = stepOf(soak.context, counter);
  const { parts, stated } = errorsOf(soak.context, counter, total);
  const gain = parts.filter((part) => part.source.id.endsWith('/gain'));
  const ends = samplingPart(soak.context, address, (step / Math.sqrt(12)) * Math.sqrt(2 * (resets + 1)), null);
  if (resets > 0 && !guessed)
    return {
      absent: 'not-observed',
      why: `The counter ${counter.name} was reset in ${words}, and too few of its steps tell how much it may have gained across that.`,
      bound: { relation: '>', value: edges + sure - 2 * Math.abs(ends.share), unit: counter.unit },
    };
  const across: Part[] = guessed
    ? [
        {
          source: {
            id: `run:${soak.context.run}/${address}/resets`,
            title: `steps of the counter across resets in ${address}`,
            dof: guessed.dof,
          },
          share: guessed.u,
        },
      ]
    : [];
  const through: Of = readings.gaps > 0 ? { gaps: `${counted(readings.gaps, 'gap')}, counted through` } : {};
  return {
    quantity: quantityOf(total, counter.unit, [...gain, ends, ...across], { stated, step }),
    from: fromOf(soak, [counter], readings),
    of: { ...placeOf(counter), method: 'running counter, last less first', ...through },
    inferred:
      resets === 0
        ? []
        : [
            `The counter ${counter.name} fell ${counted(resets, 'time')}: taken as a reset, and the step across it as the mean of the steps about it.`,
          ],
  };
}

type Counted = Measured & { readonly inferred: readonly string[] };

/** What the counter gained between the edges of a phase and the phase's first and last row. */
function edgeShares(seconds: Float64Array, values: Float64Array, rows: Rows, span: Span): number {
  const share = (row: number, from: number, to: number): number => {
    const increase = values[row]! - values[row - 1]!;
    const part = (to - from) / (seconds[row]! - seconds[row - 1]!);
    return increase > 0 && part >= 0 && part <= 1 ? part * increase : 0;
  };
  return share(rows.from, span.from, seconds[rows.from]!) + share(rows.to, seconds[rows.to - 1]!, span.to);
}
