/** Record copies: a comparison frozen under a permalink. Written by `npm run record`, read here as far as their form goes. */
import * as v from 'valibot';
import type { Problem } from '../../problem.ts';
import { date, FIGURES, type Fixed, id, QUOTED, REPEAT, RUN, SOURCES } from './recorded-comparison.ts';
import { readForm, type SealedKind } from './sealed-file.ts';

/** Its figures are those of `comparisons/<id>/figures.json`. */
const RECORD = v.pipe(
  v.strictObject({
    /** Of the comparison that it was made from. */
    id,
    title: v.string(),
    /** Alias of the reference setting, which its first run bears too. */
    reference: v.string(),
    /** In the author's order. */
    runs: v.array(RUN),
    /** Aliases of the runs of each setting, by the setting's alias; left out where each setting has one run. */
    settings: v.exactOptional(v.record(v.string(), v.pipe(v.array(v.string()), v.minLength(1, 'a setting without a run')))),
    /** Groups of other repeats of the specimen, which say how runs lie apart; left out where there are none. */
    repeats: v.exactOptional(v.array(v.array(REPEAT))),
    /** What others published, beside it; left out where nothing is quoted. */
    quoted: v.exactOptional(v.array(QUOTED)),
    sources: SOURCES,
    figures: FIGURES,
    /** For each figure's name the digest of its definition, formula and source: which version of a method made it. */
    methods: v.record(v.string(), v.string()),
  }),
  v.check(({ runs }) => runs.length > 1, 'a comparison of fewer than two runs'),
  v.check(({ runs }) => differ(runs.map(({ alias }) => alias)), 'two runs of one alias'),
  v.check(({ runs }) => differ(runs.map(({ run }) => run)), 'one run twice'),
  v.check(({ runs, reference }) => runs.some(({ alias }) => alias === reference), 'a reference that is none of its runs'),
  v.check(
    ({ runs, settings }) =>
      settings === undefined ||
      areMadeOf(
        settings,
        runs.map(({ alias }) => alias),
      ),
    'settings that are not made of its runs',
  ),
  v.check(
    (record) =>
      [
        record,
        ...record.runs,
        ...(record.quoted ?? []),
        ...record.runs.map(({ ambient }) => ambient),
        ...(record.repeats ?? []).flat(),
      ].every(namesSources),
    'a figure that rests on a source that is not named',
  ),
);

const COPY = v.strictObject({
  format: v.literal(1),
  /** Of the comparison, and the beginning of a digest of what is recorded. */
  id,
  /** The day as of which it stands, given by the author. */
  date,
  record: RECORD,
  /** Digest of the rest, by which an edit is found. */
  sha256: v.string(),
});

/** What its seal is of. */
export type RecordCopy = Omit<v.InferOutput<typeof COPY>, 'sha256'>;
export type RecordedComparison = Fixed<v.InferOutput<typeof RECORD>>;

/** Written by `npm run record`. */
export const COPIES: SealedKind = {
  rule: 'record-copy',
  noun: 'record copy',
  command: 'npm run record',
  remedy: 'no one edits this file by hand: bring back what was committed',
};

/** Reads a file of content/record-copies/ as far as its form goes. A problem where it is no record copy. */
export function readCopyForm(source: string, file: string): (RecordCopy & { readonly sha256: string }) | Problem {
  return readForm(COPY, source, file, COPIES);
}

/** Whether each run is in one setting, whose alias its first run bears. */
function areMadeOf(settings: Readonly<Record<string, readonly string[]>>, runs: readonly string[]): boolean {
  const named = Object.values(settings).flat();
  const first = Object.entries(settings).every(([alias, aliases]) => aliases[0] === alias);
  return first && named.length === runs.length && differ(named) && named.every((alias) => runs.includes(alias));
}

function differ(names: readonly string[]): boolean {
  return new Set(names).size === names.length;
}

/** Whether every part of every figure has its source beside it. */
function namesSources({ sources, figures }: Pick<v.InferOutput<typeof RUN>, 'sources' | 'figures'>): boolean {
  return Object.values(figures).every(
    (figure) => !('parts' in figure) || Object.keys(figure.parts ?? {}).every((source) => Object.hasOwn(sources, source)),
  );
}
