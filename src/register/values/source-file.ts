/** One file of content/ on its way into the Register: its id, its front matter as a tree, its body. */
import type { Place } from '../../problem.ts';
import type { ContentFile } from '../register.ts';
import { tellEscaped } from '../yaml/escaped.ts';
import { splitFrontMatter } from '../yaml/front-matter.ts';
import { type MapNode, placeFinder, placesOf, startOf, type TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';
import { parseFrontMatter } from '../yaml/yaml.ts';
import { lineOf } from './values.ts';

export interface SourceFile {
  readonly id: string;
  readonly file: string;
  readonly root: MapNode;
  readonly body: string;
  readonly bodyLine: number;
  /** The whole file, less a byte order mark. */
  readonly text: string;
  readonly places: ReadonlyMap<string, Place>;
  readonly placeOf: (path: string) => Place;
  readonly start: Place;
}

/** Reads a file as far as it can be read without knowing what it is; undefined, with a problem, where it cannot. */
export function readSource(id: string, file: ContentFile, report: Report): SourceFile | undefined {
  const parts = splitFrontMatter(file, report);
  const root = parts && parseFrontMatter(file.path, parts.yaml, report);
  if (!parts || !root || tellEscaped(root, report)) return undefined;
  const places = placesOf(root);
  const { body, bodyLine, text } = parts;
  return {
    id,
    file: file.path,
    root,
    body,
    bodyLine,
    text,
    places,
    placeOf: placeFinder(file.path, places),
    start: startOf(file.path),
  };
}

/** What every item of the Register has. An item that failed for its title is not used, so '' stands in. */
export function itemOf(source: SourceFile, title: TextNode | undefined, report: Report) {
  const { id, file, body, bodyLine, placeOf } = source;
  return { id, file, title: lineOf(title, 'title', report) ?? '', body, bodyLine, placeOf };
}
