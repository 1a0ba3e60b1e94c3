import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { derive } from '../../src/figures/derive.ts';
import { ABSENT_CODES } from '../../src/figures/figure.ts';
import { figuresJson, runFiguresJson } from '../../src/figures/figures-json.ts';
import { attemptsHead } from '../../src/figures/stability/attempts-json.ts';
import { readAttempts } from '../../src/figures/stability/read-attempts.ts';
import { stabilityFigures } from '../../src/figures/stability/stability.ts';
import { readSurface } from '../../src/figures/surface/read-surface.ts';
import { contextOf, every, instrumentOf, logOf, noise, stepAt } from './build.ts';

const finite = v.pipe(v.number(), v.finite());
const pair = v.strictTuple([finite, finite]);
const of = v.optional(v.record(v.string(), v.union([v.string(), finite, v.boolean()])));

const PRESENT = v.strictObject({
  value: finite,
  unit: v.picklist(['°C', 'K', 's', 'Hz', 'A', 'V', 'W', 'J', 'K/W', '1']),
  u: v.nullable(finite),
  dof: v.nullable(finite),
  interval: v.nullable(pair),
  own_interval: v.optional(v.literal(true)),
  parts: v.nullable(v.record(v.string(), finite)),
  step: v.optional(finite),
  definition: v.pipe(v.string(), v.nonEmpty()),
  source: v.pipe(v.string(), v.nonEmpty()),
  from: v.strictObject({ columns: v.array(v.string()), rows: v.nullable(pair), file: v.optional(v.string()) }),
  inferred: v.optional(v.array(v.string())),
  of,
});
const ABSENT = v.strictObject({
  absent: v.picklist(ABSENT_CODES),
  why: v.pipe(v.string(), v.endsWith('.')),
  bound: v.optional(v.strictObject({ relation: v.picklist(['>', '<']), value: finite, unit: v.string() })),
  of,
});
const FILE = v.strictObject({
  format: v.literal(1),
  run: v.string(),
  device: v.string(),
  specimen: v.string(),
  log: v.strictObject({ file: v.string(), sha256: v.string(), rows: finite, span_s: finite }),
  budgets: v.record(
    v.string(),
    v.record(v.string(), v.strictObject({ u: finite, unit: v.string(), sensitivity: finite, share: finite })),
  ),
  sources: v.record(
    v.string(),
    v.strictObject({ title: v.string(), dof: v.nullable(finite), distribution: v.exactOptional(v.literal('rectangular')) }),
  ),
  figures: v.record(v.string(), v.union([PRESENT, ABSENT])),
});

function published(): unknown {
  const random = noise(6);
  const log = logOf(every(1, 3600), {
    soc: { quantity: 'temperature', values: (t) => stepAt(t) + random(), instrument: 'probe' },
    room: { quantity: 'ambient', values: () => 22 + 0.1 * random() },
    board: { quantity: 'power', values: () => 10 + random() },
  });
  const derived = derive(
    log,
    contextOf({ instruments: { probe: instrumentOf('probe', 'temperature', { absolute: 1.5, ofReading: 0.01 }) } }),
  );
  const object = runFiguresJson({
    run: 'soak',
    device: 'larch',
    specimen: 'no-1',
    log: { file: 'data/x.csv', sha256: 'ab', rows: 3601, span_s: 3600 },
    derived,
  });
  return JSON.parse(JSON.stringify(object));
}

describe('figures.json', () => {
  const raw = published();
  const file = v.parse(FILE, raw);
  const present = Object.entries(file.figures).filter(
    (entry): entry is [string, v.InferOutput<typeof PRESENT>] => 'value' in entry[1],
  );

  test('has the agreed shape, with present and absent figures', () => {
    expect(present.length).toBeGreaterThan(8);
    expect(Object.values(file.figures).some((figure) => 'absent' in figure)).toBe(true);
  });

  test('begins with its format, all other keys are sorted', () => {
    expect(Object.keys(raw as object)).toEqual(['format', 'budgets', 'device', 'figures', 'log', 'run', 'sources', 'specimen']);
    const unsorted: string[] = [];
    const walk = (value: unknown, path: string): void => {
      if (typeof value !== 'object' || value === null || Array.isArray(value)) return;
      const keys = Object.keys(value);
      if (path !== '' && keys.join() !== [...keys].sort().join()) unsorted.push(path);
      for (const key of keys) walk((value as Record<string, unknown>)[key], `${path}/${key}`);
    };
    walk(raw, '');
    expect(unsorted).toEqual([]);
  });

  test('u is the root sum of squares of the parts in their order, to the last bit', () => {
    for (const [address, { u, parts }] of present) {
      const shares = Object.values(parts!);
      const sum = shares.length === 1 ? Math.abs(shares[0]!) : Math.sqrt(shares.reduce((total, share) => total + share * share, 0));
      expect([address, u]).toEqual([address, sum]);
    }
  });

  test('every source of a part is listed, and no other', () => {
    const used = new Set(present.flatMap(([, { parts }]) => Object.keys(parts!)));
    expect(Object.keys(file.sources)).toEqual([...used].sort());
    expect(file.sources['instrument:probe/temperature/offset']).toEqual({
      title: 'offset error of probe (temperature)',
      dof: null,
      distribution: 'rectangular',
    });
  });

  test('a figure without stated accuracy says so', () => {
    expect(file.figures.load_power).toMatchObject({ of: { repeatability_only: true } });
    expect(file.figures.peak_temperature).not.toMatchObject({ of: { repeatability_only: true } });
  });

  test('refuses a number that is not finite', () => {
    const derived = {
      figures: new Map([
        [
          'x',
          { name: 'energy' as const, quantity: { value: Number.NaN, unit: 'J', parts: [] }, from: { columns: [], rows: null } },
        ],
      ]),
      phases: [],
      inferences: [],
    };
    expect(() =>
      runFiguresJson({ run: 'r', device: 'd', specimen: 's', log: { file: '', sha256: '', rows: 0, span_s: 0 }, derived }),
    ).toThrow(RangeError);
  });
});

