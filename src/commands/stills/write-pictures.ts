/** Pictures → files: SVG with outlines for letters, PNG in two sizes, each in every look. What an earlier run drew of the same is taken from there. */
import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { dirname, join } from 'node:path';
import type { StillsModel } from '../../compute/models/stills.ts';
import { digest, digestOf } from '../../compute/store/digest.ts';
import { outlined, pngOfWidth } from '../../plots/drawing/png.ts';
import { escaped } from '../../plots/drawing/svg.ts';
import { compose } from '../../plots/stills/compose.ts';
import { STILL, WIDTH } from '../../plots/stills/format.ts';
import type { Look } from '../../plots/stills/looks.ts';
import type { StillsOptions } from './options.ts';
import type { NamedPicture } from './pictures.ts';

/** Widths of the PNG, px. */
export const WIDTHS = [1920, 3840] as const;

/** Lists what each file was drawn from, and its own digest. */
const LIST = 'drawn-from.json';

type Drawn = Readonly<Record<string, { readonly from: string; readonly sha256: string }>>;

/** "1920x1080". */
export function sizeName(width: number): string {
  return `${width}x${(width * STILL.height) / WIDTH}`;
}

/** Writes the texts that go with the video beside its pictures. */
export function writeTexts(texts: StillsModel['texts'], folder: string): void {
  for (const [name, text] of texts) writeFileSync(join(folder, name), text);
}

/** Writes all files into `folder`; unchanged ones are copied from `before`. Gives how many files there are and how many had to be drawn. */
export async function writePictures(
  pictures: readonly NamedPicture[],
  { looks, widths }: Pick<StillsOptions, 'looks' | 'widths'>,
  { folder, before }: { readonly folder: string; readonly before: string },
  told: (done: number, all: number) => void,
): Promise<{ readonly files: number; readonly drawn: number }> {
  const last = listIn(before);
  const list: Record<string, Drawn[string]> = {};
  let [drawn, done] = [0, 0];
  const whole = async (path: string, from: string, make: () => Promise<Uint8Array | string>): Promise<void> => {
    const [to, old] = [join(folder, path), join(before, path)];
    mkdirSync(dirname(to), { recursive: true });
    const known = last[path];
    if (known?.from === from && digestAt(old) === known.sha256) copyFileSync(old, to);
    else {
      writeFileSync(to, await make());
      drawn += 1;
    }
    list[path] = { from, sha256: digestAt(to)! };
  };
  const one = async (picture: NamedPicture, look: Look): Promise<void> => {
    const svg = described(outlined(compose(picture, STILL, look), WIDTHS[0]), picture);
    await whole(`svg/${look.name}/${picture.name}.svg`, digest(svg), async () => svg);
    for (const width of widths) {
      const path = `${sizeName(width)}/${look.name}/${picture.name}.png`;
      await whole(path, digestOf([width, svg]), () => pngOfWidth(svg, width));
    }
  };
  const tasks = pictures.flatMap((picture) => looks.map((look) => () => one(picture, look)));
  const next = async (): Promise<void> => {
    for (let task = tasks.shift(); task !== undefined; task = tasks.shift()) {
      await task();
      done += 1;
      told(done, pictures.length * looks.length);
    }
  };
  await Promise.all(Array.from({ length: availableParallelism() }, next));
  const sorted = Object.fromEntries(Object.entries(list).sort(([a], [b]) => (a < b ? -1 : 1)));
  writeFileSync(join(folder, LIST), `${JSON.stringify(sorted, null, 1)}\n`);
  return { files: Object.keys(list).length, drawn };
}

/** An SVG of outlines says in words what it shows. */
function described(svg: string, { title, alt }: NamedPicture): string {
  const words = [...(title === '' ? [] : [`<title>${escaped(title)}</title>`]), `<desc>${escaped(alt)}</desc>`];
  return svg.replace(/^<svg\b[^>]*>/, (open) => open + words.join(''));
}

function listIn(folder: string): Drawn {
  try {
    return JSON.parse(readFileSync(join(folder, LIST), 'utf8')) as Drawn;
  } catch {
    return {};
  }
}

function digestAt(path: string): string | undefined {
  try {
    return digest(readFileSync(path));
  } catch {
    return undefined;
  }
}
