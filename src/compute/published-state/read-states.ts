/** content/published/*.json → the published states, each checked against its own digest. */
import { error, type Problem } from '../../problem.ts';
import type { ContentFile } from '../../register/register.ts';
import { PUBLISHED, type PublishedState, readPublished } from '../../register/sealed/published-states.ts';
import { edited, isProblem } from '../../register/sealed/sealed-file.ts';
import { canonicalText, sealOf } from '../store/canonical-json.ts';

export interface States {
  /** By `notes/<slug>` or `scripts/<slug>`. */
  readonly states: ReadonlyMap<string, PublishedState>;
  readonly problems: readonly Problem[];
}

/** Reads the states. One that is not as it was written is a problem, and protects nothing. */
export function readStates(files: readonly ContentFile[]): States {
  const states = new Map<string, PublishedState>();
  const problems: Problem[] = [];
  for (const file of files) {
    const read = readState(file);
    if (isProblem(read)) problems.push(read);
    else states.set(read.of, read);
  }
  return { states, problems };
}

/** The state in one file, or what is wrong with it. */
function readState({ path, text }: ContentFile): PublishedState | Problem {
  const read = readPublished(text, path);
  if (isProblem(read)) return read;
  const { sha256: _seal, ...state } = read;
  if (!isSealed(state, text)) return edited(path, PUBLISHED);
  if (path === statePath(state.of)) return state;
  return error('published-state', { file: path, line: 1, column: 1 }, `this is the published state of ${state.of}`, {
    expected: `it in ${statePath(state.of)}`,
    remedy: 'give the file its name back',
  });
}

/** The text of a state's file: canonical JSON (RFC 8785) with the digest of the rest, and a final newline. */
export function sealed(state: PublishedState): string {
  return canonicalText({ ...state, sha256: sealOf(state) });
}

/** The digest is part of the text. Half a character, which no digest can be of, is none of ours. */
function isSealed(state: PublishedState, text: string): boolean {
  try {
    return sealed(state) === text;
  } catch {
    return false;
  }
}

/** `content/published/notes-<slug>.json`. */
export function statePath(of: string): string {
  return `content/published/${of.replace('/', '-')}.json`;
}
