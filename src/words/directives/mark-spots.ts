/** Photographs that a run of the note declares with its surface readings: their spots are marked by numbers, with a table of their temperatures below. */
import type { Root } from 'mdast';
import { visit } from 'unist-util-visit';
import type { ImagePoint } from '../../figures/surface/in-image.ts';
import { error, type Place } from '../../problem.ts';
import { freeId } from '../page/fragment.ts';
import { type FigureNode, isFigure } from '../page/picture-nodes.ts';
import type { Writing } from '../page/writing.ts';
import { spotsTable } from './place-table.ts';

/** Marks the spots of a tree's pictures, which have their places already. */
export function markSpots(writing: Writing, tree: Root): void {
  visit(tree, 'blockquote', (node) => {
    if (!isFigure(node)) return;
    const number = Number(node.children[0]?.data?.hProperties?.dataPicture ?? Number.NaN);
    const request = writing.pictures[number];
    if (request === undefined || request.path === '') return;
    const marks = marked(writing, node, request.path, request.place);
    if (marks.length > 0) writing.pictures[number] = { ...request, marks };
  });
}

/** Where spots lie in a picture; none where no run declares it, or after reporting what is wrong. */
function marked(writing: Writing, figure: FigureNode, path: string, place: Place): ImagePoint[] {
  const runs = [...writing.subjects].flatMap(([alias, { id: run, photographs }]) => {
    const spots = photographs?.get(path);
    return spots === undefined ? [] : [{ alias, run, spots }];
  });
  const places = new Map<string, ImagePoint>();
  for (const { alias, spots } of runs) {
    for (const { spot, at } of spots) {
      const before = places.get(spot) ?? at;
      places.set(spot, before);
      if (before.x === at.x && before.y === at.y) continue;
      const found = `the photograph data/${path}, in which \`${alias}\` has \`${spot}\` at another place than a run before it`;
      const remedy = 'state `photographs` once, in the setup that both runs name';
      writing.problems.push(error('picture-spots', place, found, { remedy }));
      return [];
    }
  }
  if (places.size === 0) return [];
  const id = freeId(`${figure.data.hProperties?.id}-spots`, writing.ids);
  const table = spotsTable(writing, { id, runs, spots: [...places.keys()], place });
  if (table === null) return [];
  writing.ids.add(id);
  figure.children.splice(1, 0, { type: 'paragraph', children: [], data: table });
  return [...places.values()];
}
