/** Energy and mean power across gaps of a log. */
import { derive } from '../../../src/figures/derive.ts';
import { contextOf, every, logOf, phase } from '../../figures/build.ts';
import { energiesAgree } from '../agree.ts';
import type { Cell, Family, Trial } from '../family.ts';
import { knownHalfWidth, type Noise, noiseOf } from '../noise.ts';

/** W, its scatter, and the length of the load, s. */
const POWER = 8;
const DEVIATION = 0.1;
const LOAD = 3600;

interface Made {
  readonly gap: number;
  readonly noise: Noise;
  /** How the power goes besides, W, by the seconds of the load and a phase of its own from 0 to 1. */
  readonly course?: (s: number, phase: number) => number;
  /** Whether the load paused in the gap. */
  readonly paused?: boolean;
  readonly absent?: boolean;
}

function simulate({ gap, noise, course, paused, absent }: Made, { setting, noise: chance, run }: Trial) {
  const from = (LOAD - gap) * (0.05 + 0.9 * setting.uniform());
  const own = setting.uniform();
  const level = (s: number) => course?.(s, own) ?? 0;
  const rows = every(1, LOAD);
  const next = noiseOf(noise, rows.length, chance);
  const power = rows.map((s) => POWER + level(s) + DEVIATION * next());
  const kept = [...rows.keys()].filter((row) => rows[row]! <= from || rows[row]! >= from + gap);
  const log = logOf(
    kept.map((row) => rows[row]!),
    { input: { quantity: 'power', values: kept.map((row) => power[row]!) } },
  );
  const { figures } = derive(log, contextOf({ run, phases: [phase('load', 0, LOAD)] }));
  const took = rows.reduce((sum, s) => sum + (s < LOAD && !(paused && s > from && s < from + gap) ? POWER + level(s + 0.5) : 0), 0);
  const known = course ? null : DEVIATION * knownHalfWidth(noise, rows.length);
  const must = absent ? { absent: /were not logged/ } : {};
  return [
    { asked: 'energy.load', figure: figures.get('energy.load'), truth: took, ...(known && { known: known * LOAD }), ...must },
    { asked: 'load_power', figure: figures.get('load_power'), truth: took / LOAD, ...(known && { known }), ...must },
    ...energiesAgree(figures, 'energy.load', 'load_power', LOAD),
  ];
}

function cell(name: string, made: Made, more: Partial<Cell> = {}): Cell {
  return { name, pairs: true, simulate: (trial) => simulate(made, trial), ...more };
}

const WHITE = { memory: 0 };
const CYCLES = 'A load that goes on and off counts as noise about its level, which makes the interval wide.';
const PAUSED = 'A load that pauses in the gap alone leaves no trace in the log: nothing that was read can tell.';

/** A governor that saws with a period of 90 s; a load that is on for 200 s and off for 200 s, at a quarter. */
const saw = (s: number, own: number) => 0.5 * ((s / 90 + own) % 1);
const onOff = (s: number, own: number) => ((s / 400 + own) % 1 < 0.5 ? 0 : -6);

export const FAMILY: Family = {
  title: 'Energy and mean power across a gap',
  words:
    'A load of an hour at 8 W with noise of 0.1 W, one reading a second, and a gap anywhere in it. The truth is the energy of the whole hour, the gap included; and that over an hour.',
  trials: 300,
  quick: 20,
  cells: [
    ...[30, 120, 300].flatMap((gap) => [
      cell(`a gap of ${gap} s, white noise`, { gap, noise: WHITE }, { quick: gap === 300 }),
      ...[60, 15].map((share) => cell(`a gap of ${gap} s, memory 1/${share}`, { gap, noise: { memory: 1 / share } })),
    ]),
    ...[30, 300].flatMap((gap) => [
      cell(`a gap of ${gap} s, a governor that saws in 90 s`, { gap, noise: WHITE, course: saw }, { why: CYCLES }),
      cell(`a gap of ${gap} s, a load that pauses for 200 of each 400 s`, { gap, noise: WHITE, course: onOff }, { why: CYCLES }),
    ]),
    ...[1200, 1500].map((gap) =>
      cell(`a gap of ${gap} s, white noise`, { gap, noise: WHITE, absent: true }, { pairs: false, quick: gap === 1500 }),
    ),
    cell('a gap of 120 s, in which alone the load pauses', { gap: 120, noise: WHITE, paused: true }, { beyond: PAUSED }),
  ],
};
