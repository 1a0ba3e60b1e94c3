/** The demonstration's pictures, rendered: equal each time, up to what the JPEG library makes of them. */
import sharp from 'sharp';
import { benchPicture } from './bench-picture.ts';

export const BENCH = { path: 'larch-2/bench.jpg', width: 1200, height: 800 } as const;

/** Paths below data/ and their bytes. */
export async function demoPictures(): Promise<[string, Uint8Array][]> {
  const { path, width, height } = BENCH;
  const pixels = benchPicture(width, height);
  return [
    [
      path,
      await sharp(pixels, { raw: { width, height, channels: 3 } })
        .jpeg({ quality: 82 })
        .toBuffer(),
    ],
  ];
}
