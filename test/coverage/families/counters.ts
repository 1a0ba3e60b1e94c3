/** Running counters of energy, whole and reset, and meters that read now and then. */
import { derive } from '../../../src/figures/derive.ts';
import { contextOf, logOf, phase } from '../../figures/build.ts';
import { quantise, wandering } from '../../simulator/noise.ts';
import type { Cell, Family, Trial } from '../family.ts';

/** W, and the length of the load, s. */
const POWER = 8;
const LOAD = 3600;
/** J. */
const STEP = 1;

interface Made {
  /** Moments at which the counter begins anew at zero. */
  readonly resets: number;
  /** s between rows, in the first half of the load and in the second. */
  readonly rows: readonly [number, number];
  /** Wandering of the power as a share, with a memory of a minute. */
  readonly wander: number;
  /** Whether a running counter is logged, or the power itself. */
  readonly counted: boolean;
  readonly course?: (s: number) => number;
}

function simulate({ resets, rows: [first, second], wander, counted, course = () => 0 }: Made, { setting, noise, run }: Trial) {
  const moves = wandering(noise, wander, 60, 1);
  const power = Float64Array.from({ length: LOAD + 1 }, (_, s) => (POWER + course(s)) * (1 + moves()));
  const total = new Float64Array(LOAD + 1);
  for (let s = 1; s <= LOAD; s++) total[s] = total[s - 1]! + (power[s - 1]! + power[s]!) / 2;
  const times: number[] = [];
  for (let s = 0; s <= LOAD; s += s < LOAD / 2 ? first : second) times.push(s);
  const begun = [0, ...Array.from({ length: resets }, (_, k) => Math.floor((LOAD * (k + 0.2 + 0.6 * setting.uniform())) / resets))];
  const shown = (s: number) => quantise(total[s]! - total[begun.findLast((at) => at <= s)!]!, STEP);
  const channel = counted
    ? ({ quantity: 'energy', values: times.map(shown), step: STEP } as const)
    : ({ quantity: 'power', values: times.map((s) => power[s]!) } as const);
  const { figures } = derive(logOf(times, { input: channel }), contextOf({ run, phases: [phase('load', 0, LOAD)] }));
  return [{ asked: 'energy.load', figure: figures.get('energy.load'), truth: total[LOAD]! }];
}

function cell(name: string, made: Partial<Made>, more: Partial<Cell> = {}): Cell {
  const whole: Made = { resets: 0, rows: [1, 1], wander: 0.01, counted: true, ...made };
  return { name, simulate: (trial) => simulate(whole, trial), ...more };
}

const ENDS =
  'Rounding by a counter is taken as if its first and its last reading were rounded, while the first of a load that begins with the log is exactly zero.';
const SEEN =
  'What was taken is what was read: readings a second apart leave nothing out, and the interval is that of the level, for a workload that might as well have wandered otherwise.';
const RISING = 'The energy of a load is known better than the level of its power where the power has a course of its own.';

export const FAMILY: Family = {
  title: 'Energy by counters and by meters that change their pace',
  words:
    'A load of an hour at 8 W wanders by 1 % with a memory of a minute. A counter with steps of 1 J is read every second or every half minute, and may begin anew once or several times, some minutes apart or more; or a meter of power is read every half minute at first and every second later. The truth is the energy that was taken, resets and all.',
  trials: 200,
  quick: 30,
  cells: [
    cell('a counter read every second', {}, { why: ENDS }),
    cell('a counter read every second, reset once', { resets: 1 }, { why: ENDS, quick: true }),
    cell('a counter read every second, reset five times', { resets: 5 }, { why: ENDS }),
    cell('a counter read every 30 s, reset once', { rows: [30, 30], resets: 1 }, { quick: true }),
    cell('a counter read every 30 s, reset five times', { rows: [30, 30], resets: 5 }),
    cell('a counter read every 30 s, then every second, reset once', { rows: [30, 1], resets: 1 }, { why: ENDS }),
    cell('a meter read every second', { counted: false }, { why: SEEN }),
    cell('a meter read every 30 s, then every second', { counted: false, rows: [30, 1] }, { why: SEEN }),
    cell(
      'a meter read every 30 s, then every second, of a power that climbs by 1 W',
      { counted: false, rows: [30, 1], course: (s) => 1 - Math.exp(-s / 300) },
      { why: RISING },
    ),
  ],
};
