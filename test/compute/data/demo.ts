/** The demonstration's runs as the chain computes them: for tests of what goes out of them. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { runFiles } from '../../../src/compute/data/run-files.ts';
import type { DataFile } from '../../../src/compute/models/data-file.ts';
import { dataFiles, readProject } from '../../../src/compute/project/read-project.ts';
import { type RunResult, type RunTask, runStep } from '../../../src/compute/steps/runs/run-step.ts';
import { tablePaths } from '../../../src/compute/steps/runs/run-tables.ts';
import { digest } from '../../../src/compute/store/digest.ts';
import type { Store } from '../../../src/compute/store/store.ts';
import { readRegister } from '../../../src/register/read.ts';
import type { Register, Run } from '../../../src/register/register.ts';
import { DEMONSTRATION } from '../../demonstration-folder.ts';

export function demoRegister(): Register {
  return readRegister(readProject(DEMONSTRATION).content, dataFiles(DEMONSTRATION)).register;
}

export interface DemoRun {
  readonly run: Run;
  readonly task: RunTask;
  readonly result: RunResult;
  readonly files: readonly DataFile[];
}

/** Computes one run into a store. */
export function computeDemoRun(store: Store, run: Run): DemoRun {
  const tables = tablePaths(run);
  const names = [...run.logs.map(({ declaration }) => declaration.file), ...Object.values(tables).map(({ file }) => file)];
  const digests = Object.fromEntries(names.map((name) => [name, digest(readFileSync(join(DEMONSTRATION, 'data', name)))]));
  const { id, logs, channels, context } = run;
  const task: RunTask = { step: 'run', key: id, run: id, logs, channels, context, tables, digests };
  const result = runStep(DEMONSTRATION, store, task);
  const { summary, data } = result;
  const files = runFiles({ run, summary: summary!, data: data!, tables: result.tables });
  return { run, task, result, files };
}
