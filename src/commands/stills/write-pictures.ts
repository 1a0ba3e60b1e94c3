/** Pictures → files: SVG with outlines for letters, PNG in two sizes, each in every look. What an earlier run drew of the same is taken from there. */
import { copyFileSync, mkdirSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { dirname, join } from 'node:path';
import type { StillsModel } from '../../compute/models/stills.ts';
import { codeDigests } from '../../compute/store/code.ts';
import { digest, digestOf } from '../../compute/store/digest.ts';
import { outlined, pngOfWidth } from '../../plots/drawing/png.ts';
import { escaped } from '../../plots/drawing/svg.ts';
import { compose } from '../../plots/stills/compose.ts';
import { STILL, WIDTH } from '../../plots/stills/format.ts';
import type { Look } from '../../plots/stills/looks.ts';
import { type Drawn, digestAt, listIn } from './list.ts';
import type { StillsOptions } from './options.ts';
import type { NamedPicture } from './pictures.ts';

/** Widths of the PNG, px. */
export const WIDTHS = [1920, 3840] as const;

/** Where the SVG are; the PNG are in folders of their size. */
export const FOLDER_OF_SVG = 'svg';

/** "1920x1080". */
export function sizeName(width: number): string {
  return `${width}x${(width * STILL.height) / WIDTH}`;
}

/** Writes the texts that go with the video beside its pictures; the list of them. */
export function writeTexts(texts: StillsModel['texts'], folder: string): Drawn {
  const list = texts.map(([name, text]): [string, Drawn[string]] => {
    writeFileSync(join(folder, name), text);
    return [name, { from: digest(text), sha256: digest(text) }];
  });
  return Object.fromEntries(list);
}

/** Writes all files into `folder`; unchanged ones are copied from `before`. Gives the list of them and how many had to be drawn. */
export async function writePictures(
  pictures: readonly NamedPicture[],
  { looks, widths }: Pick<StillsOptions, 'looks' | 'widths'>,
  { folder, before }: { readonly folder: string; readonly before: string },
  told: (done: number, all: number) => void,
  // Pictures for links are made by the same code and packages.
  rasteriser = codeDigests().shares,
): Promise<{ readonly list: Drawn; readonly drawn: number }> {
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
    await whole(`${FOLDER_OF_SVG}/${look.name}/${picture.name}.svg`, digest(svg), async () => svg);
    for (const width of widths) {
      const path = `${sizeName(width)}/${look.name}/${picture.name}.png`;
      await whole(path, digestOf([width, svg, rasteriser]), () => pngOfWidth(svg, width));
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
  return { list, drawn };
}

/** An SVG of outlines says in words what it shows. */
function described(svg: string, { title, alt }: NamedPicture): string {
  const words = [...(title === '' ? [] : [`<title>${escaped(title)}</title>`]), `<desc>${escaped(alt)}</desc>`];
  return svg.replace(/^<svg\b[^>]*>/, (open) => open + words.join(''));
}
