/** Temperatures under a fan that nobody logged, which switches on and off, and temperatures that only scatter. */
import { derive } from '../../../src/figures/derive.ts';
import { isPresent } from '../../../src/figures/figure.ts';
import { contextOf, every, logOf, phase } from '../../figures/build.ts';
import { quantise, wandering } from '../../simulator/noise.ts';
import type { Answer, Family, Saying, Trial } from '../family.ts';

/** s. */
const LOAD = 3600;
/** Time constants while the fan stands and while it runs, s. */
const STANDS = 385;
const RUNS = 193;
/** K a second that the load puts in: about 50 K over the room without the fan. */
const HEAT = 0.13;

/** The fan runs from `on` °C down to `off` °C. */
interface Fan {
  readonly on: number;
  readonly off: number;
}

const ABSENT = ['time_constant', 'asymptote_temperature', 'time_to_steady_state'] as const;
const CAUSE = /swung by about|stopped climbing/;

function underFan({ on, off }: Fan, step: number, { setting, noise, run }: Trial): Answer[] {
  const room = 22 + setting.uniform();
  const heat = HEAT * (0.95 + 0.1 * setting.uniform());
  const course = new Float64Array(LOAD + 1);
  let [temperature, running] = [room, false];
  for (let t = 0; t <= LOAD; t++) {
    course[t] = temperature;
    running = running ? temperature > off : temperature > on;
    temperature += heat - (temperature - room) / (running ? RUNS : STANDS);
  }
  const values = (t: number) => quantise(course[t]! + 0.1 * noise.normal(), step);
  const log = logOf(every(1, LOAD), { soc: { quantity: 'temperature', values, step } });
  const { figures } = derive(log, contextOf({ run, phases: [phase('load', 0, LOAD)] }));
  return ABSENT.map((name) => ({ asked: name, figure: figures.get(name), truth: null, absent: CAUSE }));
}

/** A fan that steps in at a temperature and stays on: the time constant is that of neither half of the load, or of one of them. */
function stepsIn(on: number, runs: number, seen: boolean, { setting, noise, run }: Trial): Saying[] {
  const room = 22 + setting.uniform();
  const stands = 240 + 60 * setting.uniform();
  const heat = (34 + 6 * setting.uniform()) / stands;
  const course = new Float64Array(LOAD + 1);
  let [temperature, running] = [room, false];
  for (let t = 0; t <= LOAD; t++) {
    course[t] = temperature;
    running ||= temperature > on;
    temperature += heat - (temperature - room) / (running ? runs * stands : stands);
  }
  const values = (t: number) => quantise(course[t]! + 0.1 * noise.normal(), 0.1);
  const log = logOf(every(1, LOAD), {
    soc: { quantity: 'temperature', values, step: 0.1 },
    ...(seen ? { board: { quantity: 'power' as const, values: () => 8, step: 0.01 } } : {}),
  });
  const constant = derive(log, contextOf({ run, phases: [phase('load', 0, LOAD)] })).figures.get('time_constant')!;
  const [low, high] = (isPresent(constant) && constant.interval) || [0, Number.POSITIVE_INFINITY];
  const isNeither = [stands, runs * stands].every((tau) => tau < low || tau > high);
  return [{ asked: 'a time constant that is neither', said: isNeither, atMost: 0.05 }];
}

function scatters(deviation: number, memory: number, { setting, noise, run }: Trial): Saying[] {
  const start = 22 + setting.uniform();
  const wander = wandering(noise, deviation, memory, 1);
  const values = (t: number) => quantise(start + 40 * (1 - Math.exp(-t / 300)) + wander(), 0.1);
  const log = logOf(every(1, LOAD), { soc: { quantity: 'temperature', values, step: 0.1 } });
  const constant = derive(log, contextOf({ run, phases: [phase('load', 0, LOAD)] })).figures.get('time_constant');
  return [
    { asked: 'a swing is said', said: constant !== undefined && !isPresent(constant) && /swung/.test(constant.why), atMost: 0.02 },
  ];
}

export const FAMILY: Family = {
  title: 'A fan that nobody logged',
  words: `A device that climbs by about 50 K with a time constant of ${STANDS} s has a fan that switches on and off at two temperatures, and a time constant of ${RUNS} s while it runs. Nothing but the temperature is logged, once a second for an hour. No one time constant and no one end fits that: both must be absent, and the reason must name the swing or the stop. A fan may also step in once, at a temperature, and stay on: a time constant that is given must be that of the device before or after it. Temperatures that only scatter, with a memory, must not be said to swing.`,
  trials: 60,
  quick: 4,
  cells: [
    ...[0.1, 0.5, 1].map((step) => ({
      name: `on at 55 °C, off at 50 °C, steps of ${step} K`,
      simulate: (trial: Trial) => underFan({ on: 55, off: 50 }, step, trial),
      quick: step === 1,
    })),
    ...[0.1, 0.5].map((step) => ({
      name: `on at 58 °C, off at 55 °C, steps of ${step} K`,
      simulate: (trial: Trial) => underFan({ on: 58, off: 55 }, step, trial),
    })),
    ...[
      [45, 0.7],
      [48, 0.8],
      [50, 0.7],
    ].flatMap(([on, runs]) =>
      [true, false].map((seen) => ({
        name: `steps in at ${on} °C and stays on, ${runs} of the time constant${seen ? ', power logged' : ''}`,
        simulate: (trial: Trial) => stepsIn(on!, runs!, seen, trial),
      })),
    ),
    ...(
      [
        [0.3, 30],
        [1, 60],
        [1, 240],
      ] as const
    ).map(([deviation, memory]) => ({
      name: `no fan, noise of ${deviation} K with a memory of ${memory} s`,
      simulate: (trial: Trial) => scatters(deviation, memory, trial),
    })),
  ],
};
