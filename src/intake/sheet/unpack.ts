/** Files packed with gzip (RFC 1952) -> the bytes that were packed, a piece at a time. The only place of intake that knows fflate. */
import { Gunzip } from 'fflate';
import { joined } from './parts.ts';

/** What a file is packed with, told by its first bytes (gzip: RFC 1952, 2.3.1; zip, and so the workbooks of spreadsheets: APPNOTE 4.3.7); null for text. */
export function packedWith(bytes: Uint8Array): 'gzip' | 'zip' | null {
  if (bytes[0] === 0x1f && bytes[1] === 0x8b) return 'gzip';
  return bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4 ? 'zip' : null;
}

/** Why a packed file yields no text: it is cut off or damaged, or what is in it is too large. */
export class UnpackFault extends Error {
  readonly kind: 'damaged' | 'too-large';

  constructor(kind: UnpackFault['kind']) {
    super(kind);
    this.kind = kind;
  }
}

/** Bytes given to the library at once: a packed byte yields at most 1032 (RFC 1951), so that what comes out at once stays small. */
const PIECE = 1 << 14;

/** The size of a member's end: checksum and length of what was packed (RFC 1952, 2.3). */
const TRAILER = 8;

/**
 * What the pieces of a file hold, unpacked where they begin as gzip does; several members one after the other, as loggers append them, are read whole.
 * Zero bytes behind the last member are padding, as of tapes and block devices. Throws an `UnpackFault` where the file ends early, where checksum or length of a member is not what it says, or above `most` bytes.
 */
export function* unpacked(pieces: Iterable<Uint8Array>, most = Number.POSITIVE_INFINITY): Generator<Uint8Array> {
  let member: Members | null = null;
  let first = true;
  for (const piece of pieces) {
    if (first && packedWith(piece) === 'gzip') member = membersOf(most);
    first = false;
    if (member === null) yield piece;
    else for (let from = 0; from < piece.length; from += PIECE) yield* member.push(piece.subarray(from, from + PIECE));
  }
  if (member !== null) yield* member.end();
}

/** The whole of a packed file in one array. Throws as `unpacked` does. */
export function unpackWhole(bytes: Uint8Array, most: number): Uint8Array {
  return joined([...unpacked([bytes], most)]);
}

/** A member ends in no more zeros of its own: the trailer, and what an empty block may end with. */
const MOST_ZEROS = 2 * TRAILER;

interface Members {
  readonly push: (packed: Uint8Array) => Iterable<Uint8Array>;
  readonly end: () => Iterable<Uint8Array>;
}

/** The library tells neither a wrong checksum nor a cut end: both are seen to here. */
function membersOf(most: number): Members {
  let out: Uint8Array[] = [];
  let total = 0;
  let length = 0;
  let checksum = 0;
  let pushed = 0;
  let recent: Uint8Array = new Uint8Array(0);
  let zeros = 0;
  const endsAt = (end: number) => {
    const at = recent.length - (pushed - end) - TRAILER;
    if (at < 0) return false;
    const view = new DataView(recent.buffer, recent.byteOffset + at, TRAILER);
    return view.getUint32(0, true) === checksum && view.getUint32(4, true) === length % 2 ** 32;
  };
  const verify = (end: number) => {
    if (!endsAt(end)) throw new UnpackFault('damaged');
    length = 0;
    checksum = 0;
  };
  const stream = new Gunzip((piece) => {
    total += piece.length;
    if (total > most) throw new UnpackFault('too-large');
    length += piece.length;
    checksum = crc32(piece, checksum);
    if (piece.length > 0) out.push(piece);
  });
  stream.onmember = verify;
  const take = () => {
    const taken = out;
    out = [];
    return taken;
  };
  const feed = (packed: Uint8Array, last: boolean) => {
    pushed += packed.length;
    recent = joined([recent.subarray(Math.max(0, recent.length - PIECE)), packed]);
    try {
      stream.push(packed, last);
    } catch (thrown) {
      throw thrown instanceof UnpackFault ? thrown : new UnpackFault('damaged');
    }
    return take();
  };
  const feedZeros = function* (count: number) {
    for (let left = count; left > 0; left -= PIECE) yield* feed(new Uint8Array(Math.min(left, PIECE)), false);
  };
  return {
    // Zeros are held back until it is known whether a member goes on behind them.
    *push(packed) {
      let end = packed.length;
      while (end > 0 && packed[end - 1] === 0) end--;
      if (end > 0) {
        yield* feedZeros(zeros);
        zeros = 0;
        yield* feed(packed.subarray(0, end), false);
      }
      zeros += packed.length - end;
    },
    // Of the zeros at the end, those that the last member needs are its own.
    *end() {
      for (let left = Math.min(zeros, MOST_ZEROS); left > 0 && !endsAt(pushed); left--) yield* feedZeros(1);
      yield* feed(new Uint8Array(0), true);
      verify(pushed);
    },
  };
}

let table: Uint32Array | null = null;

/** The polynomial of the checksum, reversed (RFC 1952, 8). */
const POLYNOMIAL = 0xedb88320;

/** Checksum of bytes that follow those with the checksum `before` (RFC 1952, 8). */
function crc32(bytes: Uint8Array, before: number): number {
  table ??= Uint32Array.from({ length: 256 }, (_, byte) => {
    let value = byte;
    for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ POLYNOMIAL : value >>> 1;
    return value;
  });
  let value = ~before;
  for (let at = 0; at < bytes.length; at++) value = table[(value ^ bytes[at]!) & 255]! ^ (value >>> 8);
  return ~value >>> 0;
}
