/** Loads that ended before or long after the device had settled: what is said of the end. */
import { derive } from '../../../src/figures/derive.ts';
import { isPresent } from '../../../src/figures/figure.ts';
import { contextOf, every, logOf, phase } from '../../figures/build.ts';
import { quantise, wandering } from '../../simulator/noise.ts';
import type { Family, Trial } from '../family.ts';

const TAU = 450;
const RISE = 40;
const ROW = 2;

interface Sensor {
  readonly step: number;
  /** K, and its correlation time, s; 0 for white noise. */
  readonly noise: number;
  readonly memory: number;
}

function simulate(constants: number, { step, noise, memory }: Sensor, { setting, noise: chance, run }: Trial) {
  const load = constants * TAU;
  const start = 22 + setting.uniform() * step;
  const course = (t: number) => start + RISE * (1 - Math.exp(-t / TAU));
  const next = memory > 0 ? wandering(chance, noise, memory, ROW) : () => (noise > 0 ? noise * chance.normal() : 0);
  const log = logOf(every(ROW, load - ROW), {
    soc: { quantity: 'temperature', values: (t) => quantise(course(t) + next(), step), step },
  });
  const { figures } = derive(log, contextOf({ run, phases: [phase('load', 0, load)] }));
  const steady = figures.get('steady_temperature');
  const meanOver = (length: number) => {
    const from = load - length;
    return start + RISE - ((RISE * TAU) / length) * (Math.exp(-from / TAU) - Math.exp(-load / TAU));
  };
  const settled = steady !== undefined && isPresent(steady);
  return [
    ...(settled ? [] : [{ asked: 'steady_temperature', figure: steady, truth: start + RISE }]),
    { asked: 'end_temperature', figure: figures.get('end_temperature'), truth: meanOver(60) },
    { asked: 'peak_temperature', figure: figures.get('peak_temperature'), truth: course(load) },
    {
      asked: 'still climbing is said',
      said: steady !== undefined && !settled && steady.bound?.unit === '°C',
      ...(constants >= 12 ? { atMost: 0.05 } : {}),
    },
    { asked: 'settled is said', said: settled, ...(constants >= 12 ? { atLeast: 0.95 } : { atMost: 0.05 }) },
  ];
}

const WHY =
  'Of two estimates of the scatter the wider is taken; a peak has room for what may lie between two readings. On a quiet sensor the interval is that of its step, which holds all errors; where the load ended early, the little that is left of it tells little of the scatter.';

const BEYOND =
  'The noise lasts longer than a tenth of the load, so that the half of the load that its scatter is told from holds few independent stretches of it: no log can tell such noise from the course.';

const SENSORS: readonly Sensor[] = [
  { step: 0.1, noise: 0, memory: 0 },
  { step: 0.1, noise: 0.1, memory: 0 },
  { step: 0.1, noise: 0.3, memory: 30 },
  { step: 0.1, noise: 0.3, memory: 120 },
  { step: 1, noise: 0, memory: 0 },
  { step: 1, noise: 0.3, memory: 0 },
  { step: 1, noise: 1, memory: 0 },
  { step: 1, noise: 1, memory: 30 },
];

const words = ({ step, noise, memory }: Sensor) =>
  `steps of ${step} K, ${noise === 0 ? 'no noise' : `${noise} K of ${memory === 0 ? 'white noise' : `noise with a memory of ${memory} s`}`}`;

export const FAMILY: Family = {
  title: 'The end of a load, settled or still climbing',
  words: `A device rises by ${RISE} K with a time constant of ${TAU} s, under loads of 2 to 48 time constants. Truths: the end of the curve, where a steady temperature is bounded; its mean over the last minute; its highest point.`,
  trials: 100,
  quick: 20,
  cells: [2, 3, 4, 12, 48].flatMap((constants) =>
    SENSORS.map((sensor) => ({
      name: `${constants} time constants, ${words(sensor)}`,
      simulate: (trial: Trial) => simulate(constants, sensor, trial),
      quick: sensor.noise === 1 || (sensor.step === 0.1 && sensor.noise === 0.1),
      ...(10 * sensor.memory > constants * TAU ? { beyond: BEYOND } : { why: WHY }),
    })),
  ),
};
