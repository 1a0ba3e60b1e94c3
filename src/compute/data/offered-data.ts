/** All files of data of the site, by what they belong to. */
import type { Register } from '../../register/register.ts';
import type { ComputedAttempts, ComputedRun } from '../contents/site-contents.ts';
import type { DataFile, OfferedData, Role } from '../models/data-file.ts';
import { jsonText } from '../store/json-text.ts';
import type { SiteMemo } from '../store/memo.ts';
import type { Store } from '../store/store.ts';
import { describeRun } from './description.ts';
import { DESCRIPTION, distinctNames, sizeText } from './names.ts';
import { runFiles } from './run-files.ts';
import { runJson } from './run-json.ts';
import { tableFile } from './table-file.ts';

interface Computed {
  readonly register: Register;
  readonly runs: ReadonlyMap<string, ComputedRun>;
  readonly attempts: ReadonlyMap<string, ComputedAttempts>;
}

/** Makes descriptions and figures as files, and says of every other file what it is. */
export function offeredData(memo: SiteMemo, { register, runs, attempts }: Computed): OfferedData {
  return new Map([
    ...[...runs.values()].map((computed) => [`runs/${computed.run.id}`, knownFiles(memo, register, computed)] as const),
    ...filesOfAttempts([...attempts.values()]),
  ]);
}

/** A run's own files are made anew where its figures or anything that the author says of it, its device or instruments is another. */
function knownFiles(memo: SiteMemo, register: Register, computed: ComputedRun): DataFile[] {
  const { run, key } = computed;
  const instruments = run.instruments.map((id) => register.instruments.get(id));
  const inputs = [key, run, register.devices.get(run.device), instruments];
  return memo.of('files of a run', inputs, (store) => filesOfRun(store, register, computed));
}

function filesOfRun(store: Store, register: Register, computed: ComputedRun): DataFile[] {
  const { run, summary, data, tables } = computed;
  const { licence, context } = run;
  const files = runFiles({ run, summary, data, tables });
  const device = register.devices.get(run.device)!;
  const description = describeRun({ run, device, licence, context, summary, tables, files });
  const made = (role: Role, what: string, path: string, json: object) => jsonFile(store, role, what, path, json);
  return [
    ...files,
    ...(description === null ? [] : [made('description', 'description', `runs/${run.id}/data/${DESCRIPTION}`, description)]),
    made('figures', 'figures', `runs/${run.id}/figures.json`, runJson(register, computed)),
  ];
}

function jsonFile(store: Store, role: Role, what: string, path: string, json: object): DataFile {
  const text = jsonText(json);
  const bytes = Buffer.byteLength(text);
  const name = path.slice(path.lastIndexOf('/') + 1);
  const note = role === 'figures' ? 'machine-readable, unrounded' : 'machine-readable, what each column is';
  return { role, what, name, path, sha256: store.keep(text), bytes, size: sizeText(bytes), rows: null, note, source: '' };
}

/** Tables of one device stand in one folder. */
function filesOfAttempts(all: readonly ComputedAttempts[]): [string, DataFile[]][] {
  const devices = [...new Set(all.map(({ attempts }) => attempts.device))];
  return devices.flatMap((device) => {
    const folder = `devices/${device}/data/`;
    const own = all.filter(({ attempts }) => attempts.device === device);
    const files = own.map(({ attempts, sha256, bytes, form }) => {
      return tableFile({ kind: 'attempts', file: attempts.table, sha256, bytes, form }, folder);
    });
    const names = distinctNames(files.map(({ name }, index) => ({ role: own[index]!.attempts.id, name })));
    return own.map(({ attempts }, index): [string, DataFile[]] => {
      const file = files[index]!;
      const name = names[index]!;
      return [`attempts/${attempts.id}`, [{ ...file, name, path: file.path === null ? null : folder + name }]];
    });
  });
}

/** Paths and blobs of what is offered here, each path once. */
export function offeredFiles(data: OfferedData): { readonly path: string; readonly blob: string }[] {
  return [...data.values()].flat().flatMap(({ path, sha256 }) => (path === null ? [] : [{ path, blob: sha256 }]));
}
