/**
 * Pixels as a PNG of indexed colour (ISO/IEC 15948, colour type 3): a drawing has few colours, so that it is a third as
 * large as one of true colour, and faster to write.
 */
import { constants, crc32, deflateSync } from 'node:zlib';

/** Opaque pixels, four bytes each: red, green, blue, alpha. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8Array;
}

const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
const MOST_COLOURS = 256;

/**
 * Writes a PNG. Up to 256 colours are kept as they are; of more, those that differ in their lowest bits alone are drawn in
 * the most frequent one of them: shades at the edges of lines and letters. Alpha is dropped.
 */
export function indexedPng({ width, height, pixels }: Pixels): Buffer {
  const colours = coloursOf(pixels, width * height);
  const { palette, indexOf } = paletteOf(countOf(colours));
  return Buffer.concat([
    SIGNATURE,
    chunk('IHDR', header(width, height)),
    chunk('PLTE', Buffer.from(palette.flatMap((colour) => [colour & 255, (colour >> 8) & 255, (colour >> 16) & 255]))),
    chunk('IDAT', deflateSync(scanLines(colours, indexOf, width, height), COMPRESSION)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** Run lengths alone, as zlib advises for PNG: its other strategies find matches by hashes that differ between processors. */
const COMPRESSION = { level: 6, strategy: constants.Z_RLE };

/** The pixels as numbers, blue above green above red; the alpha above them is the same in all. */
function coloursOf(pixels: Uint8Array, size: number): Int32Array {
  const bytes = pixels.byteOffset % 4 === 0 ? pixels : Uint8Array.from(pixels);
  return new Int32Array(bytes.buffer, bytes.byteOffset, size);
}

/** How often each colour stands, in order of appearance. Pixels come in runs of one colour. */
function countOf(colours: Int32Array): Map<number, number> {
  const counts = new Map<number, number>();
  for (let from = 0, to = 0; from < colours.length; from = to) {
    to = endOfRun(colours, from, colours.length);
    counts.set(colours[from]!, (counts.get(colours[from]!) ?? 0) + to - from);
  }
  return counts;
}

function endOfRun(colours: Int32Array, from: number, limit: number): number {
  const colour = colours[from];
  let to = from + 1;
  while (to < limit && colours[to] === colour) to += 1;
  return to;
}

/** The palette, and the place of each colour in it. */
function paletteOf(counts: ReadonlyMap<number, number>): { palette: number[]; indexOf: Map<number, number> } {
  for (let bits = 0; ; bits += 1) {
    const mask = ((0xff << bits) & 0xff) * 0x010101;
    const groups = new Map<number, number>();
    const palette: number[] = [];
    const indexOf = new Map<number, number>();
    for (const [colour, count] of counts) {
      const group = groups.get(colour & mask) ?? groups.size;
      groups.set(colour & mask, group);
      indexOf.set(colour, group);
      if (palette[group] === undefined || count > counts.get(palette[group])!) palette[group] = colour;
    }
    if (palette.length <= MOST_COLOURS) return { palette, indexOf };
  }
}

/** Rows of palette places, each after its filter byte: none. */
function scanLines(colours: Int32Array, indexOf: ReadonlyMap<number, number>, width: number, height: number): Uint8Array {
  const lines = new Uint8Array((width + 1) * height);
  for (let y = 0; y < height; y += 1) {
    const end = (y + 1) * width;
    for (let from = y * width, to = 0; from < end; from = to) {
      to = endOfRun(colours, from, end);
      lines.fill(indexOf.get(colours[from]!)!, from + y + 1, to + y + 1);
    }
  }
  return lines;
}

/** Eight bits a pixel, indexed, not interlaced. */
function header(width: number, height: number): Buffer {
  const bytes = Buffer.alloc(13);
  bytes.writeUInt32BE(width, 0);
  bytes.writeUInt32BE(height, 4);
  bytes.set([8, 3, 0, 0, 0], 8);
  return bytes;
}

function chunk(type: string, data: Buffer): Buffer {
  const typed = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const bytes = Buffer.alloc(typed.length + 8);
  bytes.writeUInt32BE(data.length, 0);
  typed.copy(bytes, 4);
  bytes.writeUInt32BE(crc32(typed), typed.length + 4);
  return bytes;
}
