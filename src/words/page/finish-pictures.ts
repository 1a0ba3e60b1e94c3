/** Last step of pictures on the page's tree: their places become marks, their alternative texts become plain words. */
import type { Element, Root, RootContent } from 'hast';
import { visit } from 'unist-util-visit';
import type { PictureRequest } from '../written.ts';
import { draftOf, pictureMark, textOf } from './page-node.ts';

/**
 * The pictures with their alternative texts as they print. The words of an alternative text stay on the page where they hold numbers, since
 * an attribute has no room for what holds them.
 */
export function finishPictures(page: Root, pictures: readonly PictureRequest[]): PictureRequest[] {
  const finished = [...pictures];
  visit(page, 'element', (node: Element) => {
    const seen = node.tagName === 'figure' ? node.children.find((child) => numberOf(child) !== undefined) : undefined;
    if (!seen) return;
    const number = numberOf(seen)!;
    const words = node.children.find((child) => hasClass(child, 'described'));
    if (words)
      finished[number] = {
        ...pictures[number]!,
        alt: textOf(words)
          .replaceAll(/[ \t\r\n]+/g, ' ')
          .trim(),
      };
    node.children = node.children.flatMap((child) => {
      if (child === seen) return [pictureMark(number)];
      return child === words && !holdsNumber(child) ? [] : [child];
    });
  });
  return finished;
}

function numberOf(node: RootContent): number | undefined {
  const number = node.type === 'element' ? node.properties.dataPicture : undefined;
  return typeof number === 'string' ? Number(number) : undefined;
}

function hasClass(node: RootContent, name: string): node is Element {
  const classes = node.type === 'element' ? node.properties.className : undefined;
  return Array.isArray(classes) && classes.includes(name);
}

function holdsNumber(words: Element): boolean {
  let found = false;
  visit(words, 'element', (node: Element) => {
    found ||= draftOf(node) !== undefined;
  });
  return found;
}
