/** Settings compared: runs lie apart from boot to boot and day to day, ten tests are done at once, and some settings are equal. */

import type { FigureName } from '../../../src/figures/catalogue.ts';
import { compare } from '../../../src/figures/comparison/compare.ts';
import type { ComparedRun } from '../../../src/figures/comparison/compared.ts';
import type { Figure } from '../../../src/figures/figure.ts';
import type { Random } from '../../simulator/random.ts';
import type { Answer, Cell, Family, Saying, Trial } from '../family.ts';

/** What a run says of its own scatter, as a share: little of how runs lie apart. */
const WITHIN = 0.001;
/** Share in which settings that are equal but for their spread may be told apart: what is asked of a present interval, 90 %, the other way round. */
const TOLD_FURTHER = 0.1;
const TESTS = Array.from({ length: 10 }, (_, k) => `t${k}`);
const ALIASES = ['a', 'b', 'c', 'd'];

interface Made {
  readonly settings: 2 | 4;
  readonly runs: number;
  /** Runs of the second setting, where they are more or fewer. */
  readonly runsOfSecond?: number;
  /** How many times as far apart the second setting's runs lie; once when left out. */
  readonly further?: number;
  /** Standard deviation between runs of one setting, as a share. */
  readonly spread: number;
  /** By how much the second setting is higher, as a share. */
  readonly higher?: number;
  /** Two other settings, run so often each, that the comparison names as repeats. */
  readonly borrowed?: number;
}

function simulate(made: Made, { noise, run }: Trial): (Answer | Saying)[] {
  const { settings, runs, runsOfSecond = runs, spread, further = 1, higher = 0, borrowed = 0 } = made;
  const of = (alias: string, n: number, level: number, apart = spread) => ({
    alias,
    runs: Array.from({ length: n }, (_, k) => runOf(`${run}-${alias}${k}`, level, apart, noise)),
  });
  const [reference, ...others] = ALIASES.slice(0, settings).map((alias, k) =>
    k === 1 ? of(alias, runsOfSecond, 1 + higher, spread * further) : of(alias, runs, 1),
  );
  const repeats = borrowed > 0 ? ['x', 'y'].map((alias) => of(alias, borrowed, 1.1).runs) : [];
  const figures = compare({ id: run, reference: reference!, others, repeats });
  const told = (name: string, byTest: boolean) =>
    [...figures.values()].some((figure) => figure.name === name && (figure.of?.test !== undefined) === byTest && isTold(figure));
  const variance = (apart: number, n: number) => (apart ** 2 + WITHIN ** 2) / n;
  const known = spread > 0 ? 1.96 * Math.sqrt(variance(spread, runs) + variance(spread * further, runsOfSecond)) : undefined;
  const answers: Answer[] = [
    { asked: 'power_delta.b', figure: figures.get('power_delta.b'), truth: 8 * higher, ...(known && { known: 8 * known }) },
    { asked: 'speedup.b.t0', figure: figures.get('speedup.b.t0'), truth: 1 + higher, ...(known && { known }) },
  ];
  if (higher > 0) return [...answers, { asked: 'the higher power told apart', said: isTold(figures.get('power_delta.b')!) }];
  const atMost = further === 1 ? 0.05 : TOLD_FURTHER;
  return [
    ...answers,
    { asked: 'any power told apart', said: told('power_delta', false), atMost },
    { asked: 'any rise told apart', said: told('rise_delta', false), atMost },
    { asked: 'any speed told apart', said: told('speedup', false), atMost },
    { asked: 'any of ten tests told apart', said: told('speedup', true), ...(further === 1 ? { atMost } : {}) },
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
const OUTVOTED =
  'A setting that was run less often keeps its own spread where that is larger, which makes intervals a little wide where in truth both lie equally far apart.';
const FURTHER =
  'Two or three runs cannot show that their setting lies further apart than the others, so that some of these settings are told apart though they are equal; with ten tests at once that adds up, since each test has a spread of its own.';
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

/** Settings that are equal but for how far their runs lie apart, or how often they were run. */
function unlike(runs: number, runsOfSecond: number, further: number): Cell {
  const counts = runs === runsOfSecond ? `${runs} runs each` : `${runs} runs against ${runsOfSecond}`;
  return {
    name: `2 settings, ${counts}, runs 0.5 % apart${further === 1 ? '' : `, those of the second ${further} times as far`}`,
    simulate: (trial) => simulate({ settings: 2, runs, runsOfSecond, spread: 0.005, further }, trial),
    quick: runs === 5 && runsOfSecond === 2,
    why: further === 1 ? OUTVOTED : FURTHER,
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
    'Runs of one setting lie apart by a share of each figure; each run knows its own scatter of 0.1 %. Settings are equal, so that no verdict may tell them apart in more than 5 % of comparisons, by one figure or by ten tests at once; or equal but for how far their runs lie apart, where one figure may tell them apart in up to 10 %, and ten tests at once do so more often (counted below); or one is higher. Repeats of one test scatter by 1 %.',
  trials: 2000,
  quick: 50,
  cells: [
    ...[1, 2, 3, 4].flatMap((runs) => [0, 0.002, 0.005, 0.01].map((spread) => equal({ settings: 2, runs, spread }))),
    ...[1, 2, 3].flatMap((runs) => [0.002, 0.01].map((spread) => equal({ settings: 4, runs, spread }))),
    ...[0.002, 0.005, 0.01].map((spread) => equal({ settings: 2, runs: 1, spread, borrowed: 3 })),
    ...(
      [
        [2, 2],
        [3, 3],
        [4, 4],
        [3, 2],
        [5, 2],
        [5, 3],
      ] as const
    ).flatMap(([runs, second]) =>
      [1, 2, 5].flatMap((further) => (runs === second && further === 1 ? [] : unlike(runs, second, further))),
    ),
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
