/** Goes through a tree and gives each of our directives its meaning; what has none is put back as it was written. */
import type { Nodes, Parents, Root } from 'mdast';
import { SKIP, visit } from 'unist-util-visit';
import { meant, oneOf } from '../../register/values/names.ts';
import { DIRECTIVES, type DirectiveName } from '../page/directive-names.ts';
import type { PageElement } from '../page/page-node.ts';
import { report, sliceOf, spanOf, type Writing } from '../page/writing.ts';
import { claim } from './claim.ts';
import { cue } from './cue.ts';
import { addressInBraces, afterDirective, brokenOverLines } from './nearly-ours.ts';
import { placePlot } from './place-plot.ts';
import { placeTable } from './place-table.ts';
import { readDirective, type WrittenDirective } from './read-directive.ts';
import { stated } from './stated.ts';
import { unheld } from './unheld.ts';
import { value } from './value.ts';

type Directive = Extract<Nodes, { type: 'textDirective' | 'leafDirective' | 'containerDirective' }>;

/** Gives the element of a directive, or null after reporting what is wrong with it. */
type Meaning = (writing: Writing, read: WrittenDirective, node: Directive) => PageElement | null;

const MEANINGS: ReadonlyMap<string, Meaning> = new Map<string, Meaning>([
  ['value', value],
  ['stated', stated],
  ['unheld', unheld],
  ['claim', claim],
  ['plot', placePlot],
  ['table', placeTable],
  ['cue', cue],
]);

/** Replaces the directives of a tree by elements of the page. */
export function giveMeaning(writing: Writing, tree: Root): void {
  refuseInLinks(writing, tree);
  visit(tree, (directive, index, parent) => {
    if (!isDirective(directive) || !parent || index === undefined) return undefined;
    const nested = directive.name === 'cue' && parent.type !== 'root';
    const found = elementOf(writing, directive);
    if (found && nested) report(writing, nestedCue(directive));
    if (found) directive.data = { hName: found.tagName, hProperties: found.properties, ...childrenOf(found) };
    else if (directive.type === 'containerDirective') directive.data = { hName: 'div' };
    else putBack(writing, directive, parent, index);
    return directive.type === 'containerDirective' ? undefined : SKIP;
  });
}

function isDirective(node: Nodes): node is Directive {
  return node.type === 'textDirective' || node.type === 'leafDirective' || node.type === 'containerDirective';
}

/** A container keeps its own children; the others get the element's. */
function childrenOf(element: PageElement): object {
  return element.children === 'own' ? {} : { hChildren: element.children };
}

function elementOf(writing: Writing, node: Directive): PageElement | null {
  const entry = DIRECTIVES.get(node.name) as DirectiveName;
  const span = spanOf(node);
  const braced = node.type === 'textDirective' ? addressInBraces(writing.source, entry, span) : undefined;
  if (braced) return refuse(writing, braced);
  const read = readDirective(writing.source, span.start);
  if ('rule' in read) return refuse(writing, read);
  if (node.type === 'textDirective' && read.end < span.end) return refuse(writing, brokenOverLines(entry, span));
  const after = node.type === 'textDirective' ? afterDirective(writing.source, span.end, entry, span) : undefined;
  if (after) return refuse(writing, after);
  if (writing.kind === 'prose') return refuse(writing, notInProse(entry, span));
  if (!fits(writing, entry, read, span.start)) return null;
  return (MEANINGS.get(node.name) as Meaning)(writing, read, node);
}

function refuse(writing: Writing, problem: Parameters<typeof report>[1]): null {
  report(writing, problem);
  return null;
}

/** Cues cut a script into what is said before and after: within a list, a quotation or another cue there is no such place. */
function nestedCue(directive: Directive): Parameters<typeof report>[1] {
  const { start } = spanOf(directive);
  const found = 'a cue within a list, a quotation or another cue';
  return { rule: 'misplaced-directive', start, end: start + 6, found, expected: 'cues between paragraphs' };
}

function notInProse({ name }: DirectiveName, { start, end }: { start: number; end: number }): Parameters<typeof report>[1] {
  const found = `a \`${name}\` in a text that names no runs`;
  return {
    rule: 'held-number-in-prose',
    start,
    end,
    found,
    expected: 'words alone',
    remedy: 'move the sentence to a note',
  };
}

/** Whether label and attributes are those that this directive takes; what is not is reported. */
function fits(writing: Writing, entry: DirectiveName, read: WrittenDirective, start: number): boolean {
  const before = writing.problems.length;
  const span = { start, end: start + 1 + entry.name.length };
  if (entry.label && !read.label)
    report(writing, {
      rule: 'directive-label',
      ...span,
      found: `\`${entry.name}\` without words in brackets`,
      expected: `\`${entry.example}\``,
    });
  if (!entry.label && read.label) {
    report(writing, {
      rule: 'directive-label',
      ...read.label,
      found: `words in brackets after \`${entry.name}\``,
      expected: `\`${entry.example}\``,
    });
  }
  for (const attribute of read.attributes)
    if (!entry.attributes.includes(attribute.name)) reportUnknownAttribute(writing, entry, attribute);
  for (const name of entry.required) {
    if (read.attributes.some((attribute) => attribute.name === name)) continue;
    report(writing, {
      rule: 'missing-attribute',
      ...span,
      found: `\`${entry.name}\` without \`${name}\``,
      expected: `\`${entry.example}\``,
    });
  }
  return writing.problems.length === before;
}

function reportUnknownAttribute(
  writing: Writing,
  entry: DirectiveName,
  { name, start }: WrittenDirective['attributes'][number],
): void {
  const found = `unknown attribute \`${name}\` of \`${entry.name}\``;
  report(writing, {
    rule: 'unknown-attribute',
    start,
    end: start + name.length,
    found,
    expected: oneOf(entry.attributes),
    ...meant(name, entry.attributes),
  });
}

/** A link cannot stand in a link: what a value in link words links to is what holds it. */
function refuseInLinks(writing: Writing, tree: Root): void {
  visit(tree, ['link', 'linkReference'], (link: Nodes) => {
    visit(link, 'textDirective', (node: Nodes, index, parent) => {
      if (node.type !== 'textDirective' || !parent || index === undefined) return;
      const found = `a \`${node.name}\` within the words of a link`;
      report(writing, {
        rule: 'misplaced-directive',
        ...spanOf(node),
        found,
        expected: 'it beside the link',
        remedy: 'it is a link itself, to what holds it',
      });
      putBack(writing, node, parent as Parents, index);
    });
  });
}

/** The source in place of a directive that has no meaning. */
function putBack(writing: Writing, node: Directive, parent: Parents, index: number): void {
  const words = { type: 'text' as const, value: sliceOf(writing, node) };
  const siblings = parent.children as Nodes[];
  siblings[index] = node.type === 'textDirective' ? words : { type: 'paragraph', children: [words] };
}
