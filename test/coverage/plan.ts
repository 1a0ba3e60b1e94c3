/** What a simulated run of the coverage table looks like: drawn from its seed, so that run 17 is the same run everywhere. */
import { drawInstruments, type Instruments } from '../simulator/instruments.ts';
import { LIMITS, SPECIMENS, SUPPLY } from '../simulator/larch.ts';
import type { Options } from '../simulator/options.ts';
import { type Random, random } from '../simulator/random.ts';

/**
 * How the instruments' data sheets state their errors, and so how the simulated errors are drawn: as limits, rectangular; or as
 * expanded uncertainties (k = 2), normal.
 */
export type Errors = 'limits' | 'k = 2';

export interface Plan {
  readonly options: Options;
  readonly errors: Errors;
  /** Temperature at which the device is stated to throttle, °C; where it does throttle, that of its governor. */
  readonly throttleAt: number;
  /** The ambient as the author states it, °C, where no thermometer logs it. */
  readonly statedAmbient: number | null;
}

/** Half width of a stated ambient, K: its mean over the run lies within, and so does its drift from end to end. */
export const AMBIENT_LIMIT = 0.5;

/** Which pair a run belongs to: the two of a pair were made on one bench, with the same instruments. */
export function pairOf(seed: number): number {
  return Math.ceil(seed / 2);
}

/** Seeds of benches lie far from those of runs. */
const BENCHES = 1_000_000;

/** One run: setting, room and log drawn from the seed, the bench and its instruments from that of its pair. */
export function plan(seed: number, errors: Errors): Plan {
  const draw = random(seed);
  const bench = random(BENCHES + pairOf(seed));
  const pick = <T>(list: readonly T[]): T => list[Math.floor(draw.uniform() * list.length)]!;
  const between = (low: number, high: number) => low + (high - low) * draw.uniform();
  const steps = [0.1, 0.5, 1];
  const limits = { ...LIMITS, dieStep: steps[Math.floor(bench.uniform() * steps.length)]! };
  const hot = draw.uniform() < 0.25;
  const stated = draw.uniform() < 0.25;
  const warming = stated ? errorsOf(draw, errors).within(AMBIENT_LIMIT) : between(-1, 2);
  const room = { start: between(18, 26), warming, wander: between(0.01, 0.06) };
  const options: Options = {
    seed,
    specimen: hot ? SPECIMENS['no-1'] : pick([SPECIMENS['no-1'], SPECIMENS['no-2']]),
    setting: hot ? { clock: 2.6e9, voltageOffset: 0.08 } : { clock: pick([1.6e9, 1.8e9, 2.0e9, 2.2e9]), voltageOffset: 0 },
    schedule: { idle: pick([300, 600]), load: pick([2700, 3600, 5400]), coolDown: pick([0, 300]) },
    room,
    supply: SUPPLY,
    every: pick([0.5, 1, 2, 5]),
    limits,
    instruments: instruments(bench, limits, errors),
    workload: { wander: between(0.002, 0.012), memory: pick([5, 15, 30, 60]) },
  };
  const ambient = room.start + room.warming / 2 + errorsOf(draw, errors).within(AMBIENT_LIMIT);
  const throttleAt = hot ? options.specimen.governor.limit : pick([50, 60, 70]);
  return { options, errors, throttleAt, statedAmbient: stated ? ambient : null };
}

function instruments(draw: Random, limits: Options['limits'], errors: Errors): Instruments {
  return drawInstruments(errorsOf(draw, errors), limits);
}

/** A generator whose `within` draws an error of that stated size by the kind of statement. */
export function errorsOf(draw: Random, errors: Errors): Random {
  return errors === 'limits' ? draw : { ...draw, within: (expanded) => (expanded / 2) * draw.normal() };
}

/**
 * The same run without chance: no wandering of workload and room, and the truth itself. Its means are what the readings of the
 * run scatter about.
 */
export function withoutChance(options: Options): Options {
  return { ...options, workload: { wander: 0, memory: 1 }, room: { ...options.room, wander: 0 } };
}
