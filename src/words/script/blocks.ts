/** The page of a script, taken apart into what is said, what is on screen, and headings. */
import type { Element, ElementContent, Root, RootContent } from 'hast';
import { toHtml } from '../page/markdown.ts';
import type { SaidPiece, ScriptBlock, ScriptPiece, ScriptTable, ScriptText, StatedCue } from './script.ts';

/** Blocks that are looked at and not spoken. */
const SHOWN = new Set(['table', 'figure', 'pre', 'hr', 'section']);
/** Inline elements that are not spoken: struck words, marks of footnotes. */
const UNSAID = new Set(['del', 'sup', 'img', 'input']);
/** Elements whose words do not run into what stands beside them. */
const APART = new Set(['p', 'li', 'ul', 'ol', 'blockquote', 'br', 'div']);

/**
 * The blocks of a page whose held numbers are numbered and whose plots are marks. `cues` has what the author states of each, in order. The page is left as it was.
 */
export function scriptBlocks(page: Root, cues: readonly StatedCue[]): ScriptText {
  const left = [...cues];
  return page.children.flatMap((node) => blockOf(node, left));
}

function blockOf(node: RootContent, cues: StatedCue[]): ScriptBlock[] {
  if (node.type === 'comment') return [{ kind: 'shown', html: htmlOf([node]), said: [], tables: [] }];
  if (node.type !== 'element') return [];
  const heading = /^h([1-6])$/.exec(node.tagName);
  if (heading) {
    const id = String(node.properties.id);
    return [{ kind: 'heading', depth: Number(heading[1]), id, html: htmlOf(node.children), said: saidOf(node.children) }];
  }
  if (isCue(node)) {
    const inside = node.children.filter((child) => !hasClass(child, 'cue-time'));
    const { line = 1, column = 1 } = node.position?.start ?? {};
    return [
      {
        kind: 'cue',
        ...(cues.shift() ?? { at: null, shows: [] }),
        line,
        column,
        html: htmlOf(inside),
        said: saidOf(inside),
        tables: tablesIn(inside),
        captions: captionsIn(inside),
      },
    ];
  }
  if (SHOWN.has(node.tagName) || hasClass(node, 'scroll') || hasClass(node, 'pictures'))
    return [{ kind: 'shown', html: htmlOf([node]), said: [], tables: tablesIn([node]) }];
  return [{ kind: 'said', html: htmlOf([node]), said: saidOf([node]) }];
}

function isCue(node: Element): boolean {
  return node.tagName === 'section' && hasClass(node, 'cue');
}

function hasClass(node: ElementContent, name: string): boolean {
  const classes = node.type === 'element' ? node.properties.className : undefined;
  return Array.isArray(classes) && classes.includes(name);
}

function heldOf(node: Element): number | undefined {
  return typeof node.properties.dataN === 'string' ? Number(node.properties.dataN) : undefined;
}

/** Where a held number goes. Markdown replaces U+0000, so no text of an author's can look like it. */
const MARK = '\0held ';

/** HTML of nodes, split at held numbers and plots. */
function htmlOf(nodes: readonly RootContent[]): ScriptPiece[] {
  const html = toHtml({ type: 'root', children: nodes.map((node) => marked(node)) }).trim();
  return html
    .split(/(<!--\0(?:held|plot) \d+-->)/)
    .filter((piece) => piece !== '')
    .map((piece) => {
      const [, kind, number] = /^<!--\0(held|plot) (\d+)-->$/.exec(piece) ?? [];
      if (kind === undefined) return piece;
      return kind === 'held' ? { held: Number(number) } : { plot: Number(number) };
    });
}

function marked(node: RootContent): RootContent {
  if (node.type !== 'element') return node;
  const held = heldOf(node);
  if (held !== undefined) return { type: 'comment', value: `${MARK}${held}` };
  return { ...node, children: node.children.map((child) => marked(child) as ElementContent) };
}

function saidOf(nodes: readonly RootContent[]): SaidPiece[] {
  const pieces: SaidPiece[] = [];
  const say = (node: RootContent): void => {
    if (node.type === 'text') pieces.push(node.value);
    if (node.type !== 'element' || UNSAID.has(node.tagName)) return;
    const held = heldOf(node);
    if (held !== undefined) pieces.push({ held });
    else if (SHOWN.has(node.tagName)) pieces.push(' ');
    else {
      for (const child of node.children) say(child);
      if (APART.has(node.tagName)) pieces.push(' ');
    }
  };
  for (const node of nodes) say(node);
  return pieces;
}

/** Elements of a name within nodes, those within one of them left out. */
function elementsIn(nodes: readonly RootContent[], ...names: readonly string[]): Element[] {
  return nodes.flatMap((node) => {
    if (node.type !== 'element') return [];
    return names.includes(node.tagName) ? [node] : elementsIn(node.children, ...names);
  });
}

function tablesIn(nodes: readonly RootContent[]): ScriptTable[] {
  return elementsIn(nodes, 'table').map(({ children }) => ({
    caption: elementsIn(children, 'caption').flatMap((caption) => saidOf(caption.children)),
    rows: elementsIn(children, 'tr').map((row) => elementsIn(row.children, 'td', 'th').map((cell) => saidOf(apart(cell.children)))),
  }));
}

/** What a cell says of its number stands behind it, with a comma. */
function apart(cell: readonly RootContent[]): RootContent[] {
  return cell.flatMap((node): RootContent[] =>
    node.type === 'element' && hasClass(node, 'detail') ? [{ type: 'text', value: ', ' }, node] : [node],
  );
}

function captionsIn(nodes: readonly RootContent[]): SaidPiece[][] {
  const words = nodes.filter((node) => node.type !== 'element' || !SHOWN.has(node.tagName));
  return elementsIn(words, 'em', 'strong').map(({ children }) => saidOf(children));
}
