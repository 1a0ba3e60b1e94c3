import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { derive } from '../../src/figures/derive.ts';
import { ABSENT_CODES } from '../../src/figures/figure.ts';
import { publishFigures } from '../../src/figures/publish.ts';
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
  parts: v.nullable(v.record(v.string(), finite)),
  definition: v.pipe(v.string(), v.nonEmpty()),
  source: v.pipe(v.string(), v.nonEmpty()),
  from: v.strictObject({ columns: v.array(v.string()), rows: v.nullable(pair) }),
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
  sources: v.record(v.string(), v.strictObject({ title: v.string(), dof: v.nullable(finite) })),
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
  const object = publishFigures({
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
    expect(Object.keys(raw as object)).toEqual(['format', 'device', 'figures', 'log', 'run', 'sources', 'specimen']);
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
    });
  });

  test('a figure without stated accuracy says so', () => {
    expect(file.figures.load_power).toMatchObject({ of: { repeatability_only: true } });
    expect(file.figures.peak_temperature).not.toMatchObject({ of: { repeatability_only: true } });
  });

  test('refuses a number that is not finite', () => {
    const derived = {
      figures: new Map([
        ['x', { name: 'energy', quantity: { value: Number.NaN, unit: 'J', parts: [] }, from: { columns: [], rows: null } }],
      ]),
      phases: [],
      inferences: [],
    };
    expect(() =>
      publishFigures({ run: 'r', device: 'd', specimen: 's', log: { file: '', sha256: '', rows: 0, span_s: 0 }, derived }),
    ).toThrow(RangeError);
  });
});
