/** What a file is by its first bytes, whatever its name says. */
import { boxes, latin, pngChunks, webpChunks } from './tables.ts';

export type Kind = 'jpeg' | 'png' | 'webp' | 'avif';

/** The kinds that are read, as people call them, and the endings of their names. */
export const KINDS: Readonly<Record<Kind, { readonly name: string; readonly endings: readonly string[] }>> = {
  jpeg: { name: 'a JPEG', endings: ['jpg', 'jpeg'] },
  png: { name: 'a PNG', endings: ['png'] },
  webp: { name: 'a WebP', endings: ['webp'] },
  avif: { name: 'an AVIF', endings: ['avif'] },
};

/** The kind of a picture that can be read; else what the file is, in words. */
export function kindOf(bytes: Uint8Array): Kind | { readonly other: string } {
  const start = latin(bytes, 0, 16);
  if (start.startsWith('\xff\xd8\xff')) return 'jpeg';
  if (start.startsWith('\x89PNG\r\n\x1a\n')) return 'png';
  if (start.startsWith('RIFF') && start.slice(8, 12) === 'WEBP') return 'webp';
  if (start.slice(4, 8) === 'ftyp') return fromBrands(brandsOf(bytes));
  return { other: otherName(bytes, start) };
}

/** Major and compatible brands of an ISO base media file. */
function brandsOf(bytes: Uint8Array): string[] {
  const [ftyp] = boxes(bytes.subarray(0, 4096));
  if (ftyp?.name !== 'ftyp') return [];
  const text = latin(bytes, ftyp.start, Math.min(ftyp.end, ftyp.start + 256));
  return text.match(/.{4}/gs) ?? [];
}

function fromBrands(brands: readonly string[]): Kind | { readonly other: string } {
  if (brands[0] === 'avis') return { other: 'an animated AVIF' };
  if (brands.includes('avif')) return 'avif';
  if (brands.some((brand) => /^(?:heic|heix|heim|heis|mif1)$/.test(brand))) return { other: 'a HEIC' };
  return { other: 'a video' };
}

const OTHERS: readonly (readonly [start: string, name: string])[] = [
  ['GIF8', 'a GIF'],
  ['BM', 'a BMP'],
  ['II*\0', 'a TIFF or raw photograph'],
  ['MM\0*', 'a TIFF or raw photograph'],
  ['\xff\x0a', 'a JPEG XL'],
  ['\0\0\0\x0cJXL ', 'a JPEG XL'],
  ['%PDF', 'a PDF'],
  ['PK', 'a ZIP archive'],
];

function otherName(bytes: Uint8Array, start: string): string {
  if (bytes.length === 0) return 'empty';
  const named = OTHERS.find(([known]) => start.startsWith(known));
  if (named) return named[1];
  const head = latin(bytes, 0, Math.min(bytes.length, 1024));
  if (/<svg[\s>]/i.test(head)) return 'an SVG';
  if (/<(?:!doctype|html|script)[\s>]/i.test(head)) return 'a web page';
  return 'no picture';
}

/** Whether a file shows several pictures one after the other. */
export function isAnimated(kind: Kind, bytes: Uint8Array): boolean {
  if (kind === 'png') return pngChunks(bytes).some(({ name }) => name === 'acTL');
  return kind === 'webp' && webpChunks(bytes).some(({ name }) => name === 'ANIM' || name === 'ANMF');
}
