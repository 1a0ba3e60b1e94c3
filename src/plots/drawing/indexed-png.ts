/** A PNG of palette colours as a data address, for drawings that lay numbers out as an image. */

/**
 * `pixels` are places in `colours`, row by row. The data are stored and not compressed, so that the bytes hang on no library.
 * Source: W3C PNG (Third Edition), 5 and 11; RFC 1950 and RFC 1951, 3.2.4.
 */
export function indexedPng(
  width: number,
  height: number,
  pixels: Uint8Array,
  colours: readonly (readonly [number, number, number])[],
): string {
  const head = [...big(width), ...big(height), 8, 3, 0, 0, 0];
  const rows = new Uint8Array(height * (width + 1));
  for (let row = 0; row < height; row += 1) rows.set(pixels.subarray(row * width, (row + 1) * width), row * (width + 1) + 1);
  const parts = [
    [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
    chunk('IHDR', head),
    chunk('PLTE', colours.flat()),
    chunk('IDAT', stored(rows)),
    chunk('IEND', []),
  ];
  return `data:image/png;base64,${base64(parts.flat())}`;
}

/** Four bytes, the highest first. */
function big(value: number): number[] {
  return [value >>> 24, (value >>> 16) & 255, (value >>> 8) & 255, value & 255];
}

function chunk(name: string, content: readonly number[]): number[] {
  const body = [...Array.from(name, (letter) => letter.charCodeAt(0)), ...content];
  return [...big(content.length), ...body, ...big(crc(body))];
}

const BLOCK = 65_535;

function stored(bytes: Uint8Array): number[] {
  const out = [0x78, 0x01];
  for (let at = 0; at < bytes.length; at += BLOCK) {
    const part = bytes.subarray(at, at + BLOCK);
    const [low, high] = [part.length & 255, part.length >>> 8];
    out.push(at + BLOCK >= bytes.length ? 1 : 0, low, high, ~low & 255, ~high & 255, ...Array.from(part));
  }
  return [...out, ...big(adler(bytes))];
}

function crc(bytes: readonly number[]): number {
  let value = 0xffffffff;
  for (const byte of bytes) {
    value ^= byte;
    for (let bit = 0; bit < 8; bit += 1) value = (value >>> 1) ^ (value & 1 ? 0xedb88320 : 0);
  }
  return ~value >>> 0;
}

function adler(bytes: Uint8Array): number {
  let [a, b] = [1, 0];
  for (const byte of bytes) {
    a = (a + byte) % 65_521;
    b = (b + a) % 65_521;
  }
  return ((b << 16) | a) >>> 0;
}

function base64(bytes: readonly number[]): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 8190) text += String.fromCharCode(...bytes.slice(at, at + 8190));
  return btoa(text);
}
