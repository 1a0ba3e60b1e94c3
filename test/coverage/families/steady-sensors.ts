/** Every criterion of steady state on coarse and noisy sensors. */
import { derive } from '../../../src/figures/derive.ts';
import { isPresent } from '../../../src/figures/figure.ts';
import { CRITERION_NAMES } from '../../../src/figures/thermal/criteria.ts';
import { contextOf, every, logOf, phase } from '../../figures/build.ts';
import { quantise } from '../../simulator/noise.ts';
import { CURVES, settlesAt } from '../curves.ts';
import type { Family, Trial } from '../family.ts';

/** s: long enough for each curve to settle by each criterion. */
const LOAD = 9000;
const ROW = 5;

interface Sensor {
  readonly step: number;
  /** Scatter of a reading, in steps. */
  readonly noise: number;
}

function simulate(steady: string, { step, noise }: Sensor, { setting, noise: chance, run }: Trial) {
  const curve = CURVES[Math.floor(setting.uniform() * CURVES.length)]!;
  const start = 22 + setting.uniform() * step;
  const values = (t: number) => quantise(start + curve.rise(t) + (noise > 0 ? noise * step * chance.normal() : 0), step);
  const log = logOf(every(ROW, LOAD - ROW), { soc: { quantity: 'temperature', values, step } });
  const { figures } = derive(log, contextOf({ run, steady, phases: [phase('load', 0, LOAD)] }));
  const settled = figures.get('steady_temperature');
  return [
    { asked: 'time_to_steady_state', figure: figures.get('time_to_steady_state'), truth: settlesAt(curve, steady, LOAD) },
    { asked: 'a steady temperature is given', said: settled !== undefined && isPresent(settled) },
  ];
}

const WHY =
  'A step hides anything within half of it: the interval has room for its largest error at both ends of a window, which seldom happens. Where the limit is no larger than that, no latest time is given, only the bound.';

const SENSORS = [0.1, 0.5, 1].flatMap((step) => [0, 0.1, 0.3, 1].map((noise) => ({ step, noise })));

export const FAMILY: Family = {
  title: 'Time to steady state on coarse sensors',
  words: `Five devices (one exponential of 300 s and of 600 s; two, of 300 s and 2400 s; leakage; free convection) rise by 40 K under a load of ${LOAD / 3600} h, read every ${ROW} s by a sensor whose steps lie anywhere. The truth is when the criterion begins to hold on the curve without noise and steps.`,
  trials: 10,
  quick: 3,
  cells: CRITERION_NAMES.flatMap((steady) =>
    SENSORS.map(({ step, noise }) => ({
      name: `${steady}, steps of ${step} K, noise ${noise === 0 ? 'none' : `of ${noise} step`}`,
      simulate: (trial: Trial) => simulate(steady, { step, noise }, trial),
      quick: (step === 1 && noise === 0) || (step === 0.5 && noise === 0.1),
      why: WHY,
    })),
  ),
};
