/** Readers of the parts that files of pictures consist of. They give what they can read and stop where a file is cut off. */

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

/** Chunks of a PNG with the bytes behind the last one as `rest`. Source: W3C PNG (Third Edition), 5.3. */
export function pngChunks(bytes: Uint8Array): Part[] {
  const parts: Part[] = [];
  let at = 8;
  while (at + 12 <= bytes.length) {
    const length = view(bytes).getUint32(at);
    const name = latin(bytes, at + 4, at + 8);
    if (at + 12 + length > bytes.length) return parts;
    parts.push({ name, start: at + 8, end: at + 8 + length });
    at += 12 + length;
    if (name === 'IEND') break;
  }
  if (at < bytes.length) parts.push({ name: 'rest', start: at, end: bytes.length });
  return parts;
}

/** Chunks of a WebP. Source: RFC 9649, 2.3. */
export function webpChunks(bytes: Uint8Array): Part[] {
  const parts: Part[] = [];
  let at = 12;
  while (at + 8 <= bytes.length) {
    const length = view(bytes).getUint32(at + 4, true);
    if (at + 8 + length > bytes.length) break;
    parts.push({ name: latin(bytes, at, at + 4), start: at + 8, end: at + 8 + length });
    at += 8 + length + (length % 2);
  }
  return parts;
}

/** Segments of a JPEG by marker ("FFE1"), with what follows its end as `rest`. Source: ITU-T T.81, B.1.1. */
export function jpegSegments(bytes: Uint8Array): Part[] {
  const parts: Part[] = [];
  let at = 2;
  while (at + 2 <= bytes.length) {
    if (bytes[at] !== 0xff) return parts;
    const marker = bytes[at + 1]!;
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker === 0xd9) {
      if (at + 2 < bytes.length) parts.push({ name: 'rest', start: at + 2, end: bytes.length });
      return parts;
    }
    if (at + 4 > bytes.length) return parts;
    const length = view(bytes).getUint16(at + 2);
    parts.push({ name: `FF${marker.toString(16).toUpperCase()}`, start: at + 4, end: Math.min(at + 2 + length, bytes.length) });
    at += 2 + length;
    if (marker === 0xda) at = pastScan(bytes, at);
  }
  return parts;
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

/** Boxes of an ISO base media file between two offsets. Source: ISO/IEC 14496-12, 4.2 (from memory). */
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
  return parts;
}
