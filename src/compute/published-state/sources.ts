/** What the figures of runs, comparisons and attempts rest on: files of data/ and content/, and the code of the methods. */

import type { ContentFile, Register, Run } from '../../register/register.ts';
import { reachedRuns } from '../../register/resolved/reached-runs.ts';
import type { AttemptsOutcome } from '../steps/attempts.ts';
import type { Runs } from '../steps/runs/runs.ts';
import { digest } from '../store/digest.ts';

/** Stands for the code of the methods among the names of files. */
export const METHODS = 'the methods';

export interface Sources {
  /** Names of what a subject such as `runs/larch-fast` rests on, in a fixed order. */
  readonly of: (subject: string) => readonly string[];
  /** Digest by name. */
  readonly sha256: (name: string) => string;
}

interface Options {
  readonly register: Register;
  readonly runs: Runs;
  readonly attempts: ReadonlyMap<string, AttemptsOutcome>;
  readonly content: readonly ContentFile[];
  /** Digest of the code that derives figures. */
  readonly code: string;
}

export function sourcesOf({ register, runs, attempts, content, code }: Options): Sources {
  const texts = new Map(content.map(({ path, text }) => [path, text]));
  const tables = new Map([...attempts.values()].map(({ attempts: { table }, sha256 }) => [table, sha256]));
  const ofRun = (id: string): string[] => {
    const run = register.runs.get(id);
    return run ? [...dataOf(run), ...filesOf(run)] : [];
  };
  const named: Record<string, (id: string) => string[]> = {
    runs: ofRun,
    comparisons: (id) => {
      const comparison = register.comparisons.get(id);
      return comparison ? [comparison.file, ...reachedRuns(comparison).flatMap(ofRun)] : [];
    },
    quoted: (id) => {
      const quoted = register.quoted.get(id);
      return quoted ? [quoted.file] : [];
    },
    attempts: (id) => {
      const tried = register.attempts.get(id);
      return tried ? [`data/${tried.table}`, tried.file] : [];
    },
  };
  return {
    of: (subject) => {
      const [kind = '', id = ''] = subject.split('/');
      return [...new Set([...(named[kind]?.(id) ?? []), METHODS])];
    },
    sha256: (name) => {
      if (name === METHODS) return code;
      const path = name.replace(/^data\//, '');
      return name.startsWith('data/') ? (runs.logs.get(path) ?? tables.get(path) ?? '') : digest(texts.get(name) ?? '');
    },
  };
}

function dataOf({ logs, scores, surface, surfaceImage }: Run): string[] {
  return [...logs.map(({ declaration }) => declaration.file), scores, surface, surfaceImage]
    .filter((path) => path !== undefined)
    .map((path) => `data/${path}`);
}

/** Files of content/ that say under which conditions and with which instruments a run was made. */
function filesOf({ file, setup, device, instruments }: Run): string[] {
  const shared = setup === undefined ? [] : [`content/setups/${setup}.md`];
  return [file, ...shared, `content/devices/${device}.md`, ...instruments.map((id) => `content/instruments/${id}.md`)];
}
