/** Front matter as a tree of texts, lists and mappings, each with its place. Every value is text: what it means is the schemas' business. */
import type { Place } from '../../problem.ts';

export interface TextNode {
  readonly kind: 'text';
  /** As written: `1.10` stays `1.10`. Quotes and block marks are off, outer blanks too. */
  readonly text: string;
  readonly quoted: boolean;
  readonly place: Place;
  /** Where the text itself begins: after an opening quote. */
  readonly inside: Place;
}

export interface ListNode {
  readonly kind: 'list';
  readonly items: readonly Node[];
  readonly place: Place;
}

export interface Entry {
  readonly key: string;
  readonly keyPlace: Place;
  readonly value: Node;
}

export interface MapNode {
  readonly kind: 'map';
  /** In the author's order; of two equal keys the first (the second is a problem). */
  readonly entries: ReadonlyMap<string, Entry>;
  readonly place: Place;
}

/** A key or list item without a value. */
export interface EmptyNode {
  readonly kind: 'empty';
  readonly place: Place;
}

/** Something that is reported already; readers pass over it. */
export interface RefusedNode {
  readonly kind: 'refused';
  readonly place: Place;
}

export type Node = TextNode | ListNode | MapNode | EmptyNode | RefusedNode;

export const KIND_WORDS: Readonly<Record<Node['kind'], string>> = {
  text: 'a single value',
  list: 'a list',
  map: 'a mapping',
  empty: 'nothing',
  refused: 'nothing readable',
};

/** Places of all keys and list items by dotted path: `channels.soc.column`, `instruments.0`. */
export function placesOf(root: MapNode): ReadonlyMap<string, Place> {
  const places = new Map<string, Place>();
  collect(root, '', places);
  return places;
}

function collect(node: Node, prefix: string, places: Map<string, Place>): void {
  if (node.kind === 'map') {
    for (const entry of node.entries.values()) {
      places.set(prefix + entry.key, entry.keyPlace);
      collect(entry.value, `${prefix}${entry.key}.`, places);
    }
  } else if (node.kind === 'list') {
    node.items.forEach((item, index) => {
      places.set(`${prefix}${index}`, item.place);
      collect(item, `${prefix}${index}.`, places);
    });
  }
}

/**
 * The look-up of places for one item: a path that its own file lacks is looked for in the files it inherits from, then its nearest
 * stated ancestor is taken, at last the start of its own file.
 */
export function placeFinder(file: string, ...sources: readonly ReadonlyMap<string, Place>[]): (path: string) => Place {
  return (path) => {
    for (let rest = path; rest !== ''; rest = rest.slice(0, Math.max(0, rest.lastIndexOf('.')))) {
      for (const source of sources) {
        const place = source.get(rest);
        if (place) return place;
      }
    }
    return startOf(file);
  };
}

/** The first character of a file. */
export function startOf(file: string): Place {
  return { file, line: 1, column: 1 };
}
