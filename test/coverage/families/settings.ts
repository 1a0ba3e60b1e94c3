/** Settings compared: runs lie apart from boot to boot and day to day, ten tests are done at once, and some settings are equal. */

import type { FigureName } from '../../../src/figures/catalogue.ts';
import { compare } from '../../../src/figures/comparison/compare.ts';
import type { ComparedRun } from '../../../src/figures/comparison/compared.ts';
import type { Figure } from '../../../src/figures/figure.ts';
import type { Random } from '../../simulator/random.ts';
import type { Answer, Cell, Family, Saying, Trial } from '../family.ts';

/** What a run says of its own scatter, as a share: little of how runs lie apart. */
const WITHIN = 0.001;
const TESTS = Array.from({ length: 10 }, (_, k) => `t${k}`);
const ALIASES = ['a', 'b', 'c', 'd'];

interface Made {
  readonly settings: 2 | 4;
  readonly runs: number;
  /** Standard deviation between runs of one setting, as a share. */
  readonly spread: number;
  /** By how much the second setting is higher, as a share. */
  readonly higher?: number;
  /** Two other settings, run so often each, that the comparison names as repeats. */
  readonly borrowed?: number;
}

function simulate(made: Made, { noise, run }: Trial): (Answer | Saying)[] {
  const { settings, runs, spread, higher = 0, borrowed = 0 } = made;
  const of = (alias: string, n: number, level: number) => ({
    alias,
    runs: Array.from({ length: n }, (_, k) => runOf(`${run}-${alias}${k}`, level, spread, noise)),
  });
  const [reference, ...others] = ALIASES.slice(0, settings).map((alias, k) => of(alias, runs, k === 1 ? 1 + higher : 1));
  const repeats = borrowed > 0 ? ['x', 'y'].map((alias) => of(alias, borrowed, 1.1).runs) : [];
  const figures = compare({ id: run, reference: reference!, others, repeats });
  const told = (name: string, byTest: boolean) =>
    [...figures.values()].some((figure) => figure.name === name && (figure.of?.test !== undefined) === byTest && isTold(figure));
  const known = spread > 0 ? 1.96 * Math.hypot(spread, WITHIN) * Math.sqrt(2 / runs) : undefined;
  const answers: Answer[] = [
    { asked: 'power_delta.b', figure: figures.get('power_delta.b'), truth: 8 * higher, ...(known && { known: 8 * known }) },
    { asked: 'speedup.b.t0', figure: figures.get('speedup.b.t0'), truth: 1 + higher, ...(known && { known }) },
  ];
  if (higher > 0) return [...answers, { asked: 'the higher power told apart', said: isTold(figures.get('power_delta.b')!) }];
  return [
    ...answers,
    { asked: 'any power told apart', said: told('power_delta', false), atMost: 0.05 },
    { asked: 'any rise told apart', said: told('rise_delta', false), atMost: 0.05 },
    { asked: 'any speed told apart', said: told('speedup', false), atMost: 0.05 },
    { asked: 'any of ten tests told apart', said: told('speedup', true), atMost: 0.05 },
  ];
}

function isTold({ of }: Figure): boolean {
  return of?.verdict === 'told apart';
}

/** A run whose figures each have a deviation of their own, beside scatter that the run itself knows of. */
function runOf(run: string, level: number, spread: number, noise: Random): ComparedRun {
  const figures = new Map<string, Figure>();
  const add = (name: FigureName, address: string, unit: string, truth: number, of: Figure['of'] = {}) => {
    const value = truth * level * (1 + spread * noise.normal()) * (1 + WITHIN * noise.normal());
    const source = { id: `run:${run}/${address}/sampling`, title: 'scatter', dof: 50 };
    figures.set(address, {
      name,
      quantity: { value, unit, parts: [{ source, share: WITHIN * value }] },
      from: { columns: [], rows: null },
      ...(of && { of }),
    });
  };
  add('load_power', 'load_power', 'W', 8, { at: 'board input' });
  add('temperature_rise', 'temperature_rise', 'K', 40);
  for (const test of TESTS)
    add('score', `score.${test}`, 'points', 100, { test, title: test, better: 'higher', n: 5, spread: 0.2 });
  return { alias: run, run, device: 'larch', specimen: 'no-1', figures };
}

