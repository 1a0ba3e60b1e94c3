/** The demonstration's comparison, and small ones that are invented. */

import { beforeAll, describe, expect, test } from 'vitest';
import { comparisonModel } from '../../../src/compute/comparison/comparison-page.ts';
import { gather } from '../../../src/compute/comparison/gather.ts';
import type { Gathered } from '../../../src/compute/models/gathered.ts';
import { figuresOf } from '../../../src/compute/models/gathered-figures.ts';
import type { ComparedCell, ComparedTable, ComparisonModel } from '../../../src/compute/results.ts';
import { storedSeries } from '../../../src/compute/steps/series/series-step.ts';
import { RUNS_DIFFER } from '../../../src/figures/comparison/verdict-words.ts';
import { type Figure, isPresent } from '../../../src/figures/figure.ts';
import { printQuantity, printUncertainty } from '../../../src/quantities/print.ts';
import { printWithUncertainty } from '../../../src/quantities/print-with-uncertainty.ts';
import type { Quantity } from '../../../src/quantities/quantity.ts';
import { computeDemo, type Demo } from '../demo.ts';
import { comparison, run } from './gathered.ts';

const CONTEXT = { path: 'comparisons/x/', body: '', status: 'published', notes: [], copies: [], has: () => true } as const;
const NOTHING_DRAWN = { plots: [], undrawn: [] };

function modelOf(gathered: Gathered): ComparisonModel {
  return comparisonModel(gathered, NOTHING_DRAWN, CONTEXT);
}

function cellAt(table: ComparedTable, label: string, column: string): ComparedCell {
  return table.rows.find((row) => row.label === label)!.cells[table.columns.indexOf(column)]!;
}

/** Without the own uncertainties of sources, which stand in the budgets of `figures.json` and not beside the sources. */
function asPublished(quantity: Quantity): Quantity {
  const parts = quantity.parts?.map(({ source: { standard: _, ...source }, share }) => ({ source, share }));
  return { ...quantity, parts: parts ?? null };
}

let demo: Demo;
let gathered: Gathered;
let model: ComparisonModel;
let figures: ReadonlyMap<string, Figure>;

beforeAll(async () => {
  demo = await computeDemo();
  const { comparison: named, figures: derived } = demo.comparisons.get('larch-steps')!;
  figures = derived!;
  const runs = [...demo.runs.outcomes.values()].map(({ run, result }) => {
    const made = demo.series.get(run.id)!;
    const { derived, summary, tables } = result;
    return [
      run.id,
      { run, derived: derived!, summary: summary!, tables, series: () => storedSeries(demo.store, made), ambient: made.ambient },
    ] as const;
  });
  gathered = gather({ register: demo.register, comparison: named, figures, runs: new Map(runs) })!;
  model = modelOf(gathered);
});

