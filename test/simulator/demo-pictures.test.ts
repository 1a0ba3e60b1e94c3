import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { benchPicture } from './bench-picture.ts';
import { thermalImage } from './demo-image.ts';
import { BENCH } from './demo-pictures.ts';

/** In memory: what reads pictures of authors lets the decoder open no files, for all tests of a worker. */
const STORED = readFileSync(join(import.meta.dirname, '..', '..', 'data', BENCH.path));

describe('simulator/demo-pictures', () => {
  test('the bench in data/ is what the program draws today, seen small', async () => {
    const [width, height] = [60, 40];
    const drawn = benchPicture(width * 2, height * 2);
    const small = await sharp(drawn, { raw: { width: width * 2, height: height * 2, channels: 3 } })
      .resize(width, height)
      .raw()
      .toBuffer();
    const stored = await sharp(STORED).resize(width, height).removeAlpha().raw().toBuffer();
    const apart = small.reduce((sum, value, index) => sum + Math.abs(value - stored[index]!), 0) / small.length;
    expect(apart, 'run `npm run demo -- --pictures`').toBeLessThan(8);
  });

  test('the stored picture holds nothing but a picture', async () => {
    const { exif, icc, xmp, width, height } = await sharp(STORED).metadata();
    expect({ exif, icc, xmp, width, height }).toEqual({ width: BENCH.width, height: BENCH.height });
  });

  test('a thermal image is the same each time, and of its seed', () => {
    const shown = { room: 23, centre: 45, edge: 42, socket: 35 };
    expect(thermalImage(shown, 1)).toBe(thermalImage(shown, 1));
    expect(thermalImage(shown, 1)).not.toBe(thermalImage(shown, 2));
  });
});
