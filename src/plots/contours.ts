/** Points of a TrueType glyph (OpenType, ISO/IEC 14496-22, table glyf), of simple glyphs and of those composed of others. */

export interface ContourPoint {
  readonly x: number;
  readonly y: number;
  /** On the curve, or a control point of it. */
  readonly on: boolean;
}

export type Contour = readonly ContourPoint[];

/** Contours of a glyph in font units: none of a blank; null of one whose components are turned, scaled or placed by points. */
export function contours(glyph: number, dataOf: (glyph: number) => Buffer): readonly Contour[] | null {
  const data = dataOf(glyph);
  if (data.length === 0) return [];
  const count = data.readInt16BE(0);
  return count < 0 ? composed(data, dataOf) : simple(data, count);
}

/** Flags of a point. */
const ON = 1;
const X_SHORT = 2;
const Y_SHORT = 4;
const REPEAT = 8;
const X_SAME = 16;
const Y_SAME = 32;

function simple(data: Buffer, count: number): Contour[] {
  const ends = Array.from({ length: count }, (_, k) => data.readUInt16BE(10 + 2 * k));
  const total = (ends.at(-1) ?? -1) + 1;
  let at = 10 + 2 * count;
  at += 2 + data.readUInt16BE(at);
  const flags: number[] = [];
  while (flags.length < total) {
    const flag = data[at++]!;
    const times = flag & REPEAT ? data[at++]! + 1 : 1;
    for (let k = 0; k < times; k += 1) flags.push(flag);
  }
  const x = coordinates(data, at, flags, X_SHORT, X_SAME);
  const y = coordinates(data, x.end, flags, Y_SHORT, Y_SAME);
  const points = flags.map((flag, k) => ({ x: x.values[k]!, y: y.values[k]!, on: (flag & ON) !== 0 }));
  return ends.map((end, k) => points.slice(k === 0 ? 0 : ends[k - 1]! + 1, end + 1));
}

/** Running sums of the steps of one axis: a byte with its sign in the flag, two bytes, or none. */
function coordinates(data: Buffer, start: number, flags: readonly number[], short: number, same: number) {
  let at = start;
  let value = 0;
  const values = flags.map((flag) => {
    if (flag & short) value += flag & same ? data[at++]! : -data[at++]!;
    else if (!(flag & same)) {
      value += data.readInt16BE(at);
      at += 2;
    }
    return value;
  });
  return { values, end: at };
}

/** Flags of a component. */
const WORDS = 1;
const OFFSETS = 2;
const SCALE = 8;
const MORE = 32;
const TWO_SCALES = 64;
const MATRIX = 128;

/** Components shifted by their offsets. */
function composed(data: Buffer, dataOf: (glyph: number) => Buffer): Contour[] | null {
  const found: Contour[] = [];
  let at = 10;
  for (let flags = MORE; flags & MORE; ) {
    flags = data.readUInt16BE(at);
    if (flags & (SCALE | TWO_SCALES | MATRIX) || !(flags & OFFSETS)) return null;
    const glyph = data.readUInt16BE(at + 2);
    const [dx, dy] =
      flags & WORDS ? [data.readInt16BE(at + 4), data.readInt16BE(at + 6)] : [data.readInt8(at + 4), data.readInt8(at + 5)];
    at += flags & WORDS ? 8 : 6;
    const part = contours(glyph, dataOf);
    if (part === null) return null;
    found.push(...part.map((contour) => contour.map(({ x, y, on }) => ({ x: x + dx, y: y + dy, on }))));
  }
  return found;
}
