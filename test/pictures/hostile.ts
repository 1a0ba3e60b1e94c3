/** Files that no page may show, each with the rule that refuses it. */
import { crc32, deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { scene } from './phone.ts';

export interface Hostile {
  readonly path: string;
  readonly bytes: Uint8Array;
  readonly rule: string;
}

function chunk(name: string, content: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), content]);
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(content.length);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, check]);
}

/** A PNG that says any size, of which the pixels need not be there. */
function png(width: number, height: number, data: Buffer, ...more: Buffer[]): Buffer {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 2, 0, 0, 0], 8);
  const parts = [chunk('IHDR', head), ...more, chunk('IDAT', data), chunk('IEND', Buffer.alloc(0))];
  return Buffer.concat([Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'), ...parts]);
}

/** A box of an ISO base media file that says its brands. */
function ftyp(...brands: string[]): Buffer {
  const text = Buffer.from(`ftyp${brands[0]}\0\0\0\0${brands.join('')}`, 'latin1');
  const length = Buffer.alloc(4);
  length.writeUInt32BE(text.length + 4);
  return Buffer.concat([length, text, Buffer.alloc(64)]);
}

/** So many and more. */
export async function hostileFiles(): Promise<Hostile[]> {
  const jpeg = await scene(320, 240);
  const image = sharp(jpeg);
  const [webp, avif, whole] = [await image.webp().toBuffer(), await image.avif().toBuffer(), await image.png().toBuffer()];
  const frames = Buffer.concat([Buffer.alloc(64 * 64 * 3, 90), Buffer.alloc(64 * 64 * 3, 200)]);
  const animated = await sharp(frames, { raw: { width: 64, height: 128, channels: 3, pageHeight: 64 } })
    .webp({ loop: 0, delay: [100, 100] })
    .toBuffer();
  const flat = deflateSync(Buffer.alloc(64 * (64 * 3 + 1)));
  const broken = Buffer.from(whole);
  broken.fill(0x55, 200, 400);
  const scrambled = Buffer.from(webp);
  scrambled.fill(0xaa, 30, 200);
  const of = (path: string, bytes: Uint8Array | string, rule: string): Hostile => ({
    path,
    bytes: typeof bytes === 'string' ? Buffer.from(bytes, 'latin1') : bytes,
    rule,
  });
  return [
    of('empty.jpg', '', 'picture-kind'),
    of('words.jpg', 'no picture at all, only words', 'picture-kind'),
    of('page.png', '<!doctype html><script>alert(1)</script>', 'picture-kind'),
    of(
      'drawing.png',
      '<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>',
      'picture-kind',
    ),
    of('document.jpg', '%PDF-1.7\n1 0 obj', 'picture-kind'),
    of('archive.png', 'PK\x03\x04anything', 'picture-kind'),
    of('loop.webp', 'GIF89a\x01\0\x01\0\0\0\0', 'picture-kind'),
    of('raw.jpg', 'II*\0\x08\0\0\0\0\0', 'picture-kind'),
    of('phone.jpg', ftyp('heic', 'mif1'), 'picture-kind'),
    of('film.avif', ftyp('isom', 'mp42'), 'picture-kind'),
    of('frames.avif', ftyp('avis', 'avif'), 'picture-kind'),
    of('really-png.jpg', whole, 'picture-kind'),
    of('really-jpeg.webp', jpeg, 'picture-kind'),
    of('frames.webp', animated, 'picture-animated'),
    of('frames.png', png(64, 64, flat, chunk('acTL', Buffer.from('\0\0\0\x02\0\0\0\0', 'latin1'))), 'picture-animated'),
    of('bomb.png', png(60_000, 60_000, deflateSync(Buffer.alloc(10_000_000))), 'picture-size'),
    of('long.png', png(40_000, 20, flat), 'picture-size'),
    of('dot.png', png(1, 1, deflateSync(Buffer.alloc(4))), 'picture-size'),
    of('cut.jpg', jpeg.subarray(0, Math.floor(jpeg.length / 2)), 'picture-broken'),
    of('cut.webp', webp.subarray(0, Math.floor(webp.length / 2)), 'picture-broken'),
    of('cut.avif', avif.subarray(0, Math.floor(avif.length / 2)), 'picture-broken'),
    of('scrambled.png', broken, 'picture-broken'),
    of('scrambled.webp', scrambled, 'picture-broken'),
    of('head-alone.jpg', jpeg.subarray(0, 20), 'picture-broken'),
    of('pixels-missing.png', png(64, 64, deflateSync(Buffer.alloc(20))), 'picture-broken'),
  ];
}
