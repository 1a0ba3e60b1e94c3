/** `content/archives/<slug>.json`: where what was unpacked from an archive came from. Written into archives by a build. */
import * as v from 'valibot';
import type { Problem } from '../../problem.ts';
import type { ContentFile } from '../register.ts';
import { isProblem, readForm, type SealedKind } from './sealed-file.ts';

const ARCHIVE = v.strictObject({
  format: v.literal(1),
  /** `notes/<slug>`. */
  of: v.string(),
  /** The site that it comes from; '' where that names no address. */
  site: v.string(),
  /** Pages of that site which the note links to. Those that the archive does not hold are missing for that reason. */
  links: v.pipe(v.array(v.string()), v.readonly()),
  /** Pictures that it holds as they were published: their paths below data/, SHA-256 of the originals and of what is here. */
  pictures: v.optional(
    v.pipe(v.array(v.strictObject({ path: v.string(), original: v.string(), published: v.string() })), v.readonly()),
  ),
});

export type ArchiveOrigin = Readonly<v.InferOutput<typeof ARCHIVE>>;

/** The pictures of all origins by their paths below data/. */
export function archivedPictures(
  origins: readonly ArchiveOrigin[],
): ReadonlyMap<string, { readonly original: string; readonly published: string }> {
  return new Map(origins.flatMap(({ pictures = [] }) => pictures.map(({ path, ...digests }) => [path, digests] as const)));
}

const KIND: SealedKind = {
  rule: 'archive-origin',
  noun: 'origin of an archive',
  command: 'npm run build',
  remedy: 'unpack the archive again, or remove this file',
};

/** Reads the origins; what is none is a problem. */
export function readOrigins(files: readonly ContentFile[]): { origins: ArchiveOrigin[]; problems: Problem[] } {
  const read = files.map(({ path, text }) => readForm(ARCHIVE, text, path, KIND));
  return {
    origins: read.flatMap((each) => (isProblem(each) ? [] : [each])),
    problems: read.flatMap((each) => (isProblem(each) ? [each] : [])),
  };
}
