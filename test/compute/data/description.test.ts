import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
// The npm package datapackage (1.1): the published profiles of Frictionless Data (specs.frictionlessdata.io, version 1), and a reader of them.
import datapackage from 'datapackage';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { describeRun } from '../../../src/compute/data/description.ts';
import { digest } from '../../../src/compute/store/digest.ts';
import { openStore, type Store } from '../../../src/compute/store/store.ts';
import type { Log } from '../../../src/intake/log.ts';
import type { Licence } from '../../../src/register/register.ts';
import { computeDemoRun, type DemoRun, demoRegister } from './demo.ts';

interface Field {
  readonly name: string;
  readonly [key: string]: unknown;
}
interface Described {
  readonly resources: readonly {
    profile: string;
    name: string;
    path: string;
    bytes: number;
    hash: string;
    schema?: { fields: readonly Field[] };
  }[];
  readonly licenses?: readonly object[];
  readonly [key: string]: unknown;
}

const register = demoRegister();
const runs = [...register.runs.values()];
let root: string;
let store: Store;
const computed = new Map<string, DemoRun>();

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'soakproof-described-'));
  store = openStore(root);
  for (const run of runs) computed.set(run.id, computeDemoRun(store, run));
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

function descriptionOf(id: string, licence?: Licence): Described {
  const { run, result, files } = computed.get(id)!;
  const device = register.devices.get(run.device)!;
  const description = describeRun({
    run,
    device,
    licence,
    context: run.context,
    summary: result.summary!,
    tables: result.tables,
    files,
  });
  return description as Described;
}

/** Description and files in a folder, as a reader has them who downloaded all. */
function downloaded(id: string): { folder: string; description: Described } {
  const folder = join(root, `downloaded-${id}`);
  mkdirSync(folder, { recursive: true });
  for (const { path, name, sha256 } of computed.get(id)!.files)
    if (path !== null) writeFileSync(join(folder, name), store.bytes(sha256)!);
  return { folder, description: descriptionOf(id) };
}

