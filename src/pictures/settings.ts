/** What is made of a picture. */

/** Widths in pixels for narrow and wide windows, and for fine screens. */
export const WIDTHS: readonly number[] = [480, 960, 1600];

/** The width for browsers and readers of feeds that read no WebP. */
export const FALLBACK_WIDTH = 960;

/** Qualities of lossy files; the whole picture is kept better, since the others are made from it. */
export const QUALITY = { whole: 90, jpeg: 82, webp: 80 } as const;

/** Limits: more is no photograph of a bench, and would fill the memory. */
export const LIMITS = { bytes: 64 * 2 ** 20, pixels: 64e6, least: 16, side: 16_000, seconds: 120 } as const;
