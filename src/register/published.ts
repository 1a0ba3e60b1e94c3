/** The published state of a note or script: what it printed when it went out. Written by `npm run publish`, read here. */
import * as v from 'valibot';
import { error, type Problem } from '../problem.ts';

const text = v.string();
const number = v.number();
const list = <S extends v.GenericSchema>(item: S) => v.pipe(v.array(item), v.readonly());

const ENTRY = v.strictObject({
  line: number,
  column: number,
  kind: v.picklist(['value', 'stated', 'claim', 'table', 'highlight']),
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

const STATE = v.strictObject({
  format: v.literal(1),
  /** `notes/<slug>` or `scripts/<slug>`. */
  of: text,
  title: text,
  /** The day of publication that the author gave. */
  date: text,
  entries: list(ENTRY),
  plots: list(v.strictObject({ id: text, title: text, sha256: text })),
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

const REMEDY = 'no one edits this file by hand: bring back what was committed, or remove it and publish the note again';

/** Reads a file of content/published/ as far as its form goes. A problem where it is no published state. */
export function readPublished(source: string, file: string): SealedState | Problem {
  let json: unknown;
  try {
    json = JSON.parse(source);
  } catch (thrown) {
    const message = thrown instanceof Error ? thrown.message : String(thrown);
    return error('published-state', placeOf(source, file, Number(/position (\d+)/.exec(message)?.[1] ?? 0)), 'this is no JSON', {
      remedy: REMEDY,
    });
  }
  const checked = v.safeParse(SEALED, json);
  if (checked.success) return checked.output;
  const issue = checked.issues[0];
  const path = (issue.path ?? []).map(({ key }) => String(key)).join('.');
  const found = `this is no published state: ${path === '' ? '' : `at \`${path}\` `}${issue.received} where ${issue.expected ?? 'something else'} belongs`;
  return error('published-state', { file, line: 1, column: 1 }, found, { remedy: REMEDY });
}

/** The problem of a state that is not as it was written. */
export function editedState(file: string): Problem {
  return error('published-state', { file, line: 1, column: 1 }, 'this published state is not as `npm run publish` wrote it', {
    expected: 'its own digest over all that it holds',
    remedy: REMEDY,
  });
}

function placeOf(source: string, file: string, offset: number): Problem['place'] {
  const before = source.slice(0, offset);
  return { file, line: before.split('\n').length, column: offset - (before.lastIndexOf('\n') + 1) + 1 };
}
