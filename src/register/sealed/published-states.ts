/** The published state of a note or script: what it printed when it went out. Written by `npm run publish`, read here. */
import * as v from 'valibot';
import type { Problem } from '../../problem.ts';
import { readForm, type SealedKind } from './sealed-file.ts';

const text = v.string();
const number = v.number();
const list = <S extends v.GenericSchema>(item: S) => v.pipe(v.array(item), v.readonly());

const KIND = v.picklist(['value', 'stated', 'claim', 'table', 'highlight']);

const ENTRY = v.strictObject({
  /** Its address within the page; states from before there were any have none. */
  id: v.optional(text),
  line: number,
  column: number,
  kind: KIND,
  text,
  expression: text,
  value: number,
  unit: text,
  /** Standard uncertainty in `unit` (K where that is °C), null = unknown. */
  u: v.nullable(number),
  /** As printed, unit included. */
  shown: text,
  verdict: v.picklist(['printed', 'holds', 'fails', 'cannot be told']),
  /** On what a stated number or claim rested, in words. */
  rests: v.optional(text),
  /** The sentence that it stands in, and the same with marks for its numbers; '' for highlights. */
  sentence: text,
  pattern: text,
  /** In scripts: the time of the cue that it stands below. */
  cue: v.optional(text),
  /** Runs, comparisons and attempts whose figures hold it. */
  held: list(text),
});

/** A number that was published and is no longer so: what it was, what it is, why, and since when. */
const CORRECTION = v.strictObject({
  since: text,
  number: text,
  was: text,
  is: text,
  reason: text,
  cue: v.optional(text),
  /** As it stood when it was published. */
  sentence: text,
  /** The day of the publication that closed it. */
  closed: v.optional(text),
});

const ABSENCE = v.strictObject({
  kind: KIND,
  line: number,
  column: number,
  expression: text,
  why: text,
  /** Runs, comparisons and attempts that it asks for; states from before that was kept have none. */
  held: v.optional(list(text)),
  /** As it would go out now, never as published: what a note may say in the place of the number. */
  instead: v.optional(text),
});

const STATE = v.strictObject({
  format: v.literal(1),
  /** `notes/<slug>` or `scripts/<slug>`. */
  of: text,
  title: text,
  /** The day of publication that the author gave. */
  date: text,
  entries: list(ENTRY),
  /** Numbers of its tables that were absent. */
  absent: v.optional(list(ABSENCE)),
  plots: list(v.strictObject({ id: text, title: text, sha256: text })),
  /** Pictures: paths below data/, with the digests of their authors' files. */
  pictures: v.optional(list(v.strictObject({ path: text, sha256: text }))),
  /** Addresses of its page and of what stands beside it, below the site's base. */
  addresses: list(text),
  /** What its numbers rest on: files of data/ and content/, and the code of the methods. */
  sources: list(v.strictObject({ name: text, sha256: text })),
  /** Corrections that an earlier publication of the same note closed, newest first. */
  history: list(CORRECTION),
});

const SEALED = v.strictObject({ ...STATE.entries, sha256: text });

export type PublishedState = Readonly<v.InferOutput<typeof STATE>>;
export type PublishedEntry = Readonly<v.InferOutput<typeof ENTRY>>;
export type Correction = Readonly<v.InferOutput<typeof CORRECTION>>;
/** A state with the digest of the rest, by which an edit is found. */
export type SealedState = Readonly<v.InferOutput<typeof SEALED>>;

/** Written by `npm run publish`. */
export const PUBLISHED: SealedKind = {
  rule: 'published-state',
  noun: 'published state',
  command: 'npm run publish',
  remedy: 'no one edits this file by hand: bring back what was committed, or remove it and publish the note again',
};

/** Reads a file of content/published/ as far as its form goes. A problem where it is no published state. */
export function readPublished(source: string, file: string): SealedState | Problem {
  return readForm(SEALED, source, file, PUBLISHED);
}
