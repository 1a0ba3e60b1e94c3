import sharp from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import { leftovers } from '../../src/pictures/leftovers.ts';
import { type MadePicture, makePicture } from '../../src/pictures/make.ts';
import { type Hostile, hostileFiles } from './hostile.ts';
import { IPTC_BLOCK, NAMES, phoneJpeg, SECRETS, scene } from './phone.ts';

async function made(path: string, bytes: Uint8Array, finished = false): Promise<MadePicture> {
  const picture = await makePicture(path, bytes, finished);
  if ('rule' in picture) throw new Error(`${path} ${picture.found}`);
  return picture;
}

const filesOf = ({ whole, widths, fallback }: MadePicture) => [whole, ...widths, fallback];

/** Colour at a place given as shares of width and height. */
async function colourAt(bytes: Uint8Array, x: number, y: number): Promise<number[]> {
  const { data, info } = await sharp(bytes).removeAlpha().toColourspace('srgb').raw().toBuffer({ resolveWithObject: true });
  const at = info.channels * (Math.floor(y * info.height) * info.width + Math.floor(x * info.width));
  return [...data.subarray(at, at + 3)];
}

describe('pictures/make', () => {
  let phone: Buffer;
  beforeAll(async () => {
    phone = await phoneJpeg();
  });

  it('takes everything out of a phone’s JPEG but the picture, in every file that it makes', async () => {
    const before = phone.toString('latin1');
    for (const word of [...SECRETS, 'Exif\0', 'ICC_PROFILE', IPTC_BLOCK]) expect(before, word).toContain(word);
    for (const path of ['a.jpg', 'a.png', 'a.webp', 'a.avif']) {
      const kind = path.slice(2) as 'jpg' | 'png' | 'webp' | 'avif';
      // Copied by a program that keeps metadata, as most do.
      const bytes = kind === 'jpg' ? phone : await sharp(phone).keepMetadata().toFormat(kind).toBuffer();
      if (kind !== 'jpg') expect(bytes.toString('latin1')).toContain('SERIAL-0451-XYZ');
      for (const file of filesOf(await made(path, bytes))) {
        const after = Buffer.from(file.bytes).toString('latin1');
        for (const word of [...SECRETS, ...NAMES]) expect(after.includes(word), `${path} ${file.kind} ${word}`).toBe(false);
        expect(leftovers(file.kind, file.bytes)).toEqual([]);
        const { exif, icc, xmp, iptc, orientation, comments } = await sharp(file.bytes).metadata();
        expect({ exif, icc, xmp, iptc, orientation, comments }).toEqual({});
      }
    }
  });

  it('turns it upright first', async () => {
    const { whole, widths, fallback } = await made('a.jpg', phone);
    expect([whole.width, whole.height]).toEqual([480, 640]);
    expect(widths.map(({ width, height }) => [width, height])).toEqual([[480, 640]]);
    // Orientation 6: the sensor's lower left corner, blue, is the upper left of what was seen.
    for (const { bytes } of [whole, ...widths, fallback]) {
      const [red = 0, green = 0, blue = 0] = await colourAt(bytes, 0.25, 0.25);
      expect(blue).toBeGreaterThan(150);
      expect(Math.max(red, green)).toBeLessThan(120);
    }
  });

  it('converts a wide colour space to sRGB', async () => {
    const red = sharp({ create: { width: 64, height: 64, channels: 3, background: { r: 200, g: 60, b: 60 } } });
    const p3 = await red.withIccProfile('p3').png().toBuffer();
    const [r = 0, g = 0, b = 0] = await colourAt((await made('a.png', p3)).whole.bytes, 0.5, 0.5);
    expect([Math.abs(r - 200), Math.abs(g - 60), Math.abs(b - 60)].every((off) => off <= 3)).toBe(true);
    const unconverted = await sharp(p3, { ignoreIcc: true }).raw().toBuffer();
    expect(200 - unconverted[0]!).toBeGreaterThan(5);
  });

  it('makes widths below its own, its own, and none that enlarges', async () => {
    const widthsAt = async (width: number) => (await made('a.jpg', await scene(width, 90))).widths.map((file) => file.width);
    expect(await widthsAt(200)).toEqual([200]);
    expect(await widthsAt(480)).toEqual([480]);
    expect(await widthsAt(1200)).toEqual([480, 960, 1200]);
    expect(await widthsAt(1601)).toEqual([480, 960, 1600]);
  });

  it('keeps what lets the page show through, without loss where the author’s file had none', async () => {
    const clear = await sharp({ create: { width: 100, height: 80, channels: 4, background: { r: 9, g: 200, b: 30, alpha: 0.4 } } })
      .png()
      .toBuffer();
    const picture = await made('a.png', clear);
    expect(filesOf(picture).map(({ kind }) => kind)).toEqual(['png', 'webp', 'png']);
    for (const { bytes } of filesOf(picture)) expect((await sharp(bytes).metadata()).hasAlpha).toBe(true);
  });

  it('gives out no colours below what cannot be seen', async () => {
    // A secret below a clear half: red on black, alpha 0; the other half is opaque green.
    const raw = Buffer.alloc(64 * 64 * 4);
    for (let at = 0; at < raw.length; at += 4) raw.set((at / 4) % 64 < 32 ? [220, 30, 40, 0] : [20, 180, 60, 255], at);
    const image = () => sharp(raw, { raw: { width: 64, height: 64, channels: 4 } });
    for (const [path, bytes] of [
      ['a.png', await image().png().toBuffer()],
      ['a.png', await image().png({ palette: true }).toBuffer()],
      ['a.webp', await image().webp({ lossless: true, exact: true }).toBuffer()],
      ['a.avif', await image().avif({ lossless: true }).toBuffer()],
    ] as const) {
      const picture = await made(path, bytes);
      for (const file of filesOf(picture)) {
        const out = await sharp(file.bytes).ensureAlpha().raw().toBuffer();
        const below = Array.from({ length: 64 }, (_, row) => [...out.subarray(256 * row + 40, 256 * row + 43)]).flat();
        expect(Math.max(...below), `${path} ${file.kind}`).toBeLessThan(file.kind === 'png' ? 1 : 30);
        const seen = 256 * 20 + 4 * 50;
        expect(out[seen + 1]! - out[seen]!, `${path} ${file.kind}`).toBeGreaterThan(130);
      }
    }
  });

  it('gives the same bytes each time, and from its own whole picture the same others', async () => {
    const first = await made('a.jpg', phone);
    const again = await made('a.jpg', phone);
    const rebuilt = await made('a.jpg', first.whole.bytes, true);
    expect(filesOf(rebuilt)).toEqual(filesOf(first));
    expect(filesOf(again)).toEqual(filesOf(first));
  });

  it('refuses each hostile file with a sentence, and throws at none', async () => {
    const files = await hostileFiles();
    expect(files.length).toBeGreaterThanOrEqual(20);
    const told = async ({ path, bytes, rule }: Hostile) => {
      const fault = await makePicture(path, bytes);
      if (!('rule' in fault)) return `${path}: passed`;
      expect(fault.remedy.length).toBeGreaterThan(5);
      return fault.rule === rule ? '' : `${path}: ${fault.rule} ${fault.found}`;
    };
    const wrong = [];
    for (const file of files) wrong.push(await told(file));
    expect(wrong.filter((text) => text !== '').join('\n')).toBe('');
  });

  it('lets no finished file out that holds more, and calls it no broken file of its author', async () => {
    const { whole } = await made('a.webp', await sharp(phone).webp().toBuffer());
    expect(leftovers('webp', whole.bytes)).toEqual([]);
    const more = Buffer.concat([whole.bytes, Buffer.from('GPS 48.1 owner=nobody')]);
    await expect(makePicture('a.webp', more, true)).rejects.toThrow('more than the picture is in it: rest');
  });

  it('sees bytes behind, between and in the boxes of each kind, and a file that is cut off', async () => {
    for (const kind of ['jpeg', 'png', 'webp', 'avif'] as const) {
      const { whole } = await made(`a.${kind}`, await sharp(phone).toFormat(kind).toBuffer());
      const told = (bytes: Uint8Array) => leftovers(whole.kind, bytes);
      expect(told(whole.bytes), kind).toEqual([]);
      expect(told(Buffer.concat([whole.bytes, Buffer.from('owner=nobody')])), kind).not.toEqual([]);
      expect(told(whole.bytes.subarray(0, -2)), kind).toContain('rest');
    }
    const { whole } = await made('a.avif', await sharp(phone).avif().toBuffer());
    const free = Buffer.from('\0\0\0\x14freeowner=nobody', 'latin1');
    expect(leftovers('avif', Buffer.concat([whole.bytes, free]))).toEqual(['free']);
    // Grown by the box at its end, as a program that adds one does.
    const inMeta = Buffer.from(whole.bytes);
    const at = inMeta.indexOf('meta') - 4;
    const size = inMeta.readUInt32BE(at);
    const grown = Buffer.concat([inMeta.subarray(0, at + size), free, inMeta.subarray(at + size)]);
    grown.writeUInt32BE(size + free.length, at);
    expect(leftovers('avif', grown)).toEqual(['free']);
  });

  it('sees what is left over in a file that was not stripped', async () => {
    expect(leftovers('jpeg', phone)).toEqual(expect.arrayContaining(['FFE1', 'FFED', 'FFE2', 'FFFE', 'rest']));
    const kept = async (kind: 'png' | 'webp' | 'avif') =>
      leftovers(kind, await sharp(phone).keepMetadata().toFormat(kind).toBuffer());
    expect(await kept('png')).toEqual(expect.arrayContaining(['eXIf', 'iCCP']));
    expect(await kept('webp')).toEqual(expect.arrayContaining(['EXIF', 'ICCP']));
    expect(await kept('avif')).toEqual(expect.arrayContaining(['Exif']));
  });
});
