/**
 * What of a finished file is no picture: metadata, profiles, thumbnails, comments, bytes behind the end. Each file is held against this before it
 * goes out, so that no change of a library lets anything through.
 */
import type { Kind } from './kind.ts';
import { boxes, jpegSegments, latin, type Part, pngChunks, webpChunks } from './tables.ts';

/** Parts that only say how to decode: all else is left over. JFIF stands in APP0, and says nothing but densities. */
const NEEDED: Readonly<Record<'jpeg' | 'png' | 'webp', RegExp>> = {
  jpeg: /^FF(?:DB|C0|C1|C2|C4|DD|DA)$/,
  png: /^(?:IHDR|PLTE|tRNS|IDAT|IEND|pHYs|sRGB|gAMA|cHRM|bKGD|sBIT)$/,
  webp: /^(?:VP8 |VP8L|VP8X|ALPH)$/,
};

/** Names of the parts of a finished file that are no picture; empty where all is. */
export function leftovers(kind: Kind, bytes: Uint8Array): string[] {
  if (kind === 'avif') return ofAvif(bytes);
  const parts = { jpeg: jpegSegments, png: pngChunks, webp: webpChunks }[kind](bytes);
  return parts.filter((part) => !NEEDED[kind].test(part.name) && !isPlainJfif(kind, bytes, part)).map(({ name }) => name);
}

/** JFIF without a thumbnail has 14 bytes (ITU-T T.871, 10.1), which name densities; Adobe's marker has 12, which name the colours. */
function isPlainJfif(kind: Kind, bytes: Uint8Array, { name, start, end }: Part): boolean {
  if (kind !== 'jpeg') return false;
  const label = latin(bytes, start, Math.min(start + 5, end));
  return (
    (name === 'FFE0' && label === 'JFIF\0' && end - start === 14) || (name === 'FFEE' && label === 'Adobe' && end - start === 12)
  );
}

/** Items of an AVIF other than coded pictures: Exif and MIME types (XMP) are named in its `meta` box. */
function ofAvif(bytes: Uint8Array): string[] {
  const meta = boxes(bytes).find(({ name }) => name === 'meta');
  if (!meta) return ['no meta box'];
  const text = latin(bytes, meta.start, Math.min(meta.end, meta.start + 60_000));
  return ['Exif', 'mime', 'uri ', 'prof', 'rICC'].filter((name) => text.includes(name));
}
