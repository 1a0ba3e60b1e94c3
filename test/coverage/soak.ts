/** A planned run as the figures see it, and beside it what no log tells. */
import type { InstrumentFacts, RunContext } from '../../src/figures/context.ts';
import { derive } from '../../src/figures/derive.ts';
import type { RunFigures } from '../../src/figures/figure.ts';
import type { Log } from '../../src/intake/log.ts';
import type { Accuracy } from '../../src/quantities/accuracy.ts';
import { distributionOf, standardOfHalfWidth } from '../../src/quantities/coverage.ts';
import { contextOf, logOf, phase } from '../figures/build.ts';
import { LIMITS } from '../simulator/larch.ts';
import type { Options, Reading, Truth } from '../simulator/options.ts';
import { simulate } from '../simulator/simulate.ts';
import type { Moment } from '../simulator/truth.ts';
import { AMBIENT_LIMIT, type Errors, type Plan, withoutChance } from './plan.ts';

/** Everything that is true of a run. */
export interface Known {
  readonly options: Options;
  /** What happened, every half second. */
  readonly moments: readonly Moment[];
  /** What would have happened without chance. */
  readonly expected: readonly Moment[];
  readonly truth: Truth;
  readonly throttleAt: number;
  readonly ambientMeasured: boolean;
  /** Time of the last row, s. */
  readonly end: number;
}

/** Simulates a plan and derives its figures. */
export function soakOf(plan: Plan): { readonly known: Known; readonly figures: RunFigures['figures'] } {
  const { options } = plan;
  const { rows, moments, truth } = simulate(options);
  const log = logFrom(rows, plan);
  const expected = simulate(withoutChance(options)).moments;
  const ambientMeasured = plan.statedAmbient === null;
  const known: Known = {
    options,
    moments,
    expected,
    truth,
    throttleAt: plan.throttleAt,
    ambientMeasured,
    end: rows.at(-1)!.elapsed,
  };
  return { known, figures: derive(log, contextFrom(plan)).figures };
}

function logFrom(rows: readonly Reading[], { options, statedAmbient }: Plan): Log {
  const column = (of: (row: Reading) => number) => rows.map(of);
  const room = { quantity: 'ambient', values: column((row) => row.room), instrument: 'thermometer', step: 0.1 } as const;
  return logOf(
    column((row) => row.elapsed),
    {
      soc: { quantity: 'temperature', values: column((row) => row.die), instrument: 'on-die', step: options.limits.dieStep },
      board: { quantity: 'temperature', values: column((row) => row.board), instrument: 'probe', step: 0.1 },
      ...(statedAmbient === null ? { room } : {}),
      core: { quantity: 'clock', values: column((row) => row.clock), shows: 'delivered' },
      flag: { quantity: 'throttle_flag', values: column((row) => (row.throttled ? 1 : 0)) },
      volts: { quantity: 'voltage', values: column((row) => row.voltage), at: 'board input', instrument: 'meter', step: 0.01 },
      amps: { quantity: 'current', values: column((row) => row.current), at: 'board input', instrument: 'meter', step: 0.001 },
    },
  );
}

function contextFrom({ options, errors, throttleAt, statedAmbient }: Plan): RunContext {
  const { idle, load } = options.schedule;
  const coverage: Accuracy['coverage'] = errors === 'limits' ? 'rectangular' : { k: 2 };
  const facts = (id: string, accuracy: InstrumentFacts['accuracy'], resolution: InstrumentFacts['resolution'] = {}) => ({
    [id]: { id, title: id, partOfSpecimen: id === 'on-die', accuracy, resolution },
  });
  const limit = (absolute: number): Accuracy => ({ ofReading: 0, absolute, digits: 0, coverage, text: 'invented' });
  const meter: Accuracy = { ...limit(0), ofReading: LIMITS.meterGain, digits: LIMITS.meterDigits };
  const exactly = (value: number, unit: string) => ({ value, unit, parts: [] });
  const run = runOf(options.seed);
  return contextOf({
    run,
    device: { id: 'larch', throttleAt: { soc: exactly(throttleAt, '°C'), board: exactly(throttleAt, '°C') } },
    instruments: {
      ...facts('on-die', { temperature: limit(LIMITS.die) }),
      ...facts('probe', { temperature: limit(LIMITS.probe) }),
      ...facts('thermometer', { temperature: limit(LIMITS.thermometer) }),
      ...facts('meter', { current: meter, voltage: meter }, { current: exactly(0.001, 'A'), voltage: exactly(0.01, 'V') }),
    },
    phases: [phase('idle', 0, idle), phase('load', idle, idle + load), phase('cool-down', idle + load, Number.POSITIVE_INFINITY)],
    setting: { clock: exactly(options.setting.clock, 'Hz') },
    ...(statedAmbient === null ? {} : { ambient: stated(run, statedAmbient, errors) }),
  });
}

/** Runs of a pair must not share what only a name makes the same. */
function runOf(seed: number): string {
  return `soak-${seed}`;
}

function stated(run: string, value: number, errors: Errors): NonNullable<RunContext['ambient']> {
  const coverage = errors === 'limits' ? 'rectangular' : { k: 2 };
  const source = { id: `run:${run}/ambient`, title: 'stated ambient', dof: null, ...distributionOf(coverage) };
  return { value, unit: '°C', parts: [{ source, share: standardOfHalfWidth(AMBIENT_LIMIT, coverage) }] };
}
