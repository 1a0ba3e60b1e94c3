/** What the project already has that a new run can rest on: setups, devices, specimens, and the runs there are. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { dataFiles } from '../../compute/project/read-project.ts';
import type { QuantityKind } from '../../intake/log.ts';
import { readSetup, type Setup } from '../../register/files/setups.ts';
import { readSource } from '../../register/values/source-file.ts';
import { Report } from '../../register/yaml/report.ts';

export interface SetupChannel {
  readonly name: string;
  readonly quantity?: QuantityKind;
  readonly column?: string;
  readonly unit?: string;
  /** Whether it names bits, or says what a clock shows. */
  readonly explained?: boolean;
}

export interface KnownSetup {
  readonly id: string;
  readonly device?: string;
  readonly specimen?: string;
  readonly phases: boolean;
  readonly channels: readonly SetupChannel[];
  /** Names of the settings that it states. */
  readonly setting: ReadonlySet<string>;
  /** What it declares of tables. */
  readonly tables: Setup['tables'];
  /** Keys of the log's time that it states. */
  readonly time: ReadonlySet<string>;
}

export interface KnownRun {
  readonly id: string;
  readonly specimen?: string;
  /** Front matter as text: enough to see whether it names a log. */
  readonly text: string;
}

export interface Project {
  readonly setups: readonly KnownSetup[];
  readonly devices: readonly string[];
  readonly runs: readonly KnownRun[];
  /** Aliases of specimens that runs and setups name. */
  readonly specimens: readonly string[];
}

/** Reads content/. What cannot be read is left out: `npm run check` reports it. */
export function readProject(root: string): Project {
  const setups = filesOf(root, 'setups').flatMap(({ id, path, text }) => setupOf(root, id, path, text) ?? []);
  const runs = filesOf(root, 'runs').map(({ id, text }) => {
    const specimen = /^specimen:\s*(\S+)\s*$/m.exec(text)?.[1];
    return { id, text, ...(specimen === undefined ? {} : { specimen }) };
  });
  const specimens = new Set([...setups, ...runs].flatMap(({ specimen }) => specimen ?? []));
  return { setups, runs, devices: filesOf(root, 'devices').map(({ id }) => id), specimens: [...specimens].sort() };
}

function filesOf(root: string, folder: string): { id: string; path: string; text: string }[] {
  const directory = join(root, 'content', folder);
  if (!existsSync(directory)) return [];
  const names = readdirSync(directory).filter((name) => name.endsWith('.md'));
  return names.sort().map((name) => ({
    id: name.slice(0, -3),
    path: `content/${folder}/${name}`,
    text: readFileSync(join(directory, name), 'utf8'),
  }));
}

function setupOf(root: string, id: string, path: string, text: string): KnownSetup | undefined {
  const report = new Report();
  const source = readSource(id, { path, text }, report);
  if (!source) return undefined;
  const { shared, log, tables } = readSetup(source, dataFiles(root), report);
  const channels = [...shared.channels.values()];
  return {
    id,
    ...(shared.device ? { device: shared.device.value } : {}),
    ...(shared.specimen === undefined ? {} : { specimen: shared.specimen }),
    phases: shared.phases !== undefined,
    setting: new Set(shared.setting.keys()),
    time: new Set(Object.keys(log.time)),
    tables,
    channels: channels.map(({ name, quantity, column, unit, bits, sticky, shows }) => ({
      name,
      ...(quantity ? { quantity: quantity.value } : {}),
      ...(column ? { column: column.value } : {}),
      ...(unit ? { unit: unit.value } : {}),
      ...(bits || sticky || shows ? { explained: true } : {}),
    })),
  };
}
