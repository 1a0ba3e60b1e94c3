/** The figures of every run, from the store or from worker threads. */
import type { Problem } from '../../../problem.ts';
import type { Register, Run } from '../../../register/register.ts';
import { digestOfData } from '../../project/read-data.ts';
import { digestOf } from '../../store/digest.ts';
import { fault } from '../../store/momentary-problems.ts';
import type { Store } from '../../store/store.ts';
import type { Pool } from '../pool.ts';
import { failed, type RunResult, type RunTask } from './run-step.ts';
import { tablePaths } from './run-tables.ts';

export interface RunOutcome {
  readonly run: Run;
  readonly task: RunTask;
  readonly result: RunResult;
}

export interface Runs {
  /** By run id, in the register's order. */
  readonly outcomes: ReadonlyMap<string, RunOutcome>;
  /** SHA-256 of each log and table by its path below data/. */
  readonly logs: ReadonlyMap<string, string>;
  readonly problems: readonly Problem[];
}

interface Options {
  readonly root: string;
  readonly store: Store;
  readonly pool: Pool;
  readonly code: string;
  readonly register: Register;
}

/** Reads and derives all runs of the register. */
export async function computeRuns(options: Options): Promise<Runs> {
  const logs = new Map<string, string>();
  const outcomes = await Promise.all([...options.register.runs.values()].map((run) => computeRun(options, run, logs)));
  return {
    outcomes: new Map(outcomes.map((outcome) => [outcome.run.id, outcome])),
    logs,
    problems: outcomes.flatMap(({ result }) => result.problems),
  };
}

async function computeRun({ root, store, pool, code }: Options, run: Run, logs: Map<string, string>): Promise<RunOutcome> {
  const tables = tablePaths(run);
  const ofLogs = run.logs.flatMap(({ declaration, sharing }) => [
    declaration.file,
    ...(sharing.redacted ? [sharing.redacted.file] : []),
  ]);
  const files = [...ofLogs, ...Object.values(tables).map(({ file }) => file)];
  for (const file of files) if (!logs.has(file)) logs.set(file, digestOfData(root, store, file));
  const digests = Object.fromEntries(files.map((file) => [file, logs.get(file)!]));
  const key = digestOf(['run', code, digests, run.logs, run.channels, tables, run.context]);
  const task: RunTask = {
    step: 'run',
    key,
    run: run.id,
    logs: run.logs,
    channels: run.channels,
    context: run.context,
    tables,
    digests,
  };
  const result = await pool.run(store, task).catch((thrown) => faulty(run, thrown));
  return { run, task, result };
}

/** A fault of our own code must not take the other runs' problems with it. */
function faulty(run: Run, thrown: unknown): RunResult {
  return failed([
    fault(run.placeOf(run.logs.length > 1 ? 'logs' : 'log'), 'this run made Soakproof itself fail', thrown, ' with the log'),
  ]);
}
