/** Loads that are told from the log, and declared phases that are off. */
import { derive } from '../../../src/figures/derive.ts';
import { edgesOff } from '../../../src/figures/phase-edges.ts';
import { contextOf, every, logOf, phase } from '../../figures/build.ts';
import { quantise, wandering } from '../../simulator/noise.ts';
import type { Family, Trial } from '../family.ts';

const IDLE = 2;
const END = Number.POSITIVE_INFINITY;
/** s. */
const LOAD = 3600;
const TIME_CONSTANT = 300;

/** Power of loads from `from` to `to`, W each, with a workload that wanders by 1 % over 15 s, and idle noise of 0.1 W. */
function powerOf(loads: readonly (readonly [from: number, to: number, watts: number])[], end: number, { noise }: Trial) {
  const wander = wandering(noise, 0.01, 15, 1);
  return every(1, end).map((t) => {
    const load = loads.find(([from, to]) => t >= from && t < to);
    const work = load ? load[2] * (1 + wander()) : IDLE;
    return quantise(work + 0.1 * noise.normal(), 0.01);
  });
}

function severalLoads(count: number, trial: Trial) {
  const { setting, run } = trial;
  const loads: [number, number, number][] = [];
  let at = Math.round(120 + 300 * setting.uniform());
  for (let k = 0; k < count; k++) {
    const to = at + Math.round(400 + 1200 * setting.uniform());
    loads.push([at, to, 5 + 7 * setting.uniform()]);
    at = to + Math.round(300 + 600 * setting.uniform());
  }
  const values = powerOf(loads, at, trial);
  const { figures, phases } = derive(
    logOf(every(1, at), { input: { quantity: 'power', values } }),
    contextOf({ run, phases: 'auto' }),
  );
  const found = phases.filter(({ name }) => name.startsWith('load'));
  const right =
    found.length === count &&
    found.every(({ from, to }, k) => Math.abs(from - loads[k]![0]) <= 1 && Math.abs(to - loads[k]![1]) <= 1);
  return [
    { asked: 'every load is a phase, to the row', said: right, atLeast: 0.99 },
    { asked: 'idle_power', figure: figures.get('idle_power'), truth: IDLE },
    { asked: 'phase_duration', figure: figures.get('phase_duration'), truth: loads[0]![1] - loads[0]![0] },
  ];
}

function declaredOff(off: number, trial: Trial) {
  const from = Math.round(200 + 200 * trial.setting.uniform());
  const values = powerOf([[from, from + 2400, 5 + 7 * trial.setting.uniform()]], from + 3000, trial);
  const log = logOf(every(1, from + 3000), { input: { quantity: 'power', values } });
  const start = from + off;
  const told = edgesOff(log, [phase('idle', 0, start), phase('load', start, from + 2400), phase('cool-down', from + 2400, END)]);
  const right = told.length === 1 && told[0]!.kind === 'begins' && Math.abs(told[0]!.off - off) <= 1;
  return [
    off === 0
      ? { asked: 'a warning is given', said: told.length > 0, atMost: 0.01 }
      : { asked: 'the warning is given, with the seconds', said: right, atLeast: 0.99 },
  ];
}

/** A rise and a fall of 40 K; `lag` s later where the sensor sits behind a second mass. */
function riseAt(t: number, lag: number): number {
  const own = (s: number) => (s < 0 ? 0 : lag === 0 ? 1 - Math.exp(-s / TIME_CONSTANT) : 1 - lagged(s, lag));
  return 40 * (own(t) - own(t - LOAD));
}

function lagged(s: number, lag: number): number {
  return (TIME_CONSTANT * Math.exp(-s / TIME_CONSTANT) - lag * Math.exp(-s / lag)) / (TIME_CONSTANT - lag);
}

/** Nothing but a temperature; for the time to throttle also a flag, which rises so many seconds after the load began. */
function toldByTemperature(lag: number, step: number, { setting, noise, run }: Trial) {
  const from = Math.round(240 + 300 * setting.uniform());
  const start = 22 + step * setting.uniform();
  const limit = Math.round(300 + 600 * setting.uniform());
  const seconds = every(1, from + LOAD + 900);
  const read = seconds.map((t) => quantise(start + riseAt(t - from, lag) + 0.3 * step * noise.normal(), step));
  const soc = { quantity: 'temperature', values: (t: number) => read[t]!, step } as const;
  const flag = { quantity: 'throttle_flag', values: (t: number) => (t >= from + limit ? 1 : 0) } as const;
  const of = (channels: Parameters<typeof logOf>[1]) =>
    derive(logOf(seconds, channels), contextOf({ run, phases: 'auto' })).figures;
  const [alone, flagged] = [of({ soc }), of({ soc, flag })];
  return [
    { asked: 'phase_duration', figure: alone.get('phase_duration'), truth: LOAD },
    { asked: 'time_to_throttle', figure: flagged.get('time_to_throttle'), truth: limit },
    ...(lag === 0 ? [{ asked: 'time_constant', figure: alone.get('time_constant'), truth: TIME_CONSTANT }] : []),
  ];
}

const BENT =
  'A bend is known to half a minute, whatever the sensor: the interval has room for the whole of it, and errors are far smaller.';
const WHY = 'An edge is known to a row of the log, and the interval has room for the whole of it.';

export const FAMILY: Family = {
  title: 'Edges of loads',
  words:
    'Loads of 5 W to 12 W on an idle of 2 W, read once a second; the workload wanders by 1 %. Phases are left to the log, or declared early or late. Where nothing but a temperature shows the load, it rises by 40 K with a time constant of 300 s, at once or behind a second mass of 30 s.',
  trials: 100,
  quick: 20,
  cells: [
    ...[1, 2, 3, 5].map((count) => ({
      name: count === 1 ? 'one load' : `${count} loads`,
      simulate: (trial: Trial) => severalLoads(count, trial),
      quick: count === 3,
      why: WHY,
    })),
    ...[-60, -15, 0, 15, 60].map((off) => ({
      name: off === 0 ? 'declared where it begins' : `declared ${Math.abs(off)} s ${off > 0 ? 'late' : 'early'}`,
      simulate: (trial: Trial) => declaredOff(off, trial),
      quick: off === 60,
    })),
    ...[0, 30].flatMap((lag) =>
      [0.1, 1].map((step) => ({
        name: `told by a temperature, steps of ${step} K${lag > 0 ? ', behind a second mass' : ''}`,
        simulate: (trial: Trial) => toldByTemperature(lag, step, trial),
        quick: lag > 0 && step === 1,
        why: BENT,
      })),
    ),
  ],
};
