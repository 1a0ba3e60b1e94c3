/** Scripts in time: from the subtitles of the finished video where there are any, else from a pace. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { error, type Place, type Problem, warning } from '../../../problem.ts';
import type { Note } from '../../../register/register.ts';
import { screenFaults } from '../../../words/script/on-screen.ts';
import { type Plan, planScript } from '../../../words/script/plan.ts';
import { readSubtitles, type Subtitle } from '../../../words/script/subtitles.ts';
import type { Written } from '../../../words/written.ts';
import { digest } from '../../store/digest.ts';
import type { Notes } from './notes.ts';

export interface Scripts {
  /** By id of the script. */
  readonly plans: ReadonlyMap<string, Plan>;
  /** SHA-256 of each subtitle file by its path below data/. */
  readonly files: ReadonlyMap<string, string>;
  readonly problems: readonly Problem[];
}

/** Plans every script. Its words are those of `notes`, so a script whose recorded words stand is planned with them. */
export function computeScripts(root: string, notes: Pick<Notes, 'outcomes'>): Scripts {
  const plans = new Map<string, Plan>();
  const files = new Map<string, string>();
  const problems: Problem[] = [];
  for (const { note, written } of notes.outcomes) {
    if (note.kind !== 'script' || written.script === undefined) continue;
    const subtitles = note.subtitles === undefined ? undefined : read(root, note, note.subtitles, files, problems);
    const plan = planScript(written.script, written.entries, { pace: note.pace, subtitles });
    plans.set(note.id, plan);
    problems.push(...problemsOf(note, plan), ...screenProblems(note, written, notes.outcomes));
  }
  return { plans, files, problems };
}

function read(
  root: string,
  note: Note,
  path: string,
  files: Map<string, string>,
  problems: Problem[],
): readonly Subtitle[] | undefined {
  const place = (line: number): Place => ({ file: `data/${path}`, line, column: 1 });
  try {
    const bytes = readFileSync(join(root, 'data', path));
    files.set(path, digest(bytes));
    const { cues, faults } = readSubtitles(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
    for (const { line, message } of faults.slice(0, 1)) problems.push(warning('subtitles-fault', place(line), message));
    if (cues.length > 0) return cues;
    const expected = 'a WebVTT or SubRip file';
    problems.push(error('subtitles-unread', place(1), 'no subtitles are in this file', { expected }));
  } catch (thrown) {
    if (!files.has(path)) files.set(path, '');
    const found = thrown instanceof TypeError ? 'this file is not valid UTF-8' : `this file cannot be read (${reasonOf(thrown)})`;
    problems.push(error('subtitles-unread', place(1), found, { remedy: `it is named at \`subtitles\` in ${note.file}` }));
  }
  return undefined;
}

/** What is on screen, held against what is said meanwhile. */
function screenProblems(note: Note, { script = [], entries, plots }: Written, outcomes: Notes['outcomes']): Problem[] {
  const speaksFor = outcomes.find((other) => other.note.kind === 'note' && other.note.id === note.note);
  return screenFaults(script, entries, plots, speaksFor?.written.plots ?? []).map(({ cue, rule, found, expected }) => {
    const place = { file: note.file, line: cue.line, column: cue.column };
    return rule === 'unknown-picture' ? error(rule, place, found, { expected }) : warning(rule, place, found, { expected });
  });
}

function reasonOf(thrown: unknown): string {
  return (thrown as NodeJS.ErrnoException).code ?? String(thrown);
}

function problemsOf(note: Note, { faults, mismatch, basis }: Plan): Problem[] {
  const rule = basis === 'subtitles' ? 'cue-not-at-time' : 'cue-too-early';
  const told = faults.map(({ cue, found, expected }) =>
    warning(rule, { file: note.file, line: cue.line, column: cue.column }, found, { expected }),
  );
  if (!mismatch) return told;
  return [
    error('subtitles-mismatch', note.placeOf('subtitles'), `\`${note.subtitles}\` holds less than half of what this script says`, {
      expected: "the subtitles of this script's own video",
      remedy: 'name the right file, or take `subtitles` out: the page then estimates the times',
    }),
    ...told,
  ];
}
