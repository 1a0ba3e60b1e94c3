/** Spots and regions of a thermal image: where they are, and what the image shows there. */
import { quantile } from '../../statistics/quantile.ts';
import type { Matrix } from './matrix.ts';

/** A place in shares of width and height, from the upper left corner. */
export interface ImagePoint {
  readonly x: number;
  readonly y: number;
}

export interface ImageBox {
  readonly x: readonly [from: number, to: number];
  readonly y: readonly [from: number, to: number];
}

/** What an image shows within a box. */
export interface Region {
  readonly box: ImageBox;
  /** Readings of its pixels, °C, in the order of the image. */
  readonly values: Float64Array;
  /** Where its hottest pixel lies. */
  readonly hottest: ImagePoint;
  /** How far the hottest pixel stands out from the mean of itself and its neighbours, K. */
  readonly standsOut: number;
}

const SHARE = String.raw`(\d+(?:\.\d+)?)`;
const POINT = new RegExp(String.raw`^${SHARE}\s*% by ${SHARE}\s*%$`);
const BOX = new RegExp(String.raw`^${SHARE}\s*\.\.\s*${SHARE}\s*% by ${SHARE}\s*\.\.\s*${SHARE}\s*%$`);

/** `50 % by 40 %`: so far from the left, so far from the top. Null where it is no such place. */
export function readPoint(text: string): ImagePoint | null {
  const [, x, y] = (POINT.exec(text.trim()) ?? []).map(Number) as [unknown, number?, number?];
  return x === undefined || y === undefined || x > 100 || y > 100 ? null : { x: x / 100, y: y / 100 };
}

/** `10 .. 90 % by 20 .. 80 %`: from left to right, from top to bottom. Null where it is no such box. */
export function readBox(text: string): ImageBox | null {
  const found = BOX.exec(text.trim());
  if (!found) return null;
  const [left, right, top, bottom] = found.slice(1).map((share) => Number(share) / 100) as [number, number, number, number];
  return left < right && top < bottom && right <= 1 && bottom <= 1 ? { x: [left, right], y: [top, bottom] } : null;
}

/** Readings within a box; a pixel counts where its middle lies. Null where none does. */
export function regionOf(matrix: Matrix, box: ImageBox): Region | null {
  const { width, values } = matrix;
  const columns = pixelsIn(box.x, width);
  const rows = pixelsIn(box.y, matrix.height);
  if (columns.length === 0 || rows.length === 0) return null;
  const own: number[] = [];
  let hottest = { column: columns[0]!, row: rows[0]! };
  for (const row of rows) {
    for (const column of columns) {
      const value = values[row * width + column]!;
      own.push(value);
      if (value > values[hottest.row * width + hottest.column]!) hottest = { column, row };
    }
  }
  return {
    box,
    values: Float64Array.from(own),
    hottest: middleOf(matrix, hottest),
    standsOut: values[hottest.row * width + hottest.column]! - around(matrix, hottest),
  };
}

/** What an image shows at a place: the mean of nine pixels, since a camera spreads what it sees over about so many (common practice, no source). */
export function readingAt(matrix: Matrix, { x, y }: ImagePoint): number {
  const pixel = (share: number, count: number) => Math.min(count - 1, Math.floor(share * count));
  return around(matrix, { column: pixel(x, matrix.width), row: pixel(y, matrix.height) });
}

/** Coldest and hottest reading about a place: within a twentieth of the image, since people point at a place no better. */
export function rangeAbout(matrix: Matrix, { x, y }: ImagePoint): { readonly coldest: number; readonly hottest: number } {
  const { width, height } = matrix;
  const about = (share: number, count: number): readonly [number, number] => {
    const reach = Math.max(0.05, 1.5 / count);
    return [share - reach, share + reach];
  };
  const values = regionOf(matrix, { x: about(x, width), y: about(y, height) })!.values;
  return {
    coldest: values.reduce((least, value) => Math.min(least, value)),
    hottest: values.reduce((most, value) => Math.max(most, value)),
  };
}

/** The reading that 99 % of a region's pixels lie below (type 7). */
export function percentile99({ values }: Region): number {
  return quantile(values, 0.99);
}

interface Pixel {
  readonly column: number;
  readonly row: number;
}

function middleOf({ width, height }: Matrix, { column, row }: Pixel): ImagePoint {
  return { x: (column + 0.5) / width, y: (row + 0.5) / height };
}

/** Mean of a pixel and its neighbours, as many as there are. */
function around({ width, height, values }: Matrix, { column, row }: Pixel): number {
  let [sum, count] = [0, 0];
  for (let y = Math.max(0, row - 1); y <= Math.min(height - 1, row + 1); y += 1) {
    for (let x = Math.max(0, column - 1); x <= Math.min(width - 1, column + 1); x += 1) {
      sum += values[y * width + x]!;
      count += 1;
    }
  }
  return sum / count;
}

function pixelsIn([from, to]: readonly [number, number], count: number): number[] {
  const within = (index: number) => (index + 0.5) / count >= from && (index + 0.5) / count <= to;
  return Array.from({ length: count }, (_, index) => index).filter(within);
}
