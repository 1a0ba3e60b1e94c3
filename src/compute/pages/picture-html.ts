/** The pictures of a note in its HTML: several widths, known sizes, the whole picture one press away. */
import type { ImagePoint } from '../../figures/surface/in-image.ts';
import { withPictures } from '../../words/page/page-node.ts';
import { notePath } from '../contents/note-path.ts';
import type { ComputedNote } from '../contents/site-contents.ts';
import { sizeText } from '../data/names.ts';
import { escaped } from '../feeds/escaped.ts';
import type { FileBeside } from '../models/data-file.ts';
import type { PictureFile } from '../steps/pictures/picture-step.ts';

/** HTML with the pictures of its note. `base` is the site's; the first picture of a page is fetched at once where `atOnce`. */
export function illustrated(html: string, computed: ComputedNote, base: string, atOnce: boolean): string {
  return withPictures(html, (index) => pictureHtml(computed, index, base, atOnce && index === 0));
}

/** One that could not be made leaves nothing: its problem stops the build. */
function pictureHtml(computed: ComputedNote, index: number, base: string, atOnce: boolean): string {
  const picture = computed.pictures[index];
  if (!picture) return '';
  const { whole, widths, fallback, beside } = picture;
  const address = (file: PictureFile) => escaped(base + pathOf(computed, whole, file));
  const { alt, marks = [] } = computed.written.pictures![index]!;
  const srcset = widths.map((file) => `${address(file)} ${file.width}w`).join(', ');
  const lazy = atOnce ? '' : ' loading="lazy" decoding="async"';
  const size = `${whole.width} × ${whole.height} pixels, ${sizeText(whole.bytes)}`;
  return [
    `<a class="whole" href="${address(whole)}" title="Full size: ${size}">`,
    `<picture><source type="image/webp" srcset="${srcset}" sizes="${sizesFor(beside)}">`,
    `<img src="${address(fallback)}" width="${whole.width}" height="${whole.height}" alt="${escaped(alt)}"${lazy}></picture>`,
    marksSvg(marks),
    '</a>',
  ].join('');
}

/** The numbers of marked spots, over the picture: at the same places and of one size, however wide the picture is. */
function marksSvg(marks: readonly ImagePoint[]): string {
  if (marks.length === 0) return '';
  const share = (part: number) => `${Number((100 * part).toFixed(3))}%`;
  const drawn = marks.map(({ x, y }, index) => {
    const at = `x="${share(x)}" y="${share(y)}"`;
    return `<circle cx="${share(x)}" cy="${share(y)}" r="11"/><text ${at} dy="5">${index + 1}</text>`;
  });
  return `<svg class="marks" aria-hidden="true">${drawn.join('')}</svg>`;
}

/** The width that a picture has on the page, as the style sheet lays it out: `beside` others, or alone. */
function sizesFor(beside: number): string {
  const block = beside > 1 ? `${Math.round(54 / beside)}rem` : '38rem';
  return `(max-width: 44rem) 100vw, ${block}`;
}

/** The files of all pictures of a note, each once. */
export function pictureFiles(computed: ComputedNote): FileBeside[] {
  const files = computed.pictures.flatMap((picture) => {
    if (!picture) return [];
    const { whole, widths, fallback } = picture;
    return [whole, ...widths, fallback].map((file) => ({ path: pathOf(computed, whole, file), blob: file.blob }));
  });
  return [...new Map(files.map((file) => [file.path, file])).values()];
}

/** So many letters of a digest tell pictures apart. */
const LETTERS = 16;

/** The name is of the published picture, and says nothing of its author's file. */
function pathOf(computed: ComputedNote, whole: PictureFile, file: PictureFile): string {
  const width = file === whole ? '' : `-${file.width}`;
  return `${notePath(computed)}pictures/${whole.blob.slice(0, LETTERS)}${width}.${file.ending}`;
}
