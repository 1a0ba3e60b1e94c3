/**
 * Outlines of a TrueType font's glyphs, as path data (OpenType, ISO/IEC 14496-22: tables cmap, head, hhea, hmtx, loca,
 * glyf). The rasteriser opens the font's file anew for each letter; with outlines at hand it need not.
 */
import { type Contour, type ContourPoint, contours } from './contours.ts';

export interface Outline {
  /** Advance width, font units. */
  readonly advance: number;
  /** Relative path data from the glyph's origin, font units, y upwards; '' of a blank. */
  readonly path: string;
}

export interface Face {
  /** Font units in an em. */
  readonly em: number;
  /** Of one character; undefined where the font has no glyph for it, or none that is read here. */
  readonly outline: (character: string) => Outline | undefined;
}

/** Reads a face. Each glyph's outline is made once. Throws a RangeError on a file that is cut short. */
export function readFace(file: Buffer): Face {
  const tables = tablesOf(file);
  const glyphOf = characterMap(file, tables('cmap'));
  const [loca, glyf, hmtx] = [tables('loca'), tables('glyf'), tables('hmtx')];
  const long = file.readInt16BE(tables('head') + 50) === 1;
  const offset = (glyph: number) => (long ? file.readUInt32BE(loca + 4 * glyph) : 2 * file.readUInt16BE(loca + 2 * glyph));
  const dataOf = (glyph: number) => file.subarray(glyf + offset(glyph), glyf + offset(glyph + 1));
  const metrics = file.readUInt16BE(tables('hhea') + 34);
  const known = new Map<string, Outline | undefined>();
  const make = (character: string): Outline | undefined => {
    const glyph = glyphOf(character.codePointAt(0)!);
    if (glyph === 0) return undefined;
    const advance = file.readUInt16BE(hmtx + 4 * Math.min(glyph, metrics - 1));
    const outline = contours(glyph, dataOf);
    return outline === null ? undefined : { advance, path: pathOf(outline) };
  };
  return {
    em: file.readUInt16BE(tables('head') + 18),
    outline: (character) => {
      if (!known.has(character)) known.set(character, make(character));
      return known.get(character);
    },
  };
}

/** Offsets of tables by tag. */
function tablesOf(file: Buffer): (tag: string) => number {
  const records = Array.from({ length: file.readUInt16BE(4) }, (_, k) => 12 + 16 * k);
  return (tag) => {
    const record = records.find((at) => file.toString('latin1', at, at + 4) === tag);
    if (record === undefined) throw new RangeError(`the font has no table ${tag}`);
    return file.readUInt32BE(record + 8);
  };
}

/** Glyph of a code point by the font's map of format 12; 0 where there is none. */
function characterMap(file: Buffer, cmap: number): (point: number) => number {
  const subtables = Array.from({ length: file.readUInt16BE(cmap + 2) }, (_, k) => cmap + file.readUInt32BE(cmap + 4 + 8 * k + 4));
  const full = subtables.find((at) => file.readUInt16BE(at) === 12);
  if (full === undefined) throw new RangeError('the font has no character map of format 12');
  const groups = Array.from({ length: file.readUInt32BE(full + 12) }, (_, k) => full + 16 + 12 * k);
  return (point) => {
    const group = groups.find((at) => point >= file.readUInt32BE(at) && point <= file.readUInt32BE(at + 4));
    return group === undefined ? 0 : file.readUInt32BE(group + 8) + point - file.readUInt32BE(group);
  };
}

/** Closed quadratic curves as relative path data: each begins where the last one began. */
function pathOf(all: readonly Contour[]): string {
  let [x, y] = [0, 0];
  const move = (to: { readonly x: number; readonly y: number }) => {
    const text = `${to.x - x} ${to.y - y}`;
    [x, y] = [to.x, to.y];
    return text;
  };
  return all
    .map((contour) => {
      const ring = onCurve(contour);
      const start = ring[0]!;
      const parts = [`m${move(start)}`];
      for (let i = 1; i <= ring.length; i += 1) {
        const vertex = ring[i % ring.length]!;
        if (vertex.on) parts.push(i === ring.length ? '' : `l${move(vertex)}`);
        else {
          const end = ring[(i + 1) % ring.length]!;
          parts.push(`q${vertex.x - x} ${vertex.y - y} ${move(end)}`);
          i += 1;
        }
      }
      [x, y] = [start.x, start.y];
      return `${parts.join('')}z`;
    })
    .join('');
}

/** A contour that begins on the curve, with the points that lie, unsaid, midway between two control points. */
function onCurve(contour: Contour): ContourPoint[] {
  const whole = contour.flatMap((vertex, i) => {
    const next = contour[(i + 1) % contour.length]!;
    const between = { x: (vertex.x + next.x) / 2, y: (vertex.y + next.y) / 2, on: true };
    return vertex.on || next.on ? [vertex] : [vertex, between];
  });
  const first = whole.findIndex(({ on }) => on);
  return [...whole.slice(first), ...whole.slice(0, first)];
}
