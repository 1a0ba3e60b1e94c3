/** Computes what the named files need, and no more, and prints their figures. */

import { comparisonJson } from '../../compute/comparison/comparison-json.ts';
import { publishedLogs } from '../../compute/comparison/published-logs.ts';
import { settingText } from '../../compute/contents/figure-text.ts';
import { outcomeSentence } from '../../compute/contents/outcome-sentence.ts';
import { mending } from '../../compute/project/mending.ts';
import { dataFiles, readProject } from '../../compute/project/read-project.ts';
import { type AttemptsOutcome, computeAttempts } from '../../compute/steps/attempts.ts';
import { type ComparisonOutcome, computeComparisons } from '../../compute/steps/comparisons.ts';
import { openPool } from '../../compute/steps/pool.ts';
import { computeRuns, type RunOutcome } from '../../compute/steps/runs/runs.ts';
import { codeDigests } from '../../compute/store/code.ts';
import { openStore } from '../../compute/store/store.ts';
import { figuresJson, runFiguresJson } from '../../figures/figures-json.ts';
import { attemptsHead } from '../../figures/stability/attempts-json.ts';
import { report } from '../../print/report.ts';
import { compareProblems, type Problem } from '../../problem.ts';
import { readRegister } from '../../register/read.ts';
import type { Register } from '../../register/register.ts';
import { type Asked, asked, neededOf, together, type Unusable } from './asked.ts';
import { figuresText, sideBySide } from './text.ts';

export interface Terminal {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Characters in a line. */
  readonly width?: number;
}

const WIDTH = 120;

interface Computed {
  /** By the names that they were asked for. */
  readonly runs: ReadonlyMap<string, RunOutcome>;
  readonly comparisons: ReadonlyMap<string, ComparisonOutcome>;
  readonly attempts: ReadonlyMap<string, AttemptsOutcome>;
}

/** Runs the command; the exit code. Errors go to `err`; warnings are left to `check`. */
export async function printFigures(root: string, args: readonly string[], terminal: Terminal): Promise<0 | 1> {
  const { register, problems } = readRegister(readProject(root).content, dataFiles(root));
  const found = args.filter((arg) => !arg.startsWith('--')).map((typed) => asked(root, typed, register));
  const unusable = found.filter((each): each is Unusable => !('runs' in each));
  if (unusable.length > 0) {
    terminal.err(unusable.map((each) => `${whyUnusable(root, each, problems)}\n`).join(''));
    return 1;
  }
  const wanted = together(found.filter((each) => 'runs' in each));
  const computed = await mending(root, () => compute(root, register, wanted));
  const errors = problemsOf(computed).filter(({ severity }) => severity === 'error');
  if (errors.length > 0) terminal.err(report(root, errors));
  terminal.out(args.includes('--json') ? json(register, computed) : text(computed, terminal.width ?? WIDTH));
  return isWhole(computed) ? 0 : 1;
}

/** Errors of the file itself; where it has none, those of all content, since what it refers to may be at fault. */
function whyUnusable(root: string, each: Unusable, problems: readonly Problem[]): string {
  if ('refused' in each) return each.refused;
  const errors = problems.filter(({ severity }) => severity === 'error');
  const own = errors.filter(({ place }) => place.file === each.file);
  return `${each.file} cannot be used:\n${report(root, own.length > 0 ? own : errors)}`;
}

async function compute(root: string, register: Register, wanted: Asked): Promise<Computed> {
  const store = openStore(root);
  const code = codeDigests();
  const pool = openPool(root);
  const needed = neededOf(register, wanted);
  try {
    const runs = await computeRuns({ root, store, pool, code: code.run, register: needed });
    const comparisons = computeComparisons({ store, code: code.comparisons, register: needed, runs });
    const attempts = computeAttempts({ store, root, code: code.attempts, register: needed });
    return {
      runs: taken(wanted.runs, runs.outcomes),
      comparisons: taken(wanted.comparisons, comparisons),
      attempts: taken(wanted.attempts, attempts),
    };
  } finally {
    await pool.close();
  }
}

function taken<T>(names: ReadonlyMap<string, { readonly id: string }>, made: ReadonlyMap<string, T>): ReadonlyMap<string, T> {
  return new Map([...names].map(([name, { id }]) => [name, made.get(id)!]));
}

function problemsOf({ runs, comparisons, attempts }: Computed): Problem[] {
  return [
    ...[...runs.values()].flatMap(({ result }) => result.problems),
    ...[...comparisons.values()].flatMap((outcome) => outcome.problems),
    ...[...attempts.values()].flatMap((outcome) => outcome.problems),
  ].sort(compareProblems);
}

function isWhole({ runs, comparisons, attempts }: Computed): boolean {
  return (
    [...runs.values()].every(({ result }) => result.derived !== null) &&
    [...comparisons.values()].every(({ figures }) => figures !== null) &&
    [...attempts.values()].every(({ ladder }) => ladder !== null)
  );
}

function text({ runs, comparisons, attempts }: Computed, width: number): string {
  const derived = [...runs].flatMap(([name, { result }]) => (result.derived ? [[name, result.derived.figures] as const] : []));
  const single = runs.size === 1 && derived.length === 1;
  const blocks = [
    ...[...runs].map(([name, outcome]) => headOf(name, outcome)),
    ...(single ? [figuresText(derived[0]![1], width)] : derived.length > 0 ? [sideBySide(new Map(derived), width), ONE_RUN] : []),
    ...[...comparisons].flatMap(([name, { comparison, figures }]) =>
      figures ? [`${name}: ${comparison.title}`, figuresText(figures, width)] : [],
    ),
    ...[...attempts].flatMap(([name, tried]) => [`${name}: ${tried.attempts.title}`, figuresText(tried.figures, width)]),
  ];
  return `${blocks.join('\n\n')}\n`;
}

const ONE_RUN = 'For uncertainties and for what is absent, name one run.';

function headOf(name: string, { run, result }: RunOutcome): string {
  const setting = settingText(run);
  const outcome = result.derived ? outcomeSentence(result.derived) : 'No figures: see the errors.';
  const called = name === run.id ? name : `${name} (${run.id})`;
  return [
    `${called}: ${run.title}, ${run.date}${setting === '' ? '' : `, ${setting}`}`,
    ...(outcome === '' ? [] : [`  ${outcome}`]),
  ].join('\n');
}

function json(register: Register, { runs, comparisons, attempts }: Computed): string {
  const made = {
    format: 1,
    runs: Object.fromEntries([...runs].map(([name, outcome]) => [name, runJson(register, outcome)])),
    comparisons: Object.fromEntries(
      [...comparisons].map(([name, { comparison, figures }]) => [name, figures && comparisonJson({ comparison, figures })]),
    ),
    attempts: Object.fromEntries([...attempts].map(([name, tried]) => [name, attemptsJson(tried)])),
  };
  return `${JSON.stringify(made, null, 2)}\n`;
}

function runJson(register: Register, { run, result }: RunOutcome): object | null {
  const { derived, summary, tables } = result;
  if (derived === null || summary === null) return null;
  return runFiguresJson({
    run: run.id,
    device: register.devices.get(run.device)!.id,
    specimen: run.specimen,
    setting: run.setting,
    conditions: run.conditions,
    ...publishedLogs(summary),
    tables: tables.map((table) => ({ file: `data/${table.file}`, sha256: table.sha256 })),
    derived,
  });
}

function attemptsJson({ attempts, ladder, sha256, figures }: AttemptsOutcome): object | null {
  if (ladder === null) return null;
  return figuresJson(attemptsHead([{ id: attempts.id, ladder, sha256 }]), figures);
}
