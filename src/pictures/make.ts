/** The front door, and the one door to sharp: bytes of an author's picture → pictures that hold nothing else. */
import sharp, { type Sharp } from 'sharp';
import { judge, judgeSize, type PictureFault } from './judge.ts';
import { KINDS, type Kind } from './kind.ts';
import { leftovers } from './leftovers.ts';
import { isOfTheMoment } from './moment.ts';
import { FALLBACK_WIDTH, LIMITS, QUALITY, WIDTHS } from './settings.ts';

/** A finished file. */
export interface MadeFile {
  readonly width: number;
  readonly height: number;
  readonly kind: Kind;
  readonly bytes: Uint8Array;
}

export interface MadePicture {
  /** Upright, in its own size and kind. */
  readonly whole: MadeFile;
  /** WebP, narrowest first. */
  readonly widths: readonly MadeFile[];
  /** JPEG, or PNG where the picture is a PNG or lets the page show through. */
  readonly fallback: MadeFile;
}

// One thread: the bytes of AVIF hang on the number of threads, and memory grows with it. No cache: nothing is decoded twice in a build.
sharp.concurrency(1);
sharp.cache(false);
sharp.block({ operation: ['VipsForeignLoad'] });
sharp.unblock({
  operation: ['VipsForeignLoadJpegBuffer', 'VipsForeignLoadPngBuffer', 'VipsForeignLoadWebpBuffer', 'VipsForeignLoadHeifBuffer'],
});

/**
 * Decodes, turns upright by its orientation, converts to sRGB, strips and scales. `path` names the file; `finished` says that the bytes are a
 * whole picture that was made here before, and go out as they are. Throws what says nothing of the file: a fault of ours, or of the moment.
 */
export async function makePicture(path: string, bytes: Uint8Array, finished = false): Promise<MadePicture | PictureFault> {
  const kind = judge(path, bytes);
  if (typeof kind === 'object') return kind;
  const picture = await decoded(kind, bytes, finished);
  return 'rule' in picture ? picture : held(picture);
}

async function decoded(kind: Kind, bytes: Uint8Array, finished: boolean): Promise<MadePicture | PictureFault> {
  try {
    // Of the header alone, so that any size can be told.
    const { width, height } = await sharp(bytes, { limitInputPixels: false }).metadata();
    const wrong = judgeSize(width, height);
    if (wrong) return wrong;
    const whole = finished ? { width, height, kind, bytes } : await made(await upright(bytes), kind, QUALITY.whole);
    const widths: MadeFile[] = [];
    for (const wanted of widthsFor(whole.width))
      widths.push(await made(scaled(whole, wanted), 'webp', QUALITY.webp, kind === 'png'));
    const { hasAlpha } = await reader(whole.bytes).metadata();
    const plain = kind === 'png' || hasAlpha ? 'png' : 'jpeg';
    const fallback = await made(scaled(whole, Math.min(FALLBACK_WIDTH, whole.width)), plain, QUALITY.jpeg);
    return { whole, widths, fallback };
  } catch (thrown) {
    if (isOfTheMoment(thrown)) throw thrown;
    const { name } = KINDS[kind];
    return { rule: 'picture-broken', found: `is ${name} that cannot be decoded (${reasonOf(thrown)})`, remedy: 'export it again' };
  }
}

/** Limits hold before anything is decoded. Pixels that cannot be read are an error, not a grey stretch. */
function reader(bytes: Uint8Array): Sharp {
  return sharp(bytes, { limitInputPixels: LIMITS.pixels, failOn: 'error', pages: 1 }).timeout({ seconds: LIMITS.seconds });
}

/** The picture as it is to be seen. Where nothing shows there is no colour either: what an author has rubbed out may still lie below. */
async function upright(bytes: Uint8Array): Promise<Sharp> {
  const from = reader(bytes).autoOrient();
  if (!(await reader(bytes).metadata()).hasAlpha) return from;
  const { data, info } = await from.toColourspace('srgb').ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  for (let at = 0; at < data.length; at += 4) if (data[at + 3] === 0) data.fill(0, at, at + 3);
  return sharp(data, { raw: { width: info.width, height: info.height, channels: info.channels } });
}

function scaled({ bytes }: MadeFile, width: number): Sharp {
  return reader(bytes).resize({ width });
}

/** Widths below the picture's own, and its own where the largest would enlarge it. */
function widthsFor(own: number): number[] {
  const below = WIDTHS.filter((width) => width < own);
  return below.length < WIDTHS.length ? [...below, own] : below;
}

async function made(from: Sharp, kind: Kind, quality: number, lossless = false): Promise<MadeFile> {
  const { data, info } = await encoded(from.toColourspace('srgb'), kind, quality, lossless).toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, kind, bytes: data };
}

/** The whole picture is seldom fetched: a twentieth of its size is worth less than half of the time that it takes. */
function encoded(from: Sharp, kind: Kind, quality: number, lossless: boolean): Sharp {
  if (kind === 'jpeg') return from.jpeg({ quality, optimiseCoding: quality !== QUALITY.whole });
  if (kind === 'png') return from.png({ compressionLevel: 9 });
  return kind === 'webp' ? from.webp({ quality, lossless }) : from.avif({ quality, effort: 2 });
}

/** Throws where a finished file holds more than its picture: it would be a fault of ours, and nothing may go out. */
function held(picture: MadePicture): MadePicture {
  for (const { kind, bytes } of [picture.whole, ...picture.widths, picture.fallback]) {
    const left = leftovers(kind, bytes);
    if (left.length > 0) throw new Error(`more than the picture is in it: ${left.join(', ')}`);
  }
  return picture;
}

/** The decoder's own first line, without the name of what it called. */
function reasonOf(thrown: unknown): string {
  const [line = ''] = (thrown instanceof Error ? thrown.message : String(thrown)).trim().split('\n');
  return line.replace(/^\w+: /, '').slice(0, 120);
}
