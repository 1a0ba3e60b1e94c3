/** Pictures: where they may stand, what they must say, which files they may name. What is right leaves a numbered place for its picture. */
import type { Image, ImageReference, Nodes, Parents, Root, Text } from 'mdast';
import { SKIP, visit } from 'unist-util-visit';
import { error } from '../../problem.ts';
import { freeId, shortDigest } from '../page/fragment.ts';
import { type FigureNode, isFigure, isSet } from '../page/picture-nodes.ts';
import { placeAt, spanOf, type Writing } from '../page/writing.ts';

/** An expected path, for messages. */
const EXPECTED = 'the path of a JPEG, PNG, WebP or AVIF file below data/, such as `larch-2/bench.jpg`';

/** Numbers the pictures of a tree, reports what is wrong with them, and leaves the words of those that cannot stand. */
export function placePictures(writing: Writing, tree: Root): void {
  visit(tree, (node: Nodes, index, parent) => {
    if (!parent || index === undefined) return undefined;
    if (isFigure(node) && writing.kind === 'prose') {
      refuseInProse(writing, node);
      (parent as Parents).children[index] = { type: 'paragraph', children: [{ type: 'text', value: node.data.picture.alt }] };
      return SKIP;
    }
    if (isFigure(node)) placeFigure(writing, node, parent as Parents);
    if (node.type === 'text') reportUnread(writing, node);
    if (node.type !== 'image' && node.type !== 'imageReference') return undefined;
    refuseImage(writing, node, parent as Parents);
    ((parent as Parents).children as Nodes[])[index] = { type: 'text', value: node.alt ?? '' };
    return SKIP;
  });
}

function refuseInProse(writing: Writing, figure: FigureNode): void {
  const more = { expected: 'words alone', remedy: 'pictures stand in notes and scripts' };
  writing.problems.push(error('image', placeAt(writing, spanOf(figure).start), 'a picture', more));
}

/** What was meant as a picture and is none to Markdown stands as text. */
function reportUnread(writing: Writing, node: Text): void {
  const { start, end } = spanOf(node);
  const found = /(?<!\\)!\[[^\]\r\n]*\]\(/.exec(writing.source.slice(start, end));
  if (!found || !node.value.includes('![')) return;
  writing.problems.push(
    error('picture-unread', placeAt(writing, start + found.index), 'a picture that Markdown does not read as one', {
      expected: '`![what is to be seen](path "caption")`',
      remedy:
        'a path with blanks stands in `<` and `>`; a caption that holds double quotes, such as those of `{is="…"}`, stands in single ones',
    }),
  );
}

function placeFigure(writing: Writing, figure: FigureNode, parent: Parents): void {
  const place = placeAt(writing, spanOf(figure).start);
  const { url, alt } = figure.data.picture;
  if (alt.trim() === '') {
    writing.problems.push(
      error('picture-text', place, 'a picture without alternative text', {
        expected: '`![what is to be seen](path)`',
        remedy: 'say between the brackets what it shows, for readers who cannot see it',
      }),
    );
  }
  const path = pathOf(url);
  if ('found' in path) {
    writing.problems.push(
      error('picture-path', place, path.found, { expected: EXPECTED, ...(path.remedy && { remedy: path.remedy }) }),
    );
  }
  const beside = isSet(parent) ? parent.children.length : 1;
  const number = writing.pictures.push({ path: 'path' in path ? path.path : '', alt, beside, place }) - 1;
  const id = freeId(`picture-${shortDigest(url)}`, writing.ids);
  writing.ids.add(id);
  figure.data.hProperties = { ...figure.data.hProperties, id };
  const [seen] = figure.children;
  seen!.data = { ...seen!.data, hProperties: { dataPicture: String(number) } };
}

interface Fault {
  readonly found: string;
  readonly remedy?: string;
}

/** The path below data/ that an address stands for, or what is wrong with it. */
function pathOf(url: string): { readonly path: string } | Fault {
  if (url === '') return { found: 'a picture without a path' };
  if (/^[A-Za-z][A-Za-z0-9+.-]*:|^\/\//.test(url)) {
    return { found: `a picture from \`${shortened(url)}\``, remedy: 'nothing is fetched from elsewhere: put the file below data/' };
  }
  const own = decoded(url);
  if (own === null)
    return { found: `the path \`${shortened(url)}\`, whose % signs stand for no character`, remedy: 'write %25 for a % sign' };
  const path = direct(own);
  if (path.startsWith('data/')) return { found: `the path \`${shortened(path)}\``, remedy: 'paths count from data/: leave it out' };
  if (path.startsWith('/') || path.includes('\\') || path.split('/').includes('..'))
    return { found: `the path \`${shortened(path)}\`, which leaves data/` };
  if (/\.svgz?$/i.test(path)) {
    return { found: 'an SVG', remedy: 'an SVG may hold scripts and addresses: export it as PNG' };
  }
  if (!/\.(?:jpe?g|png|webp|avif)$/i.test(path)) return { found: `the path \`${shortened(path)}\`` };
  return { path };
}

function decoded(url: string): string | null {
  try {
    return decodeURIComponent(url);
  } catch {
    return null;
  }
}

/** One path for one file: without steps that lead nowhere, and single slashes. */
function direct(path: string): string {
  const steps = path.split('/');
  const isStep = (step: string, index: number) => step !== '.' && (step !== '' || index === 0 || index === steps.length - 1);
  return steps.filter(isStep).join('/');
}

function shortened(text: string): string {
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}

function refuseImage(writing: Writing, node: Image | ImageReference, parent: Parents): void {
  const elsewhere = node.type === 'imageReference';
  writing.problems.push(
    error(
      'image',
      placeAt(writing, spanOf(node).start),
      elsewhere ? 'a picture whose path stands elsewhere' : 'a picture among words',
      {
        expected: 'a paragraph that holds pictures alone: `![what is to be seen](path)`',
        remedy: elsewhere ? 'write the path behind it, in parentheses' : wayOut(parent),
      },
    ),
  );
}

/** What gets a picture out of where it stands. */
function wayOut({ type }: Parents): string {
  if (type === 'link' || type === 'linkReference') return 'take it out of its link: each picture leads to its full size by itself';
  if (type === 'tableCell') return 'put it below the table, with an empty line before and after it';
  return 'put an empty line before and after it';
}
