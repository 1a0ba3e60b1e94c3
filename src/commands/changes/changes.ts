/** Compares what stands with an earlier state. */

import { readProject } from '../../compute/project/read-project.ts';
import { changesSince, isChanged } from '../../compute/published-state/changes.ts';
import { newStills } from '../../compute/published-state/cues.ts';
import { lastGood } from '../../compute/published-state/last-good.ts';
import { readStates } from '../../compute/published-state/read-states.ts';
import { readPresent } from '../../compute/read-present.ts';
import { toolVersion } from '../../compute/store/places.ts';
import { report } from '../../print/report.ts';
import type { ContentFile } from '../../register/register.ts';
import type { PublishedState } from '../../register/sealed/published-states.ts';
import { notUnderstood } from '../command-line.ts';
import type { Printer } from '../publish/publish-note.ts';
import { statesAtRevision } from './at-revision.ts';
import { readOptions, USAGE } from './options.ts';
import { changesText } from './text.ts';

/** Runs the command; the exit code. */
export async function changes(root: string, args: readonly string[], printer: Printer): Promise<0 | 1 | 2> {
  const refuse = (text: string): 1 => {
    printer.err(`${text.trimEnd()}\n`);
    return 1;
  };
  const options = readOptions(args);
  if (typeof options === 'string') return notUnderstood(printer, options, USAGE);
  // Before stage 1 runs: what the last check left is what is asked for.
  const then = statesSince(root, options.since);
  if (typeof then === 'string') return refuse(then);
  const { notes } = await readPresent(root);
  const all = changesSince(
    then,
    notes.map(({ state }) => state),
  );
  const redrawn = new Map(
    all.map(({ of, plots }) => [of, new Set(plots.filter(({ how }) => how === 'changed').map(({ id }) => id))]),
  );
  const cuesOf = new Map(notes.map(({ state, cues }) => [state.of, cues]));
  const changed = all
    .map((note) => ({ ...note, stills: newStills(cuesOf.get(note.of) ?? [], redrawn) }))
    .filter((note) => isChanged(note) || note.stills.length > 0);
  const json = { format: 1, since: options.since, notes: changed };
  printer.out(options.json ? `${JSON.stringify(json, null, 2)}\n` : changesText(changed, inWords(options.since), toolVersion()));
  return 0;
}

/** The states to compare with, or why there are none. */
function statesSince(root: string, since: string): readonly PublishedState[] | string {
  if (since === 'check')
    return lastGood(root) ?? 'no check without an error has run here yet: run `npm run check` before you change something';
  if (since === 'published') {
    const files = readProject(root).published;
    return files.length === 0 ? 'nothing is published yet: `npm run publish` keeps what a note printed' : readable(root, files);
  }
  const files = statesAtRevision(root, since);
  return typeof files === 'string' ? files : readable(root, files);
}

function readable(root: string, files: readonly ContentFile[]): readonly PublishedState[] | string {
  const { states, problems } = readStates(files);
  return problems.length > 0 ? report(root, problems) : [...states.values()];
}

function inWords(since: string): string {
  if (since === 'check') return 'the last good check';
  return since === 'published' ? 'publication' : `the publication at ${since}`;
}
