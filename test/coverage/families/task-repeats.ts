/** Repeats of a test: what a meter that is late, or averages, says of their power, and repeats of which each is like the one before. */
import { derive } from '../../../src/figures/derive.ts';
import type { Repeat, ScoredTest } from '../../../src/figures/scores/score-table.ts';
import { contextOf, logOf } from '../../figures/build.ts';
import type { Random } from '../../simulator/random.ts';
import type { Answer, Cell, Family, Trial } from '../family.ts';

const TESTS = 4;
const REPEATS = 5;
/** W between repeats, and s between two values of the true power. */
const IDLE = 2;
const GRAIN = 0.1;

interface Meter {
  /** s between rows. */
  readonly row: number;
  /** s between two readings that the meter takes; each stands until the next. */
  readonly refresh?: number;
  /** s over which it averages. */
  readonly over?: number;
  /** s by which its readings are late. */
  readonly late?: number;
}

function metered(meter: Meter, length: number, { setting, noise, run }: Trial): Answer[] {
  const pause = 0.6 * length;
  let at = 60 + 5 * setting.uniform();
  const levels = Array.from({ length: TESTS }, () => 6 + 4 * setting.uniform());
  const pulses: { test: number; from: number; to: number; power: number }[] = [];
  for (let test = 0; test < TESTS; test++)
    for (let k = 0; k < REPEATS; k++) {
      const to = at + length * (0.97 + 0.06 * setting.uniform());
      pulses.push({ test, from: at, to, power: levels[test]! * (1 + 0.003 * noise.normal()) });
      at = to + pause;
    }
  const end = at + 60;
  const sums = sumsOf(pulses, end);
  const between = (from: number, to: number) => (energyAt(sums, to) - energyAt(sums, from)) / (to - from);
  const seconds = Array.from({ length: Math.floor(end / meter.row) - 1 }, (_, k) => (k + 1) * meter.row);
  const values = seconds.map((time) => {
    const read = (meter.refresh ? Math.floor(time / meter.refresh) * meter.refresh : time) - (meter.late ?? 0);
    const exact = meter.over
      ? between(Math.max(0, read - meter.over), read)
      : between(Math.max(0, read), Math.max(0, read) + GRAIN);
    return exact + 0.02 * noise.normal();
  });
  const tests = levels.map((_, test): ScoredTest => {
    const own = pulses.filter((pulse) => pulse.test === test);
    return testOf(
      `t${test}`,
      own.map(({ from, to }) => ({ from: from - meter.row, to: to - meter.row, value: 100 })),
    );
  });
  const log = logOf(
    seconds.map((time) => time - meter.row),
    { board: { quantity: 'power', values } },
  );
  const { figures } = derive(log, contextOf({ run }), { scores: { file: 'data/scores.csv', tests } });
  const own = pulses.filter(({ test }) => test === 0);
  const energy = own.reduce((sum, { from, to, power }) => sum + power * (to - from), 0) / REPEATS;
  const power = own.reduce((sum, each) => sum + each.power, 0) / REPEATS;
  return [
    { asked: 'energy_per_task', figure: figures.get('energy_per_task.t0'), truth: energy },
    { asked: 'score_power', figure: figures.get('score_power.t0'), truth: power },
  ];
}

/** Running energy at multiples of GRAIN, J. */
function sumsOf(pulses: readonly { from: number; to: number; power: number }[], end: number): Float64Array {
  const sums = new Float64Array(Math.ceil(end / GRAIN) + 2);
  let k = 0;
  for (let i = 1; i < sums.length; i++) {
    const time = (i - 0.5) * GRAIN;
    while (k < pulses.length && pulses[k]!.to <= time) k++;
    const pulse = pulses[k];
    sums[i] = sums[i - 1]! + GRAIN * (pulse && time >= pulse.from ? pulse.power : IDLE);
  }
  return sums;
}

function energyAt(sums: Float64Array, time: number): number {
  const place = Math.min(sums.length - 1.001, Math.max(0, time / GRAIN));
  const low = Math.floor(place);
  return sums[low]! + (place - low) * (sums[low + 1]! - sums[low]!);
}

