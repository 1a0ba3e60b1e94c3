/** The default criterion of steady state on logs with a gap. */
import { derive } from '../../../src/figures/derive.ts';
import { contextOf, every, logOf, phase } from '../../figures/build.ts';
import { quantise } from '../../simulator/noise.ts';
import { CURVES, settlesAt } from '../curves.ts';
import type { Family, Trial } from '../family.ts';

const LOAD = 3600;
const STEP = 0.1;
const CRITERION = '1-k-in-15-min';

type Where = 'anywhere' | 'over the moment of settling' | 'at the end';

function simulate(length: number, where: Where, { setting, noise, run }: Trial) {
  const curve = CURVES[[0, 3, 4][Math.floor(setting.uniform() * 3)]!]!;
  const truth = settlesAt(curve, CRITERION, LOAD)!;
  const from =
    where === 'anywhere'
      ? setting.uniform() * (LOAD - length)
      : where === 'at the end'
        ? LOAD - length - 60 * setting.uniform()
        : Math.max(0, truth - setting.uniform() * length);
  const kept = every(1, LOAD - 1).filter((t) => t < from || t >= from + length);
  const start = 22 + setting.uniform() * STEP;
  const values = (t: number) => quantise(start + curve.rise(t) + 0.1 * noise.normal(), STEP);
  const log = logOf(kept, { soc: { quantity: 'temperature', values, step: STEP } });
  const { figures } = derive(log, contextOf({ run, phases: [phase('load', 0, LOAD)] }));
  return [{ asked: 'time_to_steady_state', figure: figures.get('time_to_steady_state'), truth }];
}

const WHY =
  'Where a gap lies over the moment of settling the interval is as long as the gap, whose inside no reading tells; elsewhere the interval has room for the largest error of a step of the sensor. A gap of more than a fifth of the last window leaves no latest time, only a bound.';

export const FAMILY: Family = {
  title: 'Time to steady state across a gap',
  words:
    'Three devices rise by 40 K under a load of an hour (300 s; with leakage; with free convection), read every second in steps of 0.1 K with 0.1 K of noise. One stretch of the log is missing. The load went on meanwhile: a load that paused only inside a gap is beyond what a log can know.',
  trials: 60,
  quick: 20,
  cells: (['anywhere', 'over the moment of settling', 'at the end'] as const).flatMap((where) =>
    [30, 120, 300, 900, 1500].map((length) => ({
      name: `a gap of ${length} s ${where}`,
      simulate: (trial: Trial) => simulate(length, where, trial),
      quick: length === 300 || length === 900,
      why: WHY,
    })),
  ),
};
