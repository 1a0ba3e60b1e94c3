/** Draws the pictures of a script, from what stage 1 computed of it: the numbers and plots of its page. */

import { relative, sep } from 'node:path';
import { compute } from '../../compute/compute.ts';
import type { StillsModel } from '../../compute/models/stills.ts';
import { mending } from '../../compute/project/mending.ts';
import type { Manifest } from '../../compute/results.ts';
import { openStore } from '../../compute/store/store.ts';
import { counted, listed } from '../../figures/in-words.ts';
import { hasErrors, report } from '../../print/report.ts';
import { notUnderstood } from '../command-line.ts';
import { findContent } from '../find-content.ts';
import type { Printer } from '../publish/publish-note.ts';
import { clear, pictureFolder, replace } from './folder.ts';
import { inTheWay } from './in-the-way.ts';
import { keepOthers } from './keep.ts';
import { writeList } from './list.ts';
import { readOptions, type StillsOptions } from './options.ts';
import { type Pictures, picturesOf } from './pictures.ts';
import { sizeName, writePictures, writeTexts } from './write-pictures.ts';

const USAGE = `npm run stills -- content/scripts/x.md                  all looks, both sizes
npm run stills -- content/scripts/x.md --look dark      one look
npm run stills -- content/scripts/x.md --width 1920     one size
`;

interface Computed extends Pictures {
  readonly manifest: Manifest;
  readonly model: StillsModel | undefined;
}

/** Runs the command; the exit code. */
export async function makeStills(root: string, args: readonly string[], printer: Printer): Promise<0 | 1 | 2> {
  const refuse = (text: string): 1 => {
    printer.err(`${text}\n`);
    return 1;
  };
  const options = readOptions(args);
  if (typeof options === 'string') return notUnderstood(printer, options, USAGE);
  const found = findContent(root, options.file, ['scripts'], 'script');
  if ('refused' in found) return refuse(found.refused);
  const id = found.file.slice('content/scripts/'.length, -'.md'.length);
  const { manifest, model, pictures, problems } = await mending(root, () => computed(root, found.file, id));
  const errors = model === undefined ? manifest.problems : inTheWay(manifest.problems, [found.file, ...model.speaksFor]);
  if (hasErrors(errors) || model === undefined)
    return refuse(`${report(root, errors)}No picture of ${found.file} is drawn: mend the errors first`);
  printer.err(report(root, problems));
  if (model.foot.address === '')
    printer.err('The pictures have no address. To add it, set `site` in astro.config.mjs to where readers find the site.\n');
  const folder = pictureFolder(root, id);
  try {
    const places = { folder: folder.next, before: folder.target };
    const { list, drawn } = await writePictures(pictures, options, places, progress(printer));
    const ours = { ...list, ...writeTexts(model.texts, folder.next) };
    writeList(folder.next, keepOthers(ours, options, places));
    await replace(folder);
    printer.out(
      text(relative(root, folder.target).split(sep).join('/'), options, {
        pictures: pictures.length,
        files: Object.keys(list).length,
        drawn,
        texts: model.texts.map(([name]) => name),
      }),
    );
  } finally {
    clear(folder);
  }
  return 0;
}

/** Drafts too: a video is made before its script is published. */
async function computed(root: string, file: string, id: string): Promise<Computed> {
  const manifest = await compute(root, 'all');
  const store = openStore(root);
  const read = (blob: string) => new TextDecoder().decode(store.bytes(blob));
  const blob = manifest.stills[id];
  if (blob === undefined) return { manifest, model: undefined, pictures: [], problems: [] };
  const model = JSON.parse(read(blob)) as StillsModel;
  return { manifest, model, ...picturesOf(model, file, read) };
}

/** A line now and then, since a picture of four thousand pixels takes its time. */
function progress({ err }: Printer): (done: number, all: number) => void {
  let told = 0;
  return (done, all) => {
    const tenth = Math.floor((10 * done) / all);
    if (tenth > told && all > 10) err(`${done} of ${all} drawn\n`);
    told = tenth;
  };
}

interface Done {
  readonly pictures: number;
  readonly files: number;
  readonly drawn: number;
  /** Names of the files of text. */
  readonly texts: readonly string[];
}

function text(folder: string, { looks, widths }: StillsOptions, { pictures, files, drawn, texts }: Done): string {
  const forms = listed(['SVG', ...widths.map(sizeName)]);
  const others = drawn === files ? '' : ', the others are as they were';
  return `${folder}/ has ${counted(pictures, 'picture')} as ${forms}: ${listed(looks.map(({ name }) => name))}.
${drawn} of ${counted(files, 'file')} ${drawn === 1 ? 'was' : 'were'} drawn anew${others}.
Beside them: ${listed(texts)}.\n`;
}