function testOf(id: string, repeats: readonly { from: number; to: number; value: number }[]): ScoredTest {
  const each = ({ from, to, value }: (typeof repeats)[number], k: number): Repeat => ({
    name: String(k + 1),
    value,
    step: 0.001,
    window: { start: { kind: 'elapsed', seconds: from }, end: { kind: 'elapsed', seconds: to } },
    line: k + 2,
  });
  return { id, title: id, unit: 'points', better: 'higher', repeats: repeats.map(each) };
}

/** Repeats that scatter by 1 %, each like the one before by `rho`; they take 150 s each. */
function alike(n: number, rho: number, { noise, run }: Trial): Answer[] {
  const values = wandering(n, rho, noise).map((x) => 100 * (1 + 0.01 * x));
  const test = testOf(
    't0',
    values.map((value, k) => ({ from: 150 * k, to: 150 * k + 140, value })),
  );
  const scores = { file: 'data/scores.csv', tests: [test] };
  const { figures } = derive(logOf([0, 1], {}), contextOf({ run }), { scores });
  return [
    { asked: 'score', figure: figures.get('score.t0'), truth: 100 },
    { asked: 'score_drift', figure: figures.get('score_drift.t0'), truth: 0 },
    { asked: 'sustained_score', figure: figures.get('sustained_score.t0'), truth: 1 },
  ];
}

function wandering(n: number, rho: number, noise: Random): number[] {
  let level = noise.normal();
  return Array.from({ length: n }, (_, k) => {
    if (k > 0) level = rho * level + Math.sqrt(1 - rho * rho) * noise.normal();
    return level;
  });
}

function meterCell(name: string, meter: Meter, length: number, more: Partial<Cell> = {}): Cell {
  return { name, simulate: (trial) => metered(meter, length, trial), ...more };
}

function repeatCell(name: string, n: number, rho: number, more: Partial<Cell> = {}): Cell {
  return { name, simulate: (trial) => alike(n, rho, trial), ...more };
}

const STEADY =
  'The power is level within a repeat, so that its readings tell it far better than a power that might have wandered unseen.';
const LIMITS =
  'The lag is taken as limits to both sides, for a log does not tell whether the meter, its clock or the device itself is late; here it is always the meter.';
const FEW = 'So few repeats seldom show that they are alike, and are then taken as independent.';
const TESTED = 'Repeats that look alike by chance are taken as fewer.';
const THIRDS = 'A third of so few repeats has few degrees of freedom, and its ratio is told with those of the worse third.';

export const FAMILY: Family = {
  title: 'Repeats of a test',
  words:
    'Four tests of five repeats with pauses at 2 W between, at 6 W to 10 W; the meter is read at once, late, from a display that refreshes now and then, or as an average. The truth is the integral of the power over the stated times. And tests of some repeats that scatter by 1 %, each like the one before or not; the truth is the level that they scatter about.',
  trials: 100,
  quick: 30,
  cells: [
    meterCell('25 s each, a meter read every 2 s', { row: 2 }, 25, { why: STEADY }),
    meterCell('25 s each, a meter 4 s late, read every second', { row: 1, late: 4 }, 25, { why: LIMITS, quick: true }),
    meterCell('25 s each, a meter that refreshes every 5 s, read every second', { row: 1, refresh: 5 }, 25, { why: LIMITS }),
    meterCell('25 s each, a meter that averages 10 s, read every 10 s', { row: 10, over: 10 }, 25, { why: LIMITS }),
    meterCell('90 s each, a meter that averages 10 s, read every 10 s', { row: 10, over: 10 }, 90, { why: LIMITS }),
    repeatCell('10 independent repeats', 10, 0, { why: `${TESTED} ${THIRDS}`, quick: true }),
    repeatCell('20 independent repeats', 20, 0, { why: `${TESTED} ${THIRDS}` }),
    repeatCell('10 repeats, each like the one before by 0.7', 10, 0.7, { beyond: FEW }),
    repeatCell('20 repeats, each like the one before by 0.7', 20, 0.7, { beyond: FEW }),
    repeatCell('60 repeats, each like the one before by 0.7', 60, 0.7, { beyond: FEW }),
  ],
};
