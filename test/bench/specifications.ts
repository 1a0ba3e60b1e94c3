/** The Vega-Lite specifications that a build of the generated site draws, so that Vega can be timed over just those. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { dataFiles, readProject } from '../../src/compute/project/read-project.ts';
import { runPlots } from '../../src/compute/steps/plots/run-plots.ts';
import { derive } from '../../src/figures/derive.ts';
import { read } from '../../src/intake/read.ts';
import type { PlotSubject } from '../../src/plots/drawing/drawn.ts';
import { NARROW, WIDE } from '../../src/plots/drawing/size.ts';
import { specify } from '../../src/plots/specify.ts';
import { readRegister } from '../../src/register/read.ts';
import type { PlotRequest } from '../../src/register/requests.ts';
import { write } from '../../src/words/write.ts';
import type { Subject } from '../../src/words/written.ts';

/** All specifications of a project, wide and narrow, in the order of runs and notes. */
export function specifications(root: string): object[] {
  const { register } = readRegister(readProject(root).content, dataFiles(root));
  const subjects = new Map<string, PlotSubject>();
  const requests: PlotRequest[] = [];
  for (const run of register.runs.values()) {
    const { declaration } = run.logs[0]!;
    const { log } = read(readFileSync(join(root, 'data', declaration.file)), declaration, `data/${declaration.file}`);
    const derived = derive(log!, run.context);
    subjects.set(run.id, { alias: run.id, title: run.title, log: log!, derived, context: run.context });
    requests.push(...runPlots(run, derived));
  }
  for (const note of register.notes.values()) {
    const named = [...note.runs].map(([alias, id]): [string, Subject] => {
      const { title, facts, channels: declared } = register.runs.get(id)!;
      const channels = declared.map(({ name, quantity }) => ({ name, quantity }));
      return [alias, { kind: 'run', id, title, facts, channels, figures: subjects.get(id)!.derived.figures }];
    });
    requests.push(...write(note, new Map(named)).plots);
  }
  return requests.flatMap((request) => {
    const drawn = request.runs.map(({ alias, run }) => ({ ...subjects.get(run)!, alias }));
    return [WIDE, NARROW].map((size) => specify(request, drawn, size).spec!);
  });
}
