/** content/notes/<slug>.md and content/scripts/<slug>.md: what a write-up says of itself. Its text is read by words. */

import type { DataFiles, FrontKey, FrontText, Note, NoteStatus, UnheldRule } from '../register.ts';
import { type Alias, idsOf, readAliases, tellClashes } from '../sections/aliases.ts';
import { readCorrections } from '../sections/corrections.ts';
import { readWas } from '../sections/former-addresses.ts';
import { RETESTS } from '../sections/retests.ts';
import { dataPathOf } from '../values/data-path.ts';
import { readLicence } from '../values/licence.ts';
import { paceOf } from '../values/pace.ts';
import { list, map, optional, readShape, type ShapeOf, shape, text, textOrList, textOrMap } from '../values/shape.ts';
import { itemOf, type SourceFile } from '../values/source-file.ts';
import type { Reference } from '../values/stated-value.ts';
import { dateOf, idOf, lineOf, textsOf, wordOf } from '../values/values.ts';
import { KIND_WORDS, type ListNode, type MapNode, type TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';

const KEYS = {
  title: text,
  date: text,
  status: text,
  runs: optional(textOrMap),
  comparisons: optional(textOrMap),
  attempts: optional(textOrMap),
  quoted: optional(textOrMap),
  highlights: optional(textOrList),
  lead: optional(map),
  summary: optional(text),
  disclosure: optional(text),
  authors: optional(textOrList),
  licence: optional(textOrMap),
  unheld: optional(text),
  retests: optional(text),
  corrections: optional(list),
  was: optional(textOrList),
};
const NOTE = shape(KEYS);
const SCRIPT = shape({ ...KEYS, note: optional(text), pace: optional(text), subtitles: optional(text) });

const STATUSES: readonly NoteStatus[] = ['draft', 'held back', 'published'];
const UNHELD: readonly UnheldRule[] = ['warn', 'refuse'];
const MOST_HIGHLIGHTS = 3;

export interface StatedNote {
  readonly runs: ReadonlyMap<string, Alias>;
  readonly comparisons: ReadonlyMap<string, Alias>;
  readonly attempts: ReadonlyMap<string, Alias>;
  readonly quoted: ReadonlyMap<string, Alias>;
  /** The note that a script speaks for. */
  readonly speaksFor?: Reference;
  readonly note: Note;
}

export function readNote(source: SourceFile, kind: Note['kind'], data: DataFiles, report: Report): StatedNote {
  const fields: ShapeOf<typeof SCRIPT> = readShape(kind === 'note' ? NOTE : SCRIPT, source.root, `a ${kind}`, source.start, report);
  const runs = readAliases(fields.runs, 'runs', report);
  const comparisons = readAliases(fields.comparisons, 'comparisons', report);
  const attempts = readAliases(fields.attempts, 'attempts', report);
  const quoted = readAliases(fields.quoted, 'quoted', report);
  tellClashes({ runs, comparisons, attempts, quoted }, report);
  const unheld = wordOf(fields.unheld, 'unheld', UNHELD, report);
  const retests = wordOf(fields.retests, 'retests', RETESTS, report);
  const pace = paceOf(fields.pace, report);
  const subtitles = dataPathOf(fields.subtitles, 'subtitles', data, report);
  const spokenFor = idOf(fields.note, 'note', report);
  const corrections = readCorrections(fields.corrections, source, report);
  const was = readWas(fields.was, source, report);
  const authors = textsOf(fields.authors, 'authors', source.placeOf('authors'), report)?.flatMap(
    (node) => lineOf(node, 'authors', report) ?? [],
  );
  const licence = readLicence(fields.licence, source.placeOf('licence'), report);
  const note: Note = {
    ...itemOf(source, fields.title, report),
    text: source.text,
    kind,
    date: dateOf(fields.date, 'date', report) ?? '',
    status: wordOf(fields.status, 'status', STATUSES, report) ?? 'draft',
    runs: idsOf(runs),
    comparisons: idsOf(comparisons),
    ...(attempts.size > 0 ? { attempts: idsOf(attempts) } : {}),
    ...(quoted.size > 0 ? { quoted: idsOf(quoted) } : {}),
    highlights: highlightsOf(fields.highlights, source, report),
    ...leadOf(fields.lead, report),
    ...(fields.summary ? { summary: fields.summary.text } : {}),
    ...(fields.disclosure ? { disclosure: fields.disclosure.text } : {}),
    front: frontOf(fields),
    ...(authors ? { authors } : {}),
    ...(licence ? { licence } : {}),
    ...(unheld ? { unheld } : {}),
    ...(retests === 'follow' ? { followsRetests: true } : {}),
    ...(corrections.length > 0 ? { corrections } : {}),
    ...(was.length > 0 ? { was } : {}),
    ...(pace === undefined ? {} : { pace }),
    ...(subtitles === undefined ? {} : { subtitles }),
    ...(spokenFor === undefined ? {} : { note: spokenFor }),
  };
  const speaksFor = spokenFor === undefined ? {} : { speaksFor: { value: spokenFor, place: fields.note!.place } };
  return { runs, comparisons, attempts, quoted, ...speaksFor, note };
}

/** The attributes of the chart at a note's head, each a text; which there are is told where they are read. */
function leadOf(node: MapNode | undefined, report: Report): Pick<Note, 'lead'> {
  if (node === undefined) return {};
  const attributes = [...node.entries.values()].flatMap(({ key, value }) => {
    const line = value.kind === 'text' ? lineOf(value, key, report) : undefined;
    if (value.kind !== 'text' && value.kind !== 'refused') {
      report.error('wrong-kind', value.place, `\`${key}\` is ${KIND_WORDS[value.kind]}`, { expected: KIND_WORDS.text });
    }
    return line === undefined || value.kind !== 'text' ? [] : [[key, { value: line, place: value.inside }] as const];
  });
  return { lead: { attributes: new Map(attributes), place: node.place } };
}

const FRONT: readonly FrontKey[] = ['title', 'summary', 'disclosure'];

function frontOf(fields: ShapeOf<typeof SCRIPT>): FrontText[] {
  return FRONT.flatMap((key) => {
    const node = fields[key];
    return node ? [{ key, text: node.text, place: node.inside }] : [];
  });
}

/** Expressions with the place where their first letter stands. */
function highlightsOf(node: TextNode | ListNode | undefined, source: SourceFile, report: Report): Note['highlights'] {
  const items = textsOf(node, 'highlights', source.placeOf('highlights'), report) ?? [];
  const tooMany = items[MOST_HIGHLIGHTS];
  if (tooMany)
    report.error('too-many', tooMany.place, `\`highlights\` has ${items.length} items`, { expected: `at most ${MOST_HIGHLIGHTS}` });
  return items.map((item) => ({ expression: item.text, place: item.inside }));
}
