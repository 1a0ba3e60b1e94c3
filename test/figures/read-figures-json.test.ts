import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Figure, isPresent } from '../../src/figures/figure.ts';
import { figuresJson, runFiguresJson } from '../../src/figures/figures-json.ts';
import { isUnreadable, readFiguresJson, readRunJson } from '../../src/figures/read-figures-json.ts';
import { computeDemo } from '../compute/demo.ts';

const { runs, comparisons } = await computeDemo();
const outcomes = [...runs.outcomes.values()];

function published(id: string): string {
  const { run, result } = runs.outcomes.get(id)!;
  const { setting, conditions, device, specimen } = run;
  const { file, sha256, rows, span: span_s } = result.summary!.logs[0]!;
  const log = { file, sha256, rows, span_s };
  return JSON.stringify(runFiguresJson({ run: id, device, specimen, setting, conditions, log, derived: result.derived! }));
}

/** In order of the addresses, as the file has them; what only a budget tells of a source stands in the budgets there. */
function sorted(figures: ReadonlyMap<string, Figure>): [string, Figure][] {
  return [...figures].sort(([a], [b]) => (a < b ? -1 : 1)).map(([address, figure]) => [address, withoutOwn(figure)]);
}

interface Written {
  readonly budgets: Readonly<Record<string, Readonly<Record<string, { u: number; unit: string; sensitivity: number }>>>>;
}

function withoutOwn(figure: Figure): Figure {
  if (!isPresent(figure) || figure.quantity.parts === null) return figure;
  const parts = figure.quantity.parts.map(({ source: { standard: _, ...source }, share }) => ({ source, share }));
  return { ...figure, quantity: { ...figure.quantity, parts } };
}

describe('published figures come back to the last bit', () => {
  test.each(outcomes.map(({ run }) => run.id))('of the run %s', (id) => {
    const back = readRunJson(published(id));
    if (isUnreadable(back)) throw new Error(back.unreadable);
    const { run, result } = runs.outcomes.get(id)!;
    expect([...back.figures]).toStrictEqual(sorted(result.derived!.figures));
    expect(back).toMatchObject({
      run: id,
      device: run.device,
      specimen: run.specimen,
      log: { rows: result.summary!.logs[0]!.rows },
    });
    const stated = (all: typeof run.setting) =>
      all.map(({ name, text, quantity }) => ({ name, text, ...(quantity && { value: quantity.value, unit: quantity.unit }) }));
    expect(back.setting).toEqual(stated(run.setting));
    expect(back.conditions).toEqual(stated(run.conditions));
  });

  test.each([...comparisons.keys()])('of the comparison %s', (id) => {
    const { figures } = comparisons.get(id)!;
    const back = readFiguresJson(JSON.stringify(figuresJson({ comparison: id }, figures!)));
    expect(isUnreadable(back) ? back.unreadable : [...back]).toStrictEqual(sorted(figures!));
  });

  test.each(outcomes.map(({ run }) => run.id))(
    'of the run %s, the own uncertainty of each source in the budget of each figure',
    (id) => {
      const { figures } = runs.outcomes.get(id)!.result.derived!;
      const { budgets } = JSON.parse(published(id)) as Written;
      const told = [...figures].flatMap(([address, figure]) => {
        const parts = isPresent(figure) ? (figure.quantity.parts ?? []) : [];
        return parts.filter(({ source }) => source.standard).map((part) => ({ address, ...part }));
      });
      expect(told.length).toBeGreaterThan(0);
      for (const { address, source, share } of told) {
        const row = budgets[address]![source.id]!;
        expect([row.u, row.unit], `${address}, ${source.id}`).toEqual([source.standard!.u, source.standard!.unit]);
        expect(row.sensitivity * row.u).toBeCloseTo(share, 12);
      }
    },
  );

  test('of both kinds: with intervals of their own, bounds, unknown uncertainties, tables, repeatability alone', () => {
    const all = outcomes.flatMap(({ result }) => [...result.derived!.figures.values()]);
    const has = (of: (figure: Figure) => boolean) => expect(all.some(of)).toBe(true);
    has((figure) => 'interval' in figure);
    has((figure) => 'bound' in figure);
    has((figure) => 'quantity' in figure && figure.quantity.repeatabilityOnly === true);
    has((figure) => 'quantity' in figure && figure.quantity.step !== undefined);
    has((figure) => 'from' in figure && figure.from.file !== undefined);
  });
});

describe('what is no figures.json is said in words, and never throws', () => {
  const whole = published('larch-rated');

  test.each([
    ['', 'it is not JSON'],
    ['<!doctype html>', 'it is not JSON'],
    ['[]', 'the whole holds [], and an object was expected'],
    ['{}', 'format holds nothing, and something was expected'],
    ['{"format":2}', 'its format is not 1, the only one that is known here'],
    [whole.replace('"run":"larch-rated"', '"run":7'), 'run holds 7, and a text was expected'],
    [
      whole.replace(/"parts":\{"/, '"parts":{"nobody/'),
      /^figures\..* holds .*, and a source listed under sources, and nobody\/.* is not was expected$/,
    ],
  ])('%#', (text, expected) => {
    const back = readRunJson(text);
    expect(isUnreadable(back) && back.unreadable).toEqual(
      typeof expected === 'string' ? expected : expect.stringMatching(expected),
    );
  });

  test('wherever it is cut, and whatever value stands in any place', () => {
    const short = JSON.stringify(
      figuresJson({}, new Map([...runs.outcomes.get('larch-rated')!.result.derived!.figures].slice(0, 4))),
    );
    const places: (readonly (string | number)[])[] = [];
    (function walk(value: unknown, path: readonly (string | number)[]) {
      places.push(path);
      if (typeof value === 'object' && value !== null)
        for (const key of Object.keys(value)) walk((value as never)[key], [...path, key]);
    })(JSON.parse(short), []);
    fc.assert(
      fc.property(fc.constantFrom(...places.slice(1)), fc.jsonValue(), (path, value) => {
        const changed = JSON.parse(short);
        const inner = path.slice(0, -1).reduce((object, key) => object[key], changed);
        inner[path.at(-1)!] = value;
        const back = readFiguresJson(JSON.stringify(changed));
        if (isUnreadable(back)) expect(back.unreadable).toMatch(/expected$|^its format/);
      }),
      { numRuns: 500, seed: 4 },
    );
    fc.assert(
      fc.property(fc.integer({ min: 0, max: short.length - 1 }), (end) => isUnreadable(readFiguresJson(short.slice(0, end)))),
    );
  });
});
