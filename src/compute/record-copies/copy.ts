/** A record copy as a file: its seal, its id from its content, its path. */

import type { ContentFile } from '../../register/register.ts';
import type { RecordCopy } from '../../register/sealed/record-copies.ts';
import { canonicalText, sealOf } from '../store/canonical-json.ts';

/** Hexadecimal digits of the digest that an id carries: 48 bits, so that two copies of a comparison get the same one never by chance. */
const DIGITS = 12;

/** Content of a copy, before it has a name. */
export type Content = Omit<RecordCopy, 'id'>;

/** The readable id of the comparison and the beginning of the digest of all that the copy holds. */
export function copyId(content: Content): string {
  return `${content.record.id}-${sealOf(content).slice(0, DIGITS)}`;
}

/** The text of a copy's file: canonical JSON (RFC 8785) with the digest of the rest but its id, and a final newline. */
export function sealedCopy({ id, ...content }: RecordCopy): string {
  return canonicalText({ ...content, id, sha256: sealOf(content) });
}

/** `content/record-copies/<id>.json`. */
export function copyFile(id: string): string {
  return `${COPY_FOLDER}${id}.json`;
}

/** Where a copy stands for ever, below the base. */
export function copyPath(id: string): string {
  return `record-copies/${id}/`;
}

/** A copy by its file's name alone. */
export interface NamedCopy {
  readonly path: string;
  /** Id of the comparison that it was made from. */
  readonly comparison: string;
}

/** The copies that files are named as. Their content is not looked at, so that an edited one is told of as that alone. */
export function namedCopies(files: readonly Pick<ContentFile, 'path'>[]): NamedCopy[] {
  return files.flatMap(({ path }) => {
    const [, id = '', comparison = ''] = NAME.exec(path) ?? [];
    return comparison === '' ? [] : [{ path: copyPath(id), comparison }];
  });
}

const NAME = new RegExp(`^content/record-copies/((.+)-[0-9a-f]{${DIGITS}})\\.json$`);

export const COPY_FOLDER = 'content/record-copies/';
