/** Clocks that a governor holds down, and clocks that do not show it. */
import { derive } from '../../../src/figures/derive.ts';
import { contextOf, every, logOf, phase } from '../../figures/build.ts';
import { quantise } from '../../simulator/noise.ts';
import type { Answer, Cell, Family, Saying, Trial } from '../family.ts';

const SETTING = 2e9;
const LOAD = 1800;
const STEP = 1e6;

interface Made {
  readonly shows?: 'requested' | 'delivered';
  /** The clock at a time of the load, Hz, without scatter; `falls` are the moments at which it fell below its setting. */
  readonly course: (t: number, falls: readonly number[]) => number;
  readonly falls: number;
  /** Scatter of a reading, Hz. */
  readonly scatter: number;
  /** What the reason must say where nothing of throttling can be told. */
  readonly untold?: RegExp;
}

const ASKED = ['throttle_events', 'time_to_throttle'] as const;
/** s that the clock stays down, and least distance of two falls. */
const DOWN = 60;

function simulate({ shows, course, falls, scatter, untold }: Made, { setting, noise, run }: Trial): (Answer | Saying)[] {
  const apart = LOAD / (falls + 1);
  const at = Array.from({ length: falls }, (_, k) => Math.round(apart * (k + 0.3 + 0.4 * setting.uniform())) + 0.5);
  const values = (t: number) => quantise(course(t, at) + scatter * noise.normal(), STEP);
  const log = logOf(every(1, LOAD), { core: { quantity: 'clock', values, step: STEP, ...(shows && { shows }) } });
  const clock = { value: SETTING, unit: 'Hz', parts: [] };
  const { figures } = derive(log, contextOf({ run, setting: { clock }, phases: [phase('load', 0, LOAD)] }));
  const truths = { throttle_events: falls, time_to_throttle: at[0] ?? null };
  if (untold) return ASKED.map((asked) => ({ asked, figure: figures.get(asked), truth: null, absent: untold }));
  return ASKED.filter((asked) => truths[asked] !== null).map((asked) => ({
    asked,
    figure: figures.get(asked),
    truth: truths[asked],
  }));
}

const steady = () => SETTING;
const falling = (t: number, falls: readonly number[]) => (falls.some((at) => t >= at && t < at + DOWN) ? 0.8 * SETTING : SETTING);
/** From its fall on it goes to and fro about the threshold, which is 1 % below the setting, by 2 MHz each way, every 5 s. */
const toggling = (t: number, [at = 0]: readonly number[]) => (t < at ? SETTING : 0.99 * SETTING + ((t - at) % 10 < 5 ? -2e6 : 2e6));

const WHOLE =
  'A number of falls is a whole one, and a fall is known to a row of the log: the interval has room for the whole of it.';
const SINGLES =
  'The count has room for what fell between two readings, as single readings tell of it: its lower end never fails, so that 5 % are left to the upper one, which is a whole number.';
const ASKED_FOR = /does not show that there was no throttling/;

/** Clock that goes to and fro at random, with lengths exponentially distributed about these, s; the log has a row every 2 s. */
function simulateDwells({ up, down }: { up: number; down: number }, { noise, run }: Trial): Answer[] {
  const falls: (readonly [number, number])[] = [];
  const dwell = (mean: number) => -mean * Math.log(1 - noise.uniform());
  for (let at = dwell(up); at < LOAD; at += dwell(up)) {
    const until = at + dwell(down);
    falls.push([at, Math.min(until, LOAD)]);
    at = until;
  }
  let next = 0;
  const values = (t: number) => {
    while (next < falls.length && falls[next]![1] <= t) next++;
    return next < falls.length && falls[next]![0] <= t ? 0.9 * SETTING : SETTING;
  };
  const log = logOf(every(2, LOAD), { core: { quantity: 'clock', values, step: STEP, shows: 'delivered' } });
  const clock = { value: SETTING, unit: 'Hz', parts: [] };
  const { figures } = derive(log, contextOf({ run, setting: { clock }, phases: [phase('load', 0, LOAD)] }));
  const below = falls.reduce((sum, [from, to]) => sum + to - from, 0);
  return [
    { asked: 'throttle_events', figure: figures.get('throttle_events'), truth: falls.length },
    { asked: 'time_below_setting', figure: figures.get('time_below_setting'), truth: below },
  ];
}

function dwellCell(up: number, down: number, more: Partial<Cell> = {}): Cell {
  const name = `delivered, to and fro at random, up for ${up} s and down for ${down} s on average, a row every 2 s`;
  return { name, simulate: (trial) => simulateDwells({ up, down }, trial), why: SINGLES, ...more };
}

function cell(name: string, made: Partial<Made>, more: Partial<Cell> = {}): Cell {
  const whole: Made = { shows: 'delivered', course: steady, falls: 0, scatter: 1e6, ...made };
  return { name, simulate: (trial) => simulate(whole, trial), why: WHOLE, ...more };
}

export const FAMILY: Family = {
  title: 'Clocks under a governor, seen and unseen',
  words: `A clock set to 2 GHz is read once a second for half an hour, with a scatter of 1 MHz, while a governor may hold it down for ${DOWN} s at a time. Or it goes to and fro at random, and is read every 2 s. Truths: how often it fell, when first, and how long it was down. Where the log shows the clock that was requested, does not say which it is, or stands below the setting throughout, both must be absent, and the reason must say so.`,
  trials: 100,
  quick: 20,
  cells: [
    cell('delivered, never below its setting', {}),
    ...[1, 2, 5].map((falls) =>
      cell(`delivered, ${falls === 1 ? 'one fall' : `${falls} falls`}`, { falls, course: falling }, { quick: falls === 2 }),
    ),
    cell('delivered, one fall, scatter of 8 MHz', { falls: 1, course: falling, scatter: 8e6 }),
    cell('delivered, to and fro about the threshold by 2 MHz', { falls: 1, course: toggling, scatter: 0 }, { quick: true }),
    dwellCell(250, 60),
    dwellCell(40, 20, { quick: true }),
    dwellCell(0.6, 0.3),
    cell(
      'delivered, a tenth below its setting throughout',
      { course: () => 0.9 * SETTING, untold: /below its setting of .* from the first reading/ },
      { quick: true },
    ),
    cell('requested, at its setting throughout', { shows: 'requested', untold: ASKED_FOR }, { quick: true }),
    {
      ...cell('not said which, at its setting throughout', { untold: ASKED_FOR }),
      simulate: (trial) => simulate({ course: steady, falls: 0, scatter: 1e6, untold: ASKED_FOR }, trial),
    },
  ],
};
