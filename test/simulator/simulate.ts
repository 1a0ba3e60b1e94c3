/**
 * A small computer under soak, simulated: die and board as two thermal masses in a room that warms, a governor, leakage,
 * a supply that sags and ripples, instruments with errors of their own, and a logger that misses things. Pure: equal
 * options give equal rows. All of it is invented; the physics is that of `two-mass.ts` and `power.ts`.
 */
import { atEase, type GovernorState, govern } from './governor.ts';
import { drawInstruments, type Instruments, read } from './instruments.ts';
import { wandering } from './noise.ts';
import type { Options, Reading, Restart, Simulated } from './options.ts';
import { diePower, type Operation } from './power.ts';
import { type Random, random } from './random.ts';
import { balance } from './steady.ts';
import { type Moment, truthOf } from './truth.ts';
import { advanceBy, type Temperatures } from './two-mass.ts';

/** Seconds by which the device itself is advanced. */
export const STEP = 0.5;
/** Seconds between two decisions of the governor. */
const DECISION = 1;
/** Correlation time of the room's wandering, s: doors and sunshine, not draughts. */
const ROOM_MEMORY = 300;

/** Simulates one run: the rows that its log would hold, and the truth behind them. */
export function simulate(options: Options): Simulated {
  const { idle, load, coolDown } = options.schedule;
  const noise = random(options.seed);
  const instruments = options.instruments ?? drawInstruments(noise, options.limits);
  const device = start(options, instruments, noise);
  const rows: Reading[] = [];
  const moments: Moment[] = [];
  const steps = Math.round((idle + load + coolDown) / STEP);
  const every = Math.round(options.every / STEP);
  for (let k = 0; k < steps; k++) {
    const moment = device(k * STEP);
    moments.push(moment);
    if (k % every === 0 && !silent(options, moment.elapsed)) rows.push(reading(options, instruments, moment, noise));
  }
  return { rows, moments, truth: truthOf(options, moments, instruments) };
}

/** The device, cold but for its idle balance; each call answers with one moment and advances by a step. */
function start(options: Options, instruments: Instruments, noise: Random): (elapsed: number) => Moment {
  const { specimen } = options;
  const { network, power } = specimen;
  const advance = advanceBy(network, STEP);
  const workload = wandering(noise, options.workload.wander, options.workload.memory, STEP);
  const roomWander = wandering(noise, options.room.wander, ROOM_MEMORY, STEP);
  const resting: Operation = { clock: power.idleClock, voltageOffset: options.setting.voltageOffset, activity: power.idleActivity };
  let temperatures: Temperatures = balance(specimen, resting, power.boardIdle, options.room.start);
  let governor: GovernorState = atEase(power.idleClock);
  return (elapsed) => {
    const loaded = isLoaded(options, elapsed);
    const room = roomAt(options, elapsed) + roomWander();
    const wander = workload();
    if (elapsed % DECISION === 0) {
      const seen = temperatures.die + instruments.die.offset;
      governor = govern(specimen.governor, governor, seen, askedClock(options, elapsed, loaded), elapsed);
    }
    const clock = loaded ? governor.clock : power.idleClock;
    const operation = loaded ? { ...resting, clock, activity: 1 + wander } : resting;
    const heat = { die: diePower(power, operation, temperatures.die), board: loaded ? power.boardLoad : power.boardIdle };
    const moment: Moment = {
      elapsed,
      ...temperatures,
      room,
      clock,
      throttled: loaded && governor.throttled,
      power: heat.die + heat.board,
      loaded,
    };
    temperatures = advance(temperatures, heat, room);
    return moment;
  };
}

function isLoaded(options: Options, elapsed: number): boolean {
  const { idle, load } = options.schedule;
  return elapsed >= idle && elapsed < idle + load && !inside(options.restart, elapsed);
}

function askedClock(options: Options, elapsed: number, loaded: boolean): number {
  if (!loaded) return options.specimen.power.idleClock;
  const { boost, clock } = options.setting;
  return boost && elapsed - options.schedule.idle < boost.seconds ? boost.clock : clock;
}

/** The room follows half a cosine: it warms slowly, faster in the middle, slowly again. */
function roomAt(options: Options, elapsed: number): number {
  const { idle, load, coolDown } = options.schedule;
  const share = elapsed / (idle + load + coolDown);
  return options.room.start + (options.room.warming * (1 - Math.cos(Math.PI * share))) / 2;
}

function inside(stretch: Restart | undefined, elapsed: number): boolean {
  return stretch !== undefined && elapsed >= stretch.at && elapsed < stretch.at + stretch.length;
}

/** True while nothing is written. */
function silent(options: Options, elapsed: number): boolean {
  return inside(options.restart, elapsed) || inside(options.pause, elapsed);
}

/** What the logger writes of a moment. The voltage at the board sags with the current, which follows from the power. */
function reading(options: Options, instruments: Instruments, moment: Moment, noise: Random): Reading {
  const { supply } = options;
  const ripple = supply.ripple * Math.sin((2 * Math.PI * moment.elapsed) / supply.ripplePeriod);
  const open = supply.voltage + ripple;
  const current = (open - Math.sqrt(open ** 2 - 4 * supply.resistance * moment.power)) / (2 * supply.resistance);
  const lost = options.lost !== undefined && noise.uniform() < options.lost;
  const board = read(instruments.probe, moment.board, noise);
  return {
    elapsed: moment.elapsed,
    die: read(instruments.die, moment.die, noise),
    board: lost ? Number.NaN : board,
    room: read(instruments.thermometer, moment.room, noise),
    clock: moment.clock,
    throttled: moment.throttled,
    voltage: read(instruments.voltage, open - supply.resistance * current, noise),
    current: read(instruments.current, current, noise),
  };
}
