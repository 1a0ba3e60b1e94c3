/**
 * Readers of the parts that files of pictures consist of. They give what they can read; what is no part, and where a file is cut off, is `rest`.
 */

/** A part of a file: its name, and where its content begins and ends. */
export interface Part {
  readonly name: string;
  readonly start: number;
  readonly end: number;
}

/** Text of bytes, one character a byte. */
export function latin(bytes: Uint8Array, start: number, end: number): string {
  return String.fromCharCode(...bytes.subarray(start, end));
}

function view(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

/** Bytes that are no part, or the missing end of a file. */
function restOf(bytes: Uint8Array, at: number): Part {
  return { name: 'rest', start: Math.min(at, bytes.length), end: bytes.length };
}

/** Chunks of a PNG with the bytes behind the last one as `rest`. Source: W3C PNG (Third Edition), 5.3. */
export function pngChunks(bytes: Uint8Array): Part[] {
  const parts: Part[] = [];
  let at = 8;
  while (at + 12 <= bytes.length) {
    const length = view(bytes).getUint32(at);
    const name = latin(bytes, at + 4, at + 8);
    if (at + 12 + length > bytes.length) break;
    parts.push({ name, start: at + 8, end: at + 8 + length });
    at += 12 + length;
    if (name === 'IEND') return at < bytes.length ? [...parts, restOf(bytes, at)] : parts;
  }
  return [...parts, restOf(bytes, at)];
}

/** Chunks of a WebP, with what its size leaves out or reaches beyond as `rest`. Source: RFC 9649, 2.3 and 2.4. */
export function webpChunks(bytes: Uint8Array): Part[] {
  const parts: Part[] = [];
  const stop = bytes.length < 12 ? 0 : 8 + view(bytes).getUint32(4, true);
  let at = 12;
  while (at + 8 <= Math.min(stop, bytes.length)) {
    const length = view(bytes).getUint32(at + 4, true);
    if (at + 8 + length > bytes.length) break;
    parts.push({ name: latin(bytes, at, at + 4), start: at + 8, end: at + 8 + length });
    at += 8 + length + (length % 2);
  }
  return at === stop && at === bytes.length ? parts : [...parts, restOf(bytes, at)];
}

/** Segments of a JPEG by marker ("FFE1"), with what follows its end as `rest`. Source: ITU-T T.81, B.1.1. */
export function jpegSegments(bytes: Uint8Array): Part[] {
  const parts: Part[] = [];
  let at = 2;
  while (at + 2 <= bytes.length) {
    if (bytes[at] !== 0xff) break;
    const marker = bytes[at + 1]!;
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker === 0xd9) {
      return at + 2 < bytes.length ? [...parts, restOf(bytes, at + 2)] : parts;
    }
    if (at + 4 > bytes.length) break;
    const length = view(bytes).getUint16(at + 2);
    parts.push({ name: `FF${marker.toString(16).toUpperCase()}`, start: at + 4, end: Math.min(at + 2 + length, bytes.length) });
    at += 2 + length;
    if (marker === 0xda) at = pastScan(bytes, at);
  }
  return [...parts, restOf(bytes, at)];
}

/** The next marker behind entropy-coded data: 00 behind FF is a stuffed byte, D0 to D7 are restarts. */
function pastScan(bytes: Uint8Array, from: number): number {
  let at = from;
  while (at + 1 < bytes.length) {
    const next = bytes[at + 1]!;
    if (bytes[at] === 0xff && next !== 0 && !(next >= 0xd0 && next <= 0xd7)) return at;
    at += 1;
  }
  return bytes.length;
}

/** Boxes of an ISO base media file between two offsets, with what is none as `rest`. Source: ISO/IEC 14496-12, 4.2 (from memory). */
export function boxes(bytes: Uint8Array, start = 0, end = bytes.length): Part[] {
  const parts: Part[] = [];
  let at = start;
  while (at + 8 <= end) {
    const size = view(bytes).getUint32(at);
    const stop = size === 0 ? end : at + size;
    if ((size !== 0 && size < 8) || stop > end) break;
    parts.push({ name: latin(bytes, at + 4, at + 8), start: at + 8, end: stop });
    at = stop;
  }
  return at === end ? parts : [...parts, { name: 'rest', start: at, end }];
}
