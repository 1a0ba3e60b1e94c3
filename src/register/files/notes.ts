/** content/notes/<slug>.md and content/scripts/<slug>.md: what a write-up says of itself. Its text is read by words. */

import type { DataFiles, FrontKey, FrontText, Note, NoteStatus, UnheldRule } from '../register.ts';
import { type Alias, idsOf, readAliases, tellClashes } from '../sections/aliases.ts';
import { CORRECTION, readCorrections } from '../sections/corrections.ts';
import { readWas } from '../sections/former-addresses.ts';
import { RETESTS } from '../sections/retests.ts';
import { dataPathOf } from '../values/data-path.ts';
import { OWN_LICENCE, readLicence } from '../values/licence.ts';
import { paceOf, USUAL_PACE } from '../values/pace.ts';
import { list, map, optional, readShape, required, type ShapeOf, shape, text, textOrList, textOrMap } from '../values/shape.ts';
import { itemOf, type SourceFile } from '../values/source-file.ts';
import type { Reference } from '../values/stated-value.ts';
import { dateOf, idOf, lineOf, textsOf, wordOf } from '../values/values.ts';
import { KIND_WORDS, type ListNode, type MapNode, type TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';

const MOST_HIGHLIGHTS = 3;
const STATUSES: readonly NoteStatus[] = ['draft', 'held back', 'published'];
const UNHELD: readonly UnheldRule[] = ['warn', 'refuse'];

const named = (what: string) => `names, each with the id of ${what}; one id alone is its own name`;
const KEYS = {
  title: required(text, 'its title, for readers', { form: 'words', example: 'An hour under load' }),
  date: required(text, 'the day that stands on its page', { form: 'day' }),
  status: required(text, 'whether it is published', { words: STATUSES, example: 'draft' }),
  runs: optional(textOrMap, 'the runs that it speaks of', { means: named('a run'), example: 'rated: larch-rated' }),
  comparisons: optional(textOrMap, 'the comparisons that it speaks of', {
    means: named('a comparison'),
    example: 'steps: larch-steps',
  }),
  attempts: optional(textOrMap, 'the attempts that it speaks of', {
    means: named('an attempts file'),
    example: 'ladder: larch-ladder',
  }),
  quoted: optional(textOrMap, 'the figures of others that it speaks of', {
    means: named('a quoted file'),
    example: 'older: hot-boxes',
  }),
  highlights: optional(textOrList, `up to ${MOST_HIGHLIGHTS} figures that stand at its head`, {
    form: 'expression',
    example: '[fast.peak_temperature]',
  }),
  lead: optional(map, 'the chart at its head', {
    means: 'the keys of `::plot`',
    otherwise: 'the first chart of its text',
    example: 'kind: trace',
  }),
  summary: optional(text, 'its summary, for lists and feeds', { form: 'words', example: 'What an hour of load does.' }),
  disclosure: optional(text, 'how the specimen was come by, who paid, who saw the draft', { form: 'words' }),
  authors: optional(textOrList, 'who wrote it; `Alder, Rowan` sets the family name apart', {
    form: 'words',
    otherwise: "the site's name",
  }),
  licence: optional(textOrMap, 'how its words may be used', {
    means: 'an id of the SPDX licence list, or terms of your own',
    keys: { title: '`licence`', shape: OWN_LICENCE },
  }),
  unheld: optional(text, 'whether a number that nothing holds is a warning or an error', {
    words: UNHELD,
    otherwise: 'warn',
    example: 'refuse',
  }),
  retests: optional(text, 'whether a retest takes the place of its run', { words: RETESTS, otherwise: 'stay' }),
  corrections: optional(list, 'numbers that print otherwise than when it was published, each with a reason', {
    each: { title: 'an item of `corrections`', shape: CORRECTION },
  }),
  was: optional(textOrList, 'where it stood before, so that old links still lead to it', {
    form: 'page',
    example: 'notes/old-name/',
  }),
};
export const NOTE = shape(KEYS);
export const SCRIPT = shape({
  ...KEYS,
  note: optional(text, 'the note that it is the spoken version of', { form: 'id', example: 'larch-soak' }),
  pace: optional(text, 'how fast it is spoken', {
    means: 'a number of words per minute',
    otherwise: `${USUAL_PACE} words per minute`,
  }),
  subtitles: optional(text, 'the subtitles of the finished video, from which its times are taken', { form: 'path' }),
});

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
