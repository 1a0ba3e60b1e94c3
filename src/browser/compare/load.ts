/** Fetches what a chosen run has published: each file once, and of no run that is not shown. */
import type { ReadRun } from './read-run.ts';

/** Why a run cannot be shown: the end of a sentence that begins with its id. */
export interface Failed {
  readonly why: string;
}

export interface RunFiles {
  readonly figures: string;
  readonly series: string;
}

/** The two files of a run by its id, or why they cannot be had. A file that could not be had is asked for again the next time. */
export function loader(base: string): (id: string) => Promise<RunFiles | Failed> {
  const asked = new Map<string, Promise<RunFiles | Failed>>();
  return (id) => {
    const known = asked.get(id);
    if (known !== undefined) return known;
    const made = filesOf(`${base}runs/${id}/`).then((files) => {
      if ('why' in files) asked.delete(id);
      return files;
    });
    asked.set(id, made);
    return made;
  };
}

async function filesOf(path: string): Promise<RunFiles | Failed> {
  try {
    const [figures, series] = await Promise.all([textOf(`${path}figures.json`), textOf(`${path}series.json`)]);
    return { figures, series };
  } catch (thrown) {
    return { why: thrown instanceof Error ? thrown.message : String(thrown) };
  }
}

async function textOf(path: string): Promise<string> {
  const answer = await fetch(path).catch(() => {
    throw new Error(`its file ${fileName(path)} could not be fetched: is the network there?`);
  });
  if (!answer.ok) throw new Error(`the site does not give out its file ${fileName(path)} (${answer.status})`);
  return answer.text();
}

function fileName(path: string): string {
  return path.slice(path.lastIndexOf('/') + 1);
}

export function isFailed(run: ReadRun | RunFiles | Failed): run is Failed {
  return 'why' in run;
}
