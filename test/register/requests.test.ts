import { describe, expect, it } from 'vitest';
import type { Place } from '../../src/problem.ts';
import { type RequestAttributes, readPlotRequest, readTableRequest } from '../../src/register/requests.ts';
import { line } from './base.ts';

const RUNS = new Map([
  ['rated', 'larch-rated'],
  ['fast', 'larch-fast'],
]);
const PLACE: Place = { file: 'content/notes/a.md', line: 7, column: 1 };

/** Attributes as if each value stood ten columns after the one before it. */
function attributes(values: Readonly<Record<string, string>>): RequestAttributes {
  return new Map(
    Object.entries(values).map(([key, value], index) => [key, { value, place: { ...PLACE, column: 10 * (index + 1) } }]),
  );
}

function problemsOf(read: ReturnType<typeof readPlotRequest> | ReturnType<typeof readTableRequest>): string[] {
  return 'problems' in read ? read.problems.map(line) : [];
}

describe('register/requests', () => {
  it('reads a plot', () => {
    expect(
      readPlotRequest(attributes({ kind: 'trace', runs: 'fast rated', channels: 'soc board', title: ' Hot ' }), RUNS, PLACE),
    ).toEqual({
      kind: 'trace',
      id: 'plot-trace-soc-board-fast-rated',
      runs: [
        { alias: 'fast', run: 'larch-fast', slot: 1 },
        { alias: 'rated', run: 'larch-rated', slot: 0 },
      ],
      channels: ['soc', 'board'],
      rise: false,
      title: 'Hot',
      place: PLACE,
    });
  });

  it('takes all runs of the note where none is named', () => {
    const read = readPlotRequest(attributes({ kind: 'step-response', rise: 'true', id: 'steps' }), RUNS, PLACE);
    expect(read).toMatchObject({ id: 'steps', rise: true, channels: [], runs: [{ alias: 'rated' }, { alias: 'fast' }] });
  });

  it.each([
    [
      { kind: 'tracee' },
      'content/notes/a.md:7:10: error: request-kind: a plot of the kind `tracee` | expected `trace`, `step-response`, `power-by-phase`, `against`, `thermal`, `stability`, `scaling`, `deltas` or `scores` | did you mean `trace`?',
    ],
    [
      { runs: 'fast' },
      'content/notes/a.md:7:1: error: request-kind: a plot without `kind` | expected `trace`, `step-response`, `power-by-phase`, `against`, `thermal`, `stability`, `scaling`, `deltas` or `scores`',
    ],
    [
      { kind: 'trace', runs: 'rated fats' },
      'content/notes/a.md:7:26: error: request-alias: unknown alias `fats` | expected `rated` or `fast` | did you mean `fast`?',
    ],
    [
      { kind: 'trace', runs: 'fast fast' },
      'content/notes/a.md:7:25: error: repeated-item: `fast` a second time | remove one of them',
    ],
    [
      { kind: 'trace', runs: ' ' },
      'content/notes/a.md:7:20: error: request-alias: no run | expected aliases of the note: `rated` or `fast`',
    ],
    [
      { kind: 'trace', rise: 'yes' },
      'content/notes/a.md:7:20: error: request-attribute: `rise` of `yes` | expected `true` or `false`',
    ],
    [
      { kind: 'trace', id: 'My plot' },
      'content/notes/a.md:7:20: error: bad-id: the id `My plot` | expected lower-case letters and digits, in words joined by single hyphens',
    ],
  ])('refuses a plot %o', (values, expected) => {
    expect(problemsOf(readPlotRequest(attributes(values as Record<string, string>), RUNS, PLACE))).toEqual([expected]);
  });

  const LADDERS = new Map([['ladder', 'larch-2-no-1']]);
  const readStability = (values: Record<string, string>, attempts: ReadonlyMap<string, string> = LADDERS) =>
    readPlotRequest(attributes({ kind: 'stability', ...values }), RUNS, PLACE, attempts);

  it('reads a plot of attempts, the only ones where none are named', () => {
    const expected = {
      kind: 'stability',
      id: 'plot-stability-ladder',
      runs: [],
      attempts: [{ alias: 'ladder', id: 'larch-2-no-1' }],
      channels: [],
      rise: false,
      place: PLACE,
    };
    expect(readStability({})).toEqual(expected);
    expect(readStability({ attempts: 'ladder' })).toEqual(expected);
    expect(readStability({ attempts: 'ladder', title: 'Rungs', id: 'rungs' })).toEqual({
      ...expected,
      title: 'Rungs',
      id: 'rungs',
    });
  });

  it.each([
    [
      { attempts: 'lader' },
      LADDERS,
      '7:20: error: request-alias: unknown alias `lader` of attempts | expected one alias of attempts: `ladder` | did you mean `ladder`?',
    ],
    [{}, new Map<string, string>(), '7:1: error: request-alias: a plot of no attempts | expected a note that names `attempts`'],
    [
      {},
      new Map([...LADDERS, ['other', 'b']]),
      '7:1: error: request-alias: a plot of no attempts | expected one alias of attempts: `ladder` or `other`',
    ],
    [{ runs: 'fast' }, LADDERS, '7:20: error: request-attribute: `runs` of a plot of the kind `stability` | remove it'],
  ])('refuses a plot of attempts %o', (values, attempts, expected) => {
    expect(problemsOf(readStability(values as Record<string, string>, attempts))).toEqual([`content/notes/a.md:${expected}`]);
  });

  it('refuses attempts in a plot of runs', () => {
    expect(problemsOf(readPlotRequest(attributes({ kind: 'trace', attempts: 'ladder' }), RUNS, PLACE, LADDERS))).toEqual([
      'content/notes/a.md:7:20: error: request-attribute: `attempts` of a plot of the kind `trace` | remove it',
    ]);
  });

  it.each([
    ['power-by-phase', 'rise'],
    ['thermal', 'channels'],
    ['against', 'rise'],
    ['trace', 'of'],
    ['step-response', 'comparison'],
  ])('refuses, of the kind %s, %s, which it has no use for', (kind, name) => {
    expect(problemsOf(readPlotRequest(attributes({ kind, [name]: 'true' }), RUNS, PLACE))).toEqual([
      `content/notes/a.md:7:20: error: request-attribute: \`${name}\` of a plot of the kind \`${kind}\` | remove it`,
    ]);
  });

  const STEPS = new Map([['steps', 'larch-steps']]);
  const readScaling = (values: Record<string, string>, comparisons: ReadonlyMap<string, string> = STEPS) =>
    readPlotRequest(attributes({ kind: 'scaling', ...values }), RUNS, PLACE, LADDERS, comparisons);

  it('reads a plot of a comparison, the only one where none is named, with the places of the note’s runs', () => {
    const expected = {
      kind: 'scaling',
      id: 'plot-scaling-steps',
      runs: [],
      comparison: { alias: 'steps', id: 'larch-steps', slots: { 'larch-rated': 0, 'larch-fast': 1 } },
      channels: [],
      rise: false,
      place: PLACE,
    };
    expect(readScaling({})).toEqual(expected);
    expect(readScaling({ comparison: 'steps' })).toEqual(expected);
    expect(readScaling({ kind: 'scores', title: 'Gains' })).toEqual({
      ...expected,
      kind: 'scores',
      id: 'plot-scores-steps',
      title: 'Gains',
    });
  });

  it.each([
    [
      { comparison: 'step' },
      STEPS,
      '7:20: error: request-alias: unknown alias `step` of comparisons | expected one alias of comparisons: `steps` | did you mean `steps`?',
    ],
    [
      { comparison: 'fast' },
      STEPS,
      '7:20: error: request-alias: unknown alias `fast` of comparisons | expected one alias of comparisons: `steps`',
    ],
    [
      { kind: 'deltas' },
      new Map<string, string>(),
      '7:1: error: request-alias: a plot of no comparison | expected a note that names `comparisons`',
    ],
    [
      { kind: 'scores' },
      new Map([...STEPS, ['cooled', 'b']]),
      '7:1: error: request-alias: a plot of no comparison | expected one alias of comparisons: `steps` or `cooled`',
    ],
    [{ runs: 'fast' }, STEPS, '7:20: error: request-attribute: `runs` of a plot of the kind `scaling` | remove it'],
    [{ attempts: 'ladder' }, STEPS, '7:20: error: request-attribute: `attempts` of a plot of the kind `scaling` | remove it'],
  ])('refuses a plot of a comparison %o', (values, comparisons, expected) => {
    expect(problemsOf(readScaling(values as Record<string, string>, comparisons))).toEqual([`content/notes/a.md:${expected}`]);
  });

  it.each(['trace', 'stability'])('refuses a comparison in a plot of the kind %s', (kind) => {
    expect(problemsOf(readPlotRequest(attributes({ kind, comparison: 'steps' }), RUNS, PLACE, LADDERS, STEPS))).toEqual([
      `content/notes/a.md:7:20: error: request-attribute: \`comparison\` of a plot of the kind \`${kind}\` | remove it`,
    ]);
  });

  it('reads a table, with names in quotes kept whole', () => {
    expect(readTableRequest(attributes({ runs: 'fast', of: 'peak_temperature score."aes 1t"' }), RUNS, PLACE)).toEqual({
      id: 'table-peak-temperature-score-aes-1t',
      runs: [{ alias: 'fast', run: 'larch-fast' }],
      of: [
        { address: 'peak_temperature', place: { file: PLACE.file, line: 7, column: 20, endLine: 7, endColumn: 36 } },
        { address: 'score."aes 1t"', place: { file: PLACE.file, line: 7, column: 37, endLine: 7, endColumn: 51 } },
      ],
      place: PLACE,
    });
  });

  it('refuses a table of nothing, or of one figure twice', () => {
    expect(problemsOf(readTableRequest(attributes({ runs: 'fast' }), RUNS, PLACE))).toEqual([
      'content/notes/a.md:7:1: error: request-attribute: a table of nothing | expected `of` with one figure or more',
    ]);
    expect(problemsOf(readTableRequest(attributes({ of: 'energy energy' }), RUNS, PLACE))).toEqual([
      'content/notes/a.md:7:17: error: repeated-item: `energy` a second time | remove one of them',
    ]);
  });

  it('tells all problems of a request together', () => {
    expect(problemsOf(readPlotRequest(attributes({ kind: 'x', runs: 'y', rise: 'z' }), new Map(), PLACE))).toHaveLength(3);
  });
});
