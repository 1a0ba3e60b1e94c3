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

/**
 * Boxes that say how an AVIF is decoded, by the box they lie in, and how many bytes of its content come before them. Source: ISO/IEC 23008-12
 * (HEIF), 6 and 9, from memory; ISO/IEC 14496-12, 8.11, from memory.
 */
const BOXES: Readonly<Record<string, { readonly skip: number; readonly needed: RegExp }>> = {
  '': { skip: 0, needed: /^(?:ftyp|meta|mdat)$/ },
  meta: { skip: 4, needed: /^(?:hdlr|pitm|iloc|iinf|iref|iprp)$/ },
  iinf: { skip: 6, needed: /^infe$/ },
  iprp: { skip: 0, needed: /^(?:ipco|ipma)$/ },
  ipco: { skip: 0, needed: /^(?:av1C|ispe|pixi|auxC|colr)$/ },
};

/** Boxes and items of an AVIF other than coded pictures. */
function ofAvif(bytes: Uint8Array): string[] {
  const left = inBox(bytes, { name: '', start: 0, end: bytes.length });
  return boxes(bytes).some(({ name }) => name === 'meta') ? left : [...left, 'no meta box'];
}

function inBox(bytes: Uint8Array, box: Part): string[] {
  const form = BOXES[box.name];
  if (!form) return [];
  return boxes(bytes, box.start + form.skip, box.end).flatMap((part) => {
    if (!form.needed.test(part.name)) return [part.name];
    return [...itemOrColours(bytes, part), ...inBox(bytes, part)];
  });
}

/** The type of an item that is no coded picture, or has a name; colours other than numbers of a standard. */
function itemOrColours(bytes: Uint8Array, { name, start, end }: Part): string[] {
  const text = (from: number) => latin(bytes, start + from, Math.min(start + from + 4, end));
  if (name === 'infe' && (text(8) !== 'av01' || end - start > 13)) return [text(8)];
  return name === 'colr' && text(0) !== 'nclx' ? [text(0)] : [];
}