describe('compute/data/description', () => {
  it.each(runs.map(({ id }) => id))('%s: fits the published profiles, its files have its digests and sizes', async (id) => {
    const { folder, description } = downloaded(id);
    const loaded = await datapackage.Package.load(description, { basePath: folder, strict: false });
    expect(loaded.errors.map(({ message }) => message)).toEqual([]);
    expect(loaded.valid).toBe(true);
    expect(loaded.resources.map(({ name, tabular }) => [name, tabular])).toContainEqual(['cleaned', true]);
    for (const { path, bytes, hash, profile, ...rest } of description.resources) {
      const own = await datapackage.Profile.load(profile);
      expect(own.validate({ path, bytes, hash, profile, ...rest }).errors.map(({ message }) => message)).toEqual([]);
      const content = readFileSync(join(folder, path));
      expect([content.length, `sha256:${digest(content)}`]).toEqual([bytes, hash]);
    }
  });

  it('is refused by the profile where it is not right: the check can fail', async () => {
    const profile = await datapackage.Profile.load('tabular-data-resource');
    const [cleaned] = descriptionOf('larch-fast').resources.filter(({ name }) => name === 'cleaned');
    expect(profile.validate(cleaned!).valid).toBe(true);
    expect(profile.validate({ ...cleaned, schema: {} }).valid).toBe(false);
    expect(profile.validate({ ...cleaned, name: 'Not A Name' }).valid).toBe(false);
  });

  it.each(['larch-fast', 'larch-brisk', 'larch-quick'])('%s: another reader reads every table by it, cell by cell', async (id) => {
    const { folder, description } = downloaded(id);
    const { resources } = await datapackage.Package.load(description, { basePath: folder, strict: true });
    const tables = resources.filter(({ tabular }) => tabular);
    expect(tables.map(({ name }) => name)).toEqual(['cleaned', 'scores', 'surface']);
    const { result } = computed.get(id)!;
    const log = store.get(result.log!) as Log;
    const rows = await tables[0]!.read({ keyed: true });
    expect(rows.length).toBe(log.rows);
    // The demonstration corrects no instrument: figures are made from the readings as they stand in the file.
    const of = (name: string) => rows.map((row) => (row[name] === null ? Number.NaN : Number(row[name])));
    expect(of('time_s')).toEqual([...log.time.seconds]);
    expect(of('log_line')).toEqual([...log.lines]);
    for (const { name, values } of log.channels) expect(of(name), name).toEqual([...values]);
    expect((await tables[1]!.read()).length).toBe(20);
    // The image of the fast run gives a row for its region, and is no table with a head.
    expect((await tables[2]!.read()).length).toBe(id === 'larch-fast' ? 5 : 4);
    expect(resources.some(({ name }) => name === 'image')).toBe(id === 'larch-fast');
  });

  it('says unit, quantity, place, instrument and missing readings of each column, and that it is invented', () => {
    const description = descriptionOf('larch-quick');
    expect(description).toMatchObject({ name: 'larch-quick', invented: true, specimen: 'no-1', setting: { clock: '2.4 GHz' } });
    expect(description.description).toContain('Everything in it is invented');
    const fields = description.resources.find(({ name }) => name === 'cleaned')!.schema!.fields;
    expect(fields.map(({ name }) => name)).toEqual([
      'time_s',
      'soc',
      'board',
      'room',
      'clock',
      'throttled',
      'input_voltage',
      'input_current',
      'log_line',
    ]);
    expect(fields.find(({ name }) => name === 'board')).toMatchObject({
      unit: '°C',
      quantity: 'temperature',
      column: 'board (°C)',
    });
    expect(fields.find(({ name }) => name === 'board')!.missing).toBeGreaterThan(0);
    expect(fields.find(({ name }) => name === 'input_current')).toMatchObject({
      unit: 'A',
      at: 'board input',
      instrument: { id: 'inline-meter' },
    });
  });

  it('carries the licence, by id, by address, or in words alone, and says nothing where none is stated', async () => {
    expect(descriptionOf('larch-fast').licenses).toBeUndefined();
    const profile = await datapackage.Profile.load('data-package');
    const licences: Licence[] = [
      {
        id: 'CC-BY-4.0',
        title: 'Creative Commons Attribution 4.0 International',
        url: 'https://creativecommons.org/licenses/by/4.0/legalcode',
      },
      { title: 'Ask first', url: 'https://terms.example/data' },
      { title: 'Ask first' },
    ];
    for (const licence of licences) {
      const description = descriptionOf('larch-fast', licence);
      expect(profile.validate(description).errors).toEqual([]);
      expect(description.licenses).toMatchObject([{ title: licence.title }]);
    }
    expect(descriptionOf('larch-fast', licences[0]).licenses).toMatchObject([{ name: 'CC-BY-4.0', path: licences[0]!.url }]);
    // Data Package, "licenses": each must have a name or a path.
    expect(descriptionOf('larch-fast', licences[2]).licenses).toEqual([{ name: 'other', title: 'Ask first' }]);
  });

  it('names a log that is not offered by its digest alone, and one kept elsewhere by its address', () => {
    const withheld = descriptionOf('larch-first-try');
    expect(withheld.resources.map(({ name }) => name)).toEqual(['cleaned']);
    const { run, result, files } = computed.get('larch-fast')!;
    const url = 'https://files.example/fast-soak.csv';
    const moved = files.map((file) => (file.role === 'log' ? { ...file, path: null, elsewhere: url } : file));
    const device = register.devices.get(run.device)!;
    const about = { run, device, context: run.context, summary: result.summary!, tables: result.tables };
    expect(describeRun({ ...about, files: moved })).toMatchObject({
      resources: expect.arrayContaining([expect.objectContaining({ name: 'log', path: url, bytes: 171171 })]),
      sources: expect.arrayContaining([expect.objectContaining({ title: 'data/larch-2/fast-soak.csv', path: url })]),
    });
    const alone = moved.map((file) => (file.role === 'log' ? file : { ...file, path: null }));
    expect(JSON.stringify(describeRun({ ...about, files: moved }))).toContain('The cleaned readings are the same');
    expect(JSON.stringify(describeRun({ ...about, files: alone })), 'where they stay too').not.toContain('cleaned readings');
    const nothing = files.map((file) => ({ ...file, path: null }));
    expect(describeRun({ ...about, files: nothing })).toBeNull();
  });
});
