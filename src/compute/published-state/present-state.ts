/** A note as it would go out now, in the form in which a published state is kept. */
import { compareText } from '../../problem.ts';
import type { Note } from '../../register/register.ts';
import type { PublishedEntry, PublishedState } from '../../register/sealed/published-states.ts';
import type { Plan } from '../../words/script/plan.ts';
import { clockTime } from '../../words/script/timeline.ts';
import type { AbsentEntry, HeldBy, LedgerEntry, Written } from '../../words/written.ts';
import type { NamedCopy } from '../record-copies/copy.ts';
import type { NoteOutcome } from '../steps/notes/notes.ts';
import type { Pictures } from '../steps/pictures/pictures.ts';
import type { PlotResult } from '../steps/plots/plot-task.ts';
import type { Sources } from './sources.ts';

/** The key of a note among states: `notes/<slug>` or `scripts/<slug>`. */
export function stateKey({ kind, id }: Pick<Note, 'kind' | 'id'>): string {
  return `${kind}s/${id}`;
}

/** The present state of a note, dated as the note is, without a history. `pages`: addresses of the runs, devices and comparisons that it brings. */
export function presentState(
  { note, written }: Pick<NoteOutcome, 'note' | 'written'>,
  plots: readonly (PlotResult | null)[],
  sources: Sources,
  plan?: Plan,
  copies: readonly NamedCopy[] = [],
  pages: readonly string[] = [],
  pictures: Pick<Pictures, 'files' | 'made'> = { files: new Map(), made: new Map() },
): PublishedState {
  const drawn = plots.filter((plot) => plot !== null);
  const entries = written.entries.map((entry, index) => entryOf(note, written, entry, plan?.heldAt.get(index + 1)));
  const absent = written.absent?.map((each) => absenceOf(note, each));
  const asked = [...entries, ...(absent ?? [])].flatMap(({ held = [] }) => held);
  const names = new Set(asked.flatMap((subject) => sources.of(subject)));
  return {
    format: 1,
    of: stateKey(note),
    title: note.title,
    date: note.date,
    entries,
    ...(absent === undefined ? {} : { absent }),
    plots: drawn.map(({ id, title, files }) => ({ id, title, sha256: files.svg })),
    ...picturesOf(written, pictures),
    addresses: [...addressesOf(stateKey(note), drawn), ...copiesOf(note, copies), ...pages],
    sources: [...names].sort(compareText).map((name) => ({ name, sha256: sources.sha256(name) })),
    history: [],
  };
}

function absenceOf(note: Note, { kind, line, column, expression, why, instead, held }: AbsentEntry): Absence {
  const asks = held === undefined ? {} : { held: subjectsOf(note, held) };
  return { kind, line, column, expression, why, ...asks, ...(instead === undefined ? {} : { instead }) };
}

type Absence = NonNullable<PublishedState['absent']>[number];

function subjectsOf(note: Note, held: readonly HeldBy[]): string[] {
  return [...new Set(held.map(({ alias, subject }) => `${folderOf(note, alias)}/${subject}`))];
}

function picturesOf(
  { pictures = [] }: Written,
  { made, files }: Pick<Pictures, 'files' | 'made'>,
): Pick<PublishedState, 'pictures'> {
  const paths = [...new Set(pictures.map(({ path }) => path))];
  if (paths.length === 0) return {};
  return { pictures: paths.map((path) => ({ path, sha256: made.get(path)?.sha256 ?? files.get(path) ?? '' })) };
}

/** Record copies of its comparisons were published with it: their addresses must stand as its own do. */
function copiesOf({ comparisons }: Note, copies: readonly NamedCopy[]): string[] {
  const named = new Set(comparisons.values());
  return copies.filter(({ comparison }) => named.has(comparison)).map(({ path }) => path);
}

/** `at`: when a script says it, in seconds. */
function entryOf(note: Note, { entries, sentences }: Written, entry: LedgerEntry, at: number | undefined): PublishedEntry {
  const { id, line, column, kind, text, expression, value, unit, u, shown, verdict, rests } = entry;
  const sentence = sentences?.[entries.indexOf(entry)];
  return {
    id,
    line,
    column,
    kind,
    text,
    expression,
    value,
    unit,
    u,
    shown,
    verdict,
    ...(rests === undefined ? {} : { rests }),
    sentence: sentence?.text ?? '',
    pattern: sentence?.pattern ?? '',
    ...(at === undefined ? {} : { cue: clockTime(at) }),
    held: subjectsOf(note, entry.held),
  };
}

function folderOf(note: Note, alias: string): string {
  if (note.comparisons.has(alias)) return 'comparisons';
  if (note.quoted?.has(alias)) return 'quoted';
  return note.attempts?.has(alias) ? 'attempts' : 'runs';
}

function addressesOf(key: string, plots: readonly PlotResult[]): string[] {
  const files = plots.flatMap(({ id }) => ['svg', 'png', 'csv'].map((extension) => `${key}/plots/${id}.${extension}`));
  return [`${key}/`, `${key}/ledger/`, `${key}/ledger.json`, ...files];
}
