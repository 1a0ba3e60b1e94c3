import { Resvg } from '@resvg/resvg-js';
import { describe, expect, test } from 'vitest';
import { indexedPng } from '../../src/plots/indexed-png.ts';

/** Pixels of a picture as another reader of PNG sees them (the one inside resvg). */
function readBack(png: Buffer, width: number, height: number): Uint8Array {
  const href = `data:image/png;base64,${png.toString('base64')}`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="${width}" height="${height}"><image width="${width}" height="${height}" image-rendering="optimizeSpeed" xlink:href="${href}"/></svg>`;
  return new Resvg(svg, { font: { loadSystemFonts: false } }).render().pixels;
}

/** Opaque pixels of a colour each. */
function pixelsOf(width: number, height: number, colour: (x: number, y: number) => readonly [number, number, number]): Uint8Array {
  return Uint8Array.from(
    Array.from({ length: width * height }, (_, i) => [...colour(i % width, Math.floor(i / width)), 255]).flat(),
  );
}

describe('plots/indexed-png', () => {
  test('another reader finds the same pixels, where there are up to 256 colours', () => {
    const pixels = pixelsOf(16, 16, (x, y) => [x * 16, y * 16, x === y ? 255 : 7]);
    expect([...readBack(indexedPng({ width: 16, height: 16, pixels }), 16, 16)]).toEqual([...pixels]);
  });

  test('of more colours the frequent ones stay, and the others are as near as their lowest bits', () => {
    const pixels = pixelsOf(64, 64, (x, y) => (y < 32 ? [253, 252, 249] : [x, y, x + y]));
    const seen = readBack(indexedPng({ width: 64, height: 64, pixels }), 64, 64);
    expect([...seen.subarray(0, 4)]).toEqual([253, 252, 249, 255]);
    expect(Math.max(...seen.map((value, i) => Math.abs(value - pixels[i]!)))).toBeLessThanOrEqual(15);
    expect(new Set(new Uint32Array(seen.buffer, seen.byteOffset, 64 * 64)).size).toBeLessThanOrEqual(256);
  });

  test('pixels that begin anywhere in their buffer are read', () => {
    const shifted = new Uint8Array(2 * 2 * 4 + 1);
    shifted.set(
      pixelsOf(2, 2, (x, y) => [x, y, 9]),
      1,
    );
    const pixels = shifted.subarray(1);
    expect([...readBack(indexedPng({ width: 2, height: 2, pixels }), 2, 2)]).toEqual([...pixels]);
  });
});
