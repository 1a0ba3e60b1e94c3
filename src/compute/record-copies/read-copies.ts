/** content/record-copies/*.json → the record copies, each checked against its own digest, its name against both. */
import { compareText, error, type Problem } from '../../problem.ts';
import type { ContentFile } from '../../register/register.ts';
import { COPIES, type RecordCopy, readCopyForm } from '../../register/sealed/record-copies.ts';
import { edited, isProblem } from '../../register/sealed/sealed-file.ts';
import { digest } from '../store/digest.ts';
import { COPY_FOLDER, copyFile, copyId, sealedCopy } from './copy.ts';

/** A copy that is as it was written. */
export interface ReadCopy {
  readonly copy: RecordCopy;
  /** The file's own bytes, which are published with its page. */
  readonly text: string;
  /** SHA-256 of those bytes. */
  readonly sha256: string;
}

export interface Copies {
  /** Newest first, those of one day by id. */
  readonly copies: readonly ReadCopy[];
  readonly problems: readonly Problem[];
}

/** Reads the copies. One that is not as it was written is a problem, and none of the site. */
export function readCopies(files: readonly ContentFile[]): Copies {
  const copies: ReadCopy[] = [];
  const problems: Problem[] = [];
  for (const file of files) {
    const read = readCopy(file);
    if (isProblem(read)) problems.push(read);
    else copies.push(read);
  }
  return {
    copies: copies.sort(({ copy: a }, { copy: b }) => compareText(b.date, a.date) || compareText(a.id, b.id)),
    problems,
  };
}

/** The copy in one file, or what is wrong with it. */
export function readCopy({ path, text }: ContentFile): ReadCopy | Problem {
  if (!/^content\/record-copies\/[^/]+\.json$/.test(path)) return stray(path);
  const other = otherFormat(text);
  if (other !== undefined) return unknownFormat(path, other);
  const read = readCopyForm(text, path);
  if (isProblem(read)) return read;
  const { sha256: _seal, ...copy } = read;
  if (!isSealed(copy, text)) return edited(path, COPIES);
  if (path === copyFile(copy.id)) return { copy, text, sha256: digest(text) };
  return error(COPIES.rule, { file: path, line: 1, column: 1 }, `this is the record copy ${copy.id}`, {
    expected: `it in ${copyFile(copy.id)}: its name is its address, for ever`,
    remedy: 'give the file its name back',
  });
}

/** Digest and id are part of the text. Half a character, which no digest can be of, is none of ours. */
function isSealed({ id, ...content }: RecordCopy, text: string): boolean {
  try {
    return copyId(content) === id && sealedCopy({ id, ...content }) === text;
  } catch {
    return false;
  }
}

function stray(file: string): Problem {
  return error(COPIES.rule, { file, line: 1, column: 1 }, 'this is not a record copy', {
    expected: `nothing in ${COPY_FOLDER} but \`<id>.json\` as \`${COPIES.command}\` wrote it`,
    remedy: 'move the file out of content/',
  });
}

/** The format that a text of ours begins to state otherwise than we know it; keys of canonical JSON stand in their order. */
function otherFormat(text: string): string | undefined {
  const [, format] = /^\{"date":"[^"]*","format":(\d{1,9}),/.exec(text) ?? [];
  return format === '1' ? undefined : format;
}

function unknownFormat(file: string, format: string): Problem {
  return error(COPIES.rule, { file, line: 1, column: 1 }, `this record copy is of format ${format}`, {
    expected: 'format 1, the one that this version of Soakproof knows',
    remedy: 'build with the version that wrote it, or a newer one',
  });
}