describe('compute/comparison/comparison-page', () => {
  test('prints from JSON alone: what a file gave back is the same page', () => {
    expect(modelOf(JSON.parse(JSON.stringify(gathered)))).toEqual(model);
  });

  test('what was gathered gives the figures back, of the comparison and of its runs, to the last bit', () => {
    const back = figuresOf(gathered);
    expect([...back.keys()].sort()).toEqual([...figures.keys()].sort());
    for (const [address, figure] of figures) {
      const found = back.get(address)!;
      if (isPresent(figure)) expect(isPresent(found) && found.quantity, address).toEqual(asPublished(figure.quantity));
      else expect(found, address).toEqual(figure);
    }
  });

  test('every figure of the comparison stands in one place, printed by the one printer', () => {
    const cells = [model.compared, ...model.byTest].flatMap(({ rows }) => rows.flatMap((row) => row.cells));
    const anchored = new Map(
      cells.filter(({ anchor }) => anchor !== '').map((cell) => [cell.anchor, cell.against ?? cell.figure!]),
    );
    // What could have been told stands beside the figure that it is of.
    const standing = [...figures].filter(([, { of }]) => of?.figure === undefined);
    expect(anchored.size + model.overall.length).toBe(standing.length);
    for (const [address, figure] of standing) {
      if (!isPresent(figure)) throw new Error(`${address} is absent in the demonstration`);
      const cell = anchored.get(address);
      const { quantity, interval } = figure;
      if (cell === undefined) {
        const { shown, uncertainty } = model.overall.find((each) => each.address === address)!;
        expect([shown, uncertainty], address).toEqual([printQuantity(quantity).text, printUncertainty(quantity, { interval })]);
        continue;
      }
      const { repeatabilityOnly: _ofItsRow, ...plain } = quantity;
      expect(cell.shown.replace('×\u00a0', ''), address).toBe(printWithUncertainty(plain, { interval }));
      expect(cell.verdict, address).toBe(figure.of?.verdict === RUNS_DIFFER ? '' : figure.of?.verdict);
    }
  });

  test('that two runs differ is said once above a table; that they do not, in the cell', () => {
    for (const table of [model.compared, model.own])
      expect(table.unsaid).toBe('Where nothing is said below a difference or a ratio, these two runs differ.');
    expect(cellAt(model.own, 'time to steady state', 'brisk').against!.verdict).toBe('these two runs do not differ');
  });

  test('what was found is a sentence a setting, each amount the size of its figure', () => {
    expect(model.findings.map(({ opening }) => opening)).toEqual([
      'brisk (clock 2.2\u00a0GHz, voltage offset 0\u00a0mV) against rated, in these runs: ',
      'quick (clock 2.4\u00a0GHz, voltage offset 60\u00a0mV) against rated, in these runs: ',
      'fast (clock 2.6\u00a0GHz, voltage offset 80\u00a0mV) against rated, in these runs: ',
    ]);
    const [brisk] = model.findings;
    const power = brisk!.differs.find(({ anchor }) => anchor === 'power_delta.brisk')!;
    expect(`${power.amount} ${power.of}`).toBe(
      `${cellAt(model.compared, 'difference in power', 'brisk').figure!.shown} more power`,
    );
    const speedup = figures.get('speedup.brisk')!;
    if (!isPresent(speedup)) throw new Error('the demonstration has a speedup');
    const faster = brisk!.differs.find(({ anchor }) => anchor === 'speedup.brisk')!;
    expect(faster.of).toBe('faster');
    expect(Number.parseFloat(faster.amount)).toBeCloseTo((speedup.quantity.value - 1) * 100, 1);
    const worse = brisk!.differs.find(({ of }) => of === 'less work for each watt')!;
    expect(Number.parseFloat(worse.amount)).toBeGreaterThan(0);
    expect(model.beware).toContain('a clock above the rating');
  });

  test('figures stand in the order of the catalogue, runs in that of the author', () => {
    expect(model.compared.rows.map(({ name }) => name).slice(0, 4)).toEqual([
      'speedup',
      'clock_ratio',
      'scaling_efficiency',
      'gain_per_clock',
    ]);
    expect(model.compared.columns).toEqual(['brisk', 'quick', 'fast']);
    expect(model.own.columns).toEqual(['rated', 'brisk', 'quick', 'fast']);
  });

  test('a speedup over several tests says how far they lie apart', () => {
    expect(cellAt(model.compared, 'speedup', 'fast').figure).toMatchObject({
      verdict: '',
      detail: '4 tests, 1.04 to 1.25',
    });
  });

  test("a run's own figures stand with their difference; the reference has none", () => {
    const load = cellAt(model.own, 'load power', 'fast');
    // A load that the governor cycles is worth four independent readings, so that its scatter decides.
    expect(load.figure!.shown).toBe('10.39\u00a0±\u00a00.24\u00a0W');
    expect(load.against).toMatchObject({
      shown: `+${cellAt(model.compared, 'difference in power', 'fast').figure!.shown}`,
      verdict: '',
    });
    expect(cellAt(model.own, 'load power', 'rated').against).toBeNull();
  });

  test('a difference stands in the unit of what it is between, signed', () => {
    // Gain errors cancel; the slow scatter of the two loads (22 and 17 mW, two degrees of freedom each) does not.
    expect(cellAt(model.own, 'load power', 'brisk').against!.shown).toBe('+0.873\u00a0±\u00a00.078\u00a0W');
    const idle = model.own.rows.find(({ name }) => name === 'idle_temperature')!;
    expect(idle.cells[1]!.figure!.shown).toMatch(/°C$/);
    expect(idle.cells[1]!.against!.shown).toMatch(/^−0\.5\u00a0±.*K$/);
  });

  test('repeatability only is said once a row, in every table', () => {
    const own = model.own.rows.find(({ name }) => name === 'steady_temperature')!;
    const against = model.compared.rows.find(({ name }) => name === 'rise_delta')!;
    expect([own.detail, against.detail]).toEqual(['soc, repeatability only', 'repeatability only']);
    for (const { figure } of [...own.cells, ...against.cells])
      expect(figure!.shown).toMatch(/^[\d.]+\u00a0±\u00a0[\d.]+\u00a0(°C|K)$/);
  });

  test('an absent figure has its reason below, with the runs that it is of', () => {
    expect(model.own.absent).toContain('time to throttle (rated, quick): No throttling was seen in 1800 readings of the load.');
  });

  test('a reason that several figures share is given once', () => {
    const absent = { absent: 'operand-absent', why: 'The run fast has no score.', of: { run: 'fast', reference: 'rated' } };
    const alone = modelOf({
      ...comparison(run('rated'), run('fast')),
      sources: {},
      figures: { 'speedup.fast': absent, 'scaling_efficiency.fast': absent },
    });
    expect(alone.compared.absent).toEqual(['speedup; scaling efficiency (fast): The run fast has no score.']);
    expect(alone.compared.rows.map(({ label }) => label)).toEqual(['speedup', 'scaling efficiency']);
  });

  test('what was not declared is said once; nothing stands in for a clock that the scores state', () => {
    expect(model.inferred).toHaveLength(new Set(model.inferred).size);
    expect(model.inferred).not.toContain(
      'The clock during the scores was not logged: the mean clock of the load phase stands in for it.',
    );
  });

  test('cautions name their runs, each risk once', () => {
    const risks = model.cautions.map(({ risk }) => risk);
    expect(risks).toHaveLength(new Set(risks).size);
    expect(model.cautions.flatMap(({ done }) => done)).toEqual(
      expect.arrayContaining([
        'The load lasted 60 min (rated, brisk, quick, fast).',
        'The core voltage was raised by 60\u00a0mV (quick).',
      ]),
    );
  });

  test('a run or device without a page is named without a link', () => {
    const alone = comparisonModel(gathered, NOTHING_DRAWN, { ...CONTEXT, has: () => false });
    expect(alone.runs.map(({ path }) => path)).toEqual(['', '', '', '']);
    expect(alone.devices).toEqual([{ title: 'Larch 2', path: '' }]);
    expect(model.runs[0]!.path).toBe('runs/larch-rated/');
  });

  test('it is marked as invented as soon as one of its devices is', () => {
    const real = { id: 'alder', title: 'Alder', maker: 'A maker', invented: false };
    expect(modelOf(comparison(run('rated', { device: real }), run('fast', { device: real }))).marks.invented).toBe(false);
    expect(modelOf(comparison(run('rated', { device: real }), run('fast'))).marks.invented).toBe(true);
  });
});