const csv = (...lines: string[]) => new TextEncoder().encode([...lines, ''].join('\n'));

describe('figures.json of tables', () => {
  test('surface figures have the agreed shape, and name the table that they are from', () => {
    const rows = ['Lid,lid,plastic,held,50,0.95,0.9 ± 0.05,22 ± 1', 'Fin,sink,aluminium,none,50,0.95,0.9,22'];
    const { surface } = readSurface(
      csv('spot,part,material,contact,reading,emissivity_set,emissivity,reflected', ...rows),
      'data/s.csv',
      'camera',
    );
    const context = contextOf({
      instruments: { camera: instrumentOf('camera', 'temperature', { absolute: 2 }) },
      ambient: { value: 22, unit: '°C', parts: [] },
    });
    const { figures } = derive(logOf(every(1, 60), {}), context, { surface });
    const own = new Map([...figures].filter(([, { name }]) => ['surface', 'hottest_surface', 'touch_margin'].includes(name)));
    const raw = JSON.parse(JSON.stringify(figuresJson({}, own))) as { figures: Record<string, unknown> };
    const read = Object.entries(raw.figures).map(
      ([address, figure]) => [address, v.parse(v.union([PRESENT, ABSENT]), figure)] as const,
    );
    expect(read.map(([address]) => address)).toEqual([
      'hottest_surface',
      'hottest_surface.lid',
      'hottest_surface.sink',
      'surface.fin',
      'surface.lid',
      'touch_margin.fin',
      'touch_margin.lid',
    ]);
    expect(raw.figures['surface.lid']).toMatchObject({
      unit: '°C',
      from: { file: 'data/s.csv', rows: [2, 2] },
      of: { spot: 'lid' },
    });
    expect(raw.figures['touch_margin.lid']).toMatchObject({ unit: 'K', of: { limit_celsius: 48, spot: 'lid' } });
    expect(raw.figures['surface.fin']).toMatchObject({ absent: 'low-emissivity', of: { spot: 'fin' } });
  });

  test('a device’s file has all specimens together and each apart', () => {
    const ladders = ['no-1', 'no-2'].map((specimen) => {
      const passing = { test: 'integer mix', duration: 3600, ambient: '22 °C' };
      const outcome = specimen === 'no-1' ? 'passed' : 'hung under load';
      const rows = csv('clock,voltage_offset,outcome,note', '2 GHz,0 mV,passed,', `2.2 GHz,0 mV,${outcome},`);
      return { id: `ladder-${specimen}`, sha256: 'ab', ladder: readAttempts(rows, 'data/a.csv', specimen, passing).ladder };
    });
    const all = stabilityFigures(ladders.map(({ ladder }) => ladder));
    const figures = v.record(v.string(), v.union([PRESENT, ABSENT]));
    const DEVICE = v.strictObject({
      format: v.literal(1),
      device: v.string(),
      attempts: v.array(
        v.strictObject({ id: v.string(), specimen: v.string(), file: v.string(), sha256: v.string(), rows: finite }),
      ),
      specimens: v.record(v.string(), v.strictObject({ figures })),
      sources: v.record(v.string(), v.never()),
      figures,
    });
    const raw = JSON.parse(JSON.stringify(figuresJson({ device: 'larch', ...attemptsHead(ladders) }, all)));
    const file = v.parse(DEVICE, raw);
    expect(file.figures.highest_passed_clock).toMatchObject({ value: 2e9, u: 0, of: { basis: '2 specimens, 2 × 60 min' } });
    expect(file.specimens['no-1']!.figures.highest_passed_clock).toMatchObject({
      value: 2.2e9,
      of: { basis: '1 specimen, 1 × 60 min' },
    });
    expect(file.specimens['no-2']!.figures['lowest_failed_clock.0 mV']).toMatchObject({
      value: 2.2e9,
      of: { outcome: 'hung under load' },
    });
  });
});
