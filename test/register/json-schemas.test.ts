import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { FRONT_MATTER } from '../../src/register/files/front-matter-shapes.ts';
import { jsonSchemas } from '../../src/register/json-schemas.ts';
import { type KeyFacts, keysOf } from '../../src/register/values/shape.ts';
import { demonstrationContent } from '../demonstration-content.ts';

const SCHEMAS = jsonSchemas();
const ajv = new Ajv({ allowUnionTypes: true, strictTypes: false });
const validators = new Map(Object.entries(SCHEMAS).map(([folder, schema]) => [folder, ajv.compile(schema)]));

/** Front matter of the demonstration as an editor reads it: YAML 1.2, by folder. */
const FILES = demonstrationContent().flatMap(({ path, text }) => {
  const [, folder = ''] = path.split('/');
  const [, yaml] = /^---\n(.*?)^---$/ms.exec(text) ?? [];
  return yaml === undefined || !validators.has(folder) ? [] : [{ path, folder, values: parse(yaml) as Record<string, unknown> }];
});

const QUOTED = {
  title: 'Older readings',
  source: { author: 'Rowan Alder', address: 'https://bench.example/larch', accessed: '2026-03-02' },
  figures: { peak_temperature: '74 °C' },
};

/** A file of the folder that is right. */
function right(folder: string): Record<string, unknown> {
  return FILES.find((file) => file.folder === folder)?.values ?? QUOTED;
}

/** Faults of one key, each a wrong value in its place; undefined takes it away. */
function faultsOf({ key, kinds, required }: KeyFacts): Record<string, unknown>[] {
  return [
    { [key]: null },
    { [key]: [[]] },
    { [`${key}s_`]: 'x' },
    ...(required ? [{ [key]: undefined }] : []),
    ...(kinds.includes('list') ? [] : [{ [key]: [] }]),
    ...(kinds.includes('map') ? [] : [{ [key]: { what: 'x' } }]),
    ...(kinds.includes('text') ? [] : [{ [key]: 'x' }]),
  ];
}

describe('register/json-schemas', () => {
  it('has one for each folder of content/', () => {
    expect(Object.keys(SCHEMAS)).toEqual(Object.keys(FRONT_MATTER));
  });

  it.each(FILES.map(({ path, folder, values }) => [path, folder, values] as const))('accepts %s', (_path, folder, values) => {
    const validate = validators.get(folder)!;
    expect([validate(values), validate.errors]).toEqual([true, null]);
  });

  it.each(Object.keys(FRONT_MATTER))('refuses every planted fault of %s, twenty at least', (folder) => {
    const validate = validators.get(folder)!;
    const file = right(folder);
    expect(validate(file)).toBe(true);
    const faults = keysOf(FRONT_MATTER[folder as keyof typeof FRONT_MATTER]).flatMap(faultsOf);
    expect(faults.length).toBeGreaterThanOrEqual(20);
    const passed = faults.filter((fault) => validate(JSON.parse(JSON.stringify({ ...file, ...fault }))));
    expect(passed).toEqual([]);
  });

  it('refuses words, days, ids and quantities that cannot be, and tells an editor what a key says', () => {
    const run = validators.get('runs')!;
    const device = validators.get('devices')!;
    expect(run({ ...right('runs'), date: '14 March 2026' })).toBe(false);
    expect(run({ ...right('runs'), setup: 'Open Bench' })).toBe(false);
    expect(device({ ...right('devices'), power: 'solar' })).toBe(false);
    expect(device({ ...right('devices'), rated_clock: 'fast' })).toBe(false);
    expect(SCHEMAS.devices).toMatchObject({ properties: { maker: { description: 'who makes it' } } });
  });
});
