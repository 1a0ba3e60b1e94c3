/** The one door to the schema library: which keys a mapping may have, which it must, and of what kind their values are. */
import * as v from 'valibot';
import type { Place } from '../../problem.ts';
import { KIND_WORDS, type MapNode, type Node } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';
import { exampleOf } from './examples.ts';
import { meant, oneOf } from './names.ts';
import type { Takes } from './takes.ts';

type Readable = 'text' | 'list' | 'map';

function ofKind<K extends Readable>(...kinds: readonly K[]) {
  const allowed: readonly string[] = kinds;
  const expected = kinds.map((kind) => KIND_WORDS[kind]).join(' or ');
  const schema = v.custom<Extract<Node, { kind: K }>>(
    (input) => allowed.includes((input as Node | undefined)?.kind ?? ''),
    expected,
  );
  return Object.assign(schema, { kinds });
}

export const text = ofKind('text');
export const list = ofKind('list');
export const map = ofKind('map');
export const textOrMap = ofKind('text', 'map');
export const textOrList = ofKind('text', 'list');

type OfKind = typeof text | typeof list | typeof map | typeof textOrMap | typeof textOrList;
/** A key as it must be declared: with what it says, for the reference and for editors. */
type Described = v.SchemaWithPipe<
  readonly [OfKind, v.DescriptionAction<Node, string>, v.MetadataAction<Node, { readonly takes: Takes }>]
>;
type Entries = Readonly<Record<string, Described | v.OptionalSchema<Described, undefined>>>;

/** A key that must be there. `about` says what it tells, in a clause that readers of the reference see. */
export function required<S extends OfKind>(schema: S, about: string, takes: Takes) {
  return v.pipe(schema, v.description(about), v.metadata({ takes }));
}

/** A key that may be left out. */
export function optional<S extends OfKind>(schema: S, about: string, takes: Takes) {
  return v.optional(required(schema, about, takes));
}

/** A mapping with these keys and no others. */
export function shape<E extends Entries>(entries: E) {
  return v.strictObject(entries);
}

/** A key of a shape, for the reference. */
export interface KeyFacts {
  readonly key: string;
  /** The key's own object: shapes that share a key have the same. */
  readonly entry: object;
  readonly required: boolean;
  readonly kinds: readonly Readable[];
  readonly about: string;
  readonly takes: Takes;
}

/** The keys of a shape, in their order. */
export function keysOf({ entries }: { readonly entries: object }): KeyFacts[] {
  return Object.entries(entries as Entries).map(([key, entry]) => {
    const described = entry.type === 'optional' ? entry.wrapped : entry;
    const [{ kinds }, { description: about }, { metadata }] = described.pipe;
    return { key, entry, required: entry.type !== 'optional', kinds, about, takes: metadata.takes };
  });
}

type AnyShape = v.StrictObjectSchema<v.ObjectEntries, undefined>;
export type ShapeOf<S extends AnyShape> = Partial<v.InferOutput<S>>;

/**
 * Reads a mapping against its shape and reports unknown keys, missing keys, empty values and values of another kind.
 * What fits is returned all the same, so that its own problems come with the others.
 *
 * @param what - the mapping in words, for messages: "a device".
 * @param place - where a missing key is reported: the mapping's own key, or the file's start.
 */
export function readShape<S extends AnyShape>(schema: S, node: MapNode, what: string, place: Place, report: Report): ShapeOf<S> {
  const known = Object.keys(schema.entries);
  const input: Record<string, Node> = {};
  for (const entry of node.entries.values()) {
    // Not the library's own check: it stops at the first unknown key and takes `constructor` for a known one.
    if (!known.includes(entry.key)) tellUnknown(entry.key, entry.keyPlace, known, what, report);
    else input[entry.key] = entry.value;
  }
  const checked = v.safeParse(schema, input);
  const output: Record<string, unknown> = { ...input };
  for (const issue of checked.issues ?? []) {
    const key = String(issue.path?.[0]?.key ?? '');
    delete output[key];
    tellIssue(key, input[key], node, place, issue.message, what, report);
  }
  return output as ShapeOf<S>;
}

function tellUnknown(key: string, place: Place, known: readonly string[], what: string, report: Report): void {
  report.error('unknown-key', place, `${what} has no key \`${key}\``, { expected: oneOf(known), ...meant(key, known) });
}

function tellIssue(
  key: string,
  value: Node | undefined,
  node: MapNode,
  place: Place,
  expected: string,
  what: string,
  report: Report,
): void {
  const example = exampleOf(key);
  const remedy = example === undefined ? {} : { remedy: `write for instance \`${example}\`` };
  if (value === undefined) report.error('missing-key', place, `${what} needs the key \`${key}\``, remedy);
  else if (value.kind === 'empty') tellEmpty(key, node.entries.get(key)!.keyPlace, report);
  else if (value.kind !== 'refused') {
    report.error('wrong-kind', value.place, `\`${key}\` is ${KIND_WORDS[value.kind]}`, { expected, ...remedy });
  }
}

/** A key without a value: never read as zero, off or unknown. */
export function tellEmpty(key: string, place: Place, report: Report): void {
  const example = exampleOf(key);
  const remedy =
    example === undefined ? 'give it a value or remove the key' : `write for instance \`${example}\`, or remove the key`;
  report.error('empty-value', place, `\`${key}\` has no value`, { remedy });
}
