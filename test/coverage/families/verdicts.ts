/** What comparisons promise: verdicts on linear growth, unequal spreads, the smallest difference told, and the runs that would tell one. */
import { compare } from '../../../src/figures/comparison/compare.ts';
import type { ComparedRun, ComparedSetting } from '../../../src/figures/comparison/compared.ts';
import { type Figure, isPresent } from '../../../src/figures/figure.ts';
import { studentQuantile } from '../../../src/statistics/student-quantile.ts';
import type { Random } from '../../simulator/random.ts';
import type { Answer, Cell, Family, Saying, Trial } from '../family.ts';

/** What a run says of its own scatter, as a share: little of how runs lie apart. */
const WITHIN = 0.0002;
const CLOCKS = [1, 1.12, 1.24, 1.36];

function figure(name: 'score' | 'score_clock' | 'load_power', address: string, run: string, value: number, unit: string): Figure {
  const source = { id: `run:${run}/${address}/sampling`, title: 'scatter', dof: 50 };
  const test = address.split('.')[1];
  const of = {
    ...(test ? { test, title: test } : { at: 'board input' }),
    ...(name === 'score' ? { better: 'higher', n: 5, spread: WITHIN * value } : {}),
    ...(name === 'score_clock' ? { clock: 'delivered' } : {}),
  };
  return { name, quantity: { value, unit, parts: [{ source, share: WITHIN * value }] }, from: { columns: [], rows: null }, of };
}

function runOf(run: string, made: Readonly<Record<string, number>>): ComparedRun {
  const units = { score: 'points', score_clock: 'Hz', load_power: 'W' } as const;
  const figures = new Map<string, Figure>();
  for (const [address, value] of Object.entries(made)) {
    const name = address.split('.')[0] as keyof typeof units;
    figures.set(address, figure(name, address, run, value, units[name]));
  }
  return { alias: run, run, device: 'larch', specimen: 'no-1', figures };
}

const verdictOf = (figures: ReadonlyMap<string, Figure>, address: string) => String(figures.get(address)?.of?.verdict ?? '');

/** Growth of three tests with the clock: as a power of it. Scores scatter from run to run, clocks do not. */
function growth(settings: 2 | 4, runs: number, exponent: number, { noise, run }: Trial): (Answer | Saying)[] {
  const tests = ['t0', 't1', 't2'];
  const made = CLOCKS.slice(0, settings).map((clock, k): ComparedSetting => {
    const one = (r: number) => {
      const id = `${run}-${k}-${r}`;
      const values = tests.flatMap((test) => [
        [`score.${test}`, 100 * clock ** exponent * (1 + SPREAD * noise.normal())],
        [`score_clock.${test}`, 1.6e9 * clock],
      ]);
      return { ...runOf(id, Object.fromEntries(values)), clockSetting: 1.6e9 * clock };
    };
    return { alias: `s${k}`, runs: Array.from({ length: runs }, (_, r) => one(r)) };
  });
  const figures = compare({ id: run, reference: made[0]!, others: made.slice(1) });
  const addresses = tests.map((test) => (settings === 4 ? `scaling_exponent.${test}` : `scaling_exponent.s1.${test}`));
  const excluded = addresses.filter((address) => verdictOf(figures, address).startsWith('linear is excluded')).length;
  return [
    { asked: addresses[0]!, figure: figures.get(addresses[0]!), truth: exponent },
    exponent === 1
      ? { asked: 'linear growth of any of three tests is excluded', said: excluded > 0, atMost: 0.05 }
      : {
          asked: 'growth that is not linear is told in the first test',
          said: verdictOf(figures, addresses[0]!).startsWith('linear is excluded: it grows more slowly'),
        },
  ];
}

/** Standard deviation between runs, as a share. */
const SPREAD = 0.005;
const POWER = 8;

function powers(alias: string, run: string, values: readonly number[]): ComparedSetting {
  return { alias, runs: values.map((value, k) => runOf(`${run}-${alias}${k}`, { load_power: value })) };
}

function drawn(level: number, spread: number, n: number, noise: Random): number[] {
  return Array.from({ length: n }, () => POWER * level * (1 + spread * noise.normal()));
}

function unequal(
  [first, second]: readonly [number, number],
  runs: readonly [number, number],
  { noise, run }: Trial,
): (Answer | Saying)[] {
  // The setting that lies further apart has more runs, so that the pooled spread is mostly its own.
  const outweighs = first === second || (first < second && runs[0] < runs[1]);
  const reference = powers('a', run, drawn(1, first, runs[0], noise));
  const figures = compare({ id: run, reference, others: [powers('b', run, drawn(1, second, runs[1], noise))] });
  const known = 1.96 * POWER * Math.sqrt(first ** 2 / runs[0] + second ** 2 / runs[1]);
  return [
    { asked: 'power_delta.b', figure: figures.get('power_delta.b'), truth: 0, known },
    {
      asked: 'equal settings are told apart',
      said: verdictOf(figures, 'power_delta.b') === 'told apart',
      ...(outweighs ? { atMost: 0.05 } : {}),
    },
  ];
}