/** Two runs of one test with so many repeats each: what a few say of their scatter. */
function repeats(counts: readonly [number, number], { noise, run }: Trial): Answer[] {
  const [reference, other] = counts.map((n, k): ComparedRun => {
    const values = Array.from({ length: n }, () => 100 * (1 + 0.01 * noise.normal()));
    const value = values.reduce((sum, each) => sum + each, 0) / n;
    const spread = Math.sqrt(values.reduce((sum, each) => sum + (each - value) ** 2, 0) / (n - 1));
    const id = `${run}-${k}`;
    const source = { id: `run:${id}/score.mix/sampling`, title: 'repeats', dof: n - 1 };
    const figure: Figure = {
      name: 'score',
      quantity: { value, unit: 'points', parts: [{ source, share: spread / Math.sqrt(n) }] },
      from: { columns: [], rows: null },
      of: { test: 'mix', title: 'Mix', better: 'higher', n, spread },
    };
    return { alias: id, run: id, device: 'larch', specimen: 'no-1', figures: new Map([['score.mix', figure]]) };
  });
  const alone = (alias: string, each: ComparedRun) => ({ alias, runs: [each] });
  const figures = compare({ id: run, reference: alone('a', reference!), others: [alone('b', other!)] });
  const known = 1.96 * 0.01 * Math.sqrt(1 / counts[0] + 1 / counts[1]);
  return [{ asked: 'speedup.b', figure: figures.get('speedup.b'), truth: 1, known }];
}

const percent = (share: number) => `${(100 * share).toFixed(1).replace('.0', '')} %`;
const WIDE =
  'Where the runs happen to agree better than their own scatter lets expect, that scatter is taken, and still with the few degrees of freedom of the runs: two runs that agree are no proof.';
const LOGS =
  'Each setting was run once, and nothing says how runs lie apart: the interval is that of two logs, and no setting is told apart.';

function equal(made: Made): Cell {
  const { settings, runs, spread, borrowed } = made;
  const by = borrowed ? `, spread from two others of ${borrowed} runs` : '';
  return {
    name: `${settings} settings, ${runs} ${runs === 1 ? 'run' : 'runs'} each${by}, runs ${percent(spread)} apart`,
    simulate: (trial) => simulate(made, trial),
    quick: settings === 2 && runs === 2,
    ...(runs === 1 && !borrowed ? (spread > 0 ? { beyond: LOGS } : {}) : spread < 0.003 ? { why: WIDE } : {}),
  };
}

function higher(settings: 2 | 4, runs: number, by: number): Cell {
  return {
    name: `${settings} settings, ${runs} runs each, runs 0.5 % apart, one ${percent(by)} higher`,
    simulate: (trial) => simulate({ settings, runs, spread: 0.005, higher: by }, trial),
  };
}

export const FAMILY: Family = {
  title: 'Settings compared',
  words:
    'Runs of one setting lie apart by a share of each figure; each run knows its own scatter of 0.1 %. Settings are equal, so that no verdict may tell them apart in more than 5 % of comparisons, by one figure or by ten tests at once; or one is higher. Repeats of one test scatter by 1 %.',
  trials: 600,
  quick: 50,
  cells: [
    ...[1, 2, 3, 4].flatMap((runs) => [0, 0.002, 0.005, 0.01].map((spread) => equal({ settings: 2, runs, spread }))),
    ...[1, 2, 3].flatMap((runs) => [0.002, 0.01].map((spread) => equal({ settings: 4, runs, spread }))),
    ...[0.002, 0.005, 0.01].map((spread) => equal({ settings: 2, runs: 1, spread, borrowed: 3 })),
    ...[2, 3, 4].flatMap((runs) => [0.01, 0.02, 0.03].map((by) => higher(2, runs, by))),
    ...[0.01, 0.02, 0.03].map((by) => higher(4, 2, by)),
    ...(
      [
        [2, 10],
        [2, 2],
        [3, 5],
      ] as const
    ).map(
      (counts): Cell => ({
        name: `${counts[0]} repeats against ${counts[1]}`,
        simulate: (trial) => repeats(counts, trial),
        ...(counts[0] === 2
          ? { why: 'A run keeps its own scatter where that is larger than the pooled one, which makes intervals a little wide.' }
          : {}),
      }),
    ),
  ],
};
