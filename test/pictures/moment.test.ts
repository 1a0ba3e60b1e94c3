import { describe, expect, it } from 'vitest';
import { isOfTheMoment } from '../../src/pictures/moment.ts';

describe('pictures/moment', () => {
  // What sharp and libvips say, from memory of their sources.
  it.each([
    'timeout: 37% complete',
    'vips_tracked: out of memory --- size == 36MB',
    'VipsJpeg: Insufficient memory (case 4)',
    'std::bad_alloc',
    'unable to allocate 36000000 bytes',
  ])('knows %j as a fault of time or memory', (text) => {
    expect(isOfTheMoment(new Error(text))).toBe(true);
  });

  it.each([
    'VipsJpeg: premature end of JPEG image',
    'pngload_buffer: libspng read error',
    'Input buffer contains unsupported image format',
  ])('takes %j for the file’s own', (text) => {
    expect(isOfTheMoment(new Error(text))).toBe(false);
  });
});