/** Two settings whose difference is just the smallest that comparisons with this spread tell on average. */
function justTold(runs: number, { noise, run }: Trial): Saying[] {
  const bar = studentQuantile(0.975, 2 * (runs - 1)) * SPREAD * Math.sqrt(2 / runs);
  const [a, b] = [powers('a', run, drawn(1, SPREAD, runs, noise)), powers('b', run, drawn(1 + bar, SPREAD, runs, noise))];
  const figures = compare({ id: run, reference: a, others: [b] });
  const delta = figures.get('power_delta.b')!;
  const smallest = figures.get('smallest_told.power_delta.b')!;
  const clears = isPresent(delta) && isPresent(smallest) && Math.abs(delta.quantity.value) > smallest.quantity.value;
  const told = verdictOf(figures, 'power_delta.b') === 'told apart';
  return [
    { asked: 'a difference of the smallest size is told', said: told, atLeast: 0.4, atMost: 0.6 },
    { asked: 'what is larger than the smallest difference is told', said: told || !clears, atLeast: 1 },
  ];
}

/** As many runs of each setting as a comparison that saw the true spread and the true difference asks for. */
function asMany(difference: number, { noise, run }: Trial): Saying[] {
  const about = (level: number) => [-1, 1].map((side) => POWER * level * (1 + (side * SPREAD) / Math.SQRT2));
  const pilot = compare({
    id: 'pilot',
    reference: powers('a', 'pilot', about(1)),
    others: [powers('b', 'pilot', about(1 + difference))],
  });
  const asked = pilot.get('runs_to_tell.power_delta.b')!;
  if (!isPresent(asked)) throw new Error(asked.why);
  const n = asked.quantity.value;
  const [a, b] = [powers('a', run, drawn(1, SPREAD, n, noise)), powers('b', run, drawn(1 + difference, SPREAD, n, noise))];
  const figures = compare({ id: run, reference: a, others: [b] });
  return [
    {
      asked: 'the difference is told with the runs that were asked for',
      said: verdictOf(figures, 'power_delta.b') === 'told apart',
      atLeast: 0.9,
    },
  ];
}

const percent = (share: number) => `${Number((100 * share).toFixed(1))} %`;
const LOGS =
  'Each setting was run once, and nothing says how runs lie apart: the interval is that of the logs, and no setting is told apart.';
const TESTED =
  'Whether the spreads of two settings differ is tested with few runs; where the test misses it, the pooled spread is too small for the one and too large for the other.';
const BEYOND =
  'Two or three runs cannot show that their setting lies five times as far apart as the other: nothing in such data tells, and the pooled spread is then too small for it.';

const name = (count: number, what: string) => `${count} ${what}${count === 1 ? '' : 's'}`;

function grows(settings: 2 | 4, runs: number, exponent: number, more: Partial<Cell> = {}): Cell {
  return {
    name: `${settings} settings, ${name(runs, 'run')} each, exponent ${exponent}`,
    simulate: (trial) => growth(settings, runs, exponent, trial),
    ...(runs === 1 ? { beyond: LOGS } : {}),
    ...more,
  };
}

export const FAMILY: Family = {
  title: 'What comparisons promise',
  words: `Runs of one setting lie apart by ${percent(SPREAD)} where nothing else is said, and know their own scatter of 0.02 %. Three tests grow as a power of the clock; settings are equal but scatter unequally; a difference is just the smallest that would be told, or is looked for with as many runs as were asked for.`,
  trials: 200,
  quick: 60,
  cells: [
    ...([2, 4] as const).flatMap((settings) =>
      [1, 2, 3].flatMap((runs) =>
        [1, 0.8].map((exponent) => grows(settings, runs, exponent, { quick: runs === 2 && exponent === 1 })),
      ),
    ),
    ...(
      [
        [0.002, 0.01, 3, 3],
        [0.002, 0.01, 4, 4],
        [0.002, 0.01, 2, 5],
        [0.01, 0.002, 2, 5],
        [0.005, 0.005, 2, 5],
      ] as const
    ).map(
      ([first, second, n, m]): Cell => ({
        name: `equal settings, ${n} runs that lie ${percent(first)} apart against ${m} that lie ${percent(second)} apart`,
        simulate: (trial) => unequal([first, second], [n, m], trial),
        ...(first > second || n + m < 7 ? { beyond: BEYOND } : { why: TESTED }),
        quick: n === 4,
      }),
    ),
    ...[2, 3, 4].map(
      (runs): Cell => ({
        name: `a difference of the smallest size, ${runs} runs each`,
        simulate: (trial) => justTold(runs, trial),
        quick: runs === 3,
      }),
    ),
    ...[0.005, 0.01, 0.02].map(
      (by): Cell => ({
        name: `a difference of ${percent(by)} with as many runs as were asked for`,
        simulate: (trial) => asMany(by, trial),
        quick: by === 0.01,
      }),
    ),
  ],
};
