/** Last steps on the page's tree: held numbers are numbered in reading order, headings get ids, tables may scroll. */
import type { Element, Root, RootContent } from 'hast';
import { visit } from 'unist-util-visit';
import type { DraftEntry } from '../written.ts';
import { freeId } from './fragment.ts';
import { draftOf, element, plotMark, textOf } from './page-node.ts';

/** Gives every held number its number, counted from 1 over the whole page, and returns the entries in that order. */
export function numberHeld(tree: Root, drafts: readonly DraftEntry[]): DraftEntry[] {
  const entries: DraftEntry[] = [];
  visit(tree, 'element', (node: Element) => {
    const draft = draftOf(node);
    if (draft === undefined) return;
    entries.push(drafts[draft] as DraftEntry);
    node.properties = { className: ['held'], dataN: String(entries.length) };
  });
  return entries;
}

const HEADING = /^h[1-6]$/;

/**
 * Gives headings ids made of their words. Held numbers are left out of an id, so that it stays when the data changes; ids that
 * the page uses itself (a held number's, a plot's) are taken from the start.
 */
export function nameHeadings(tree: Root, taken: Iterable<string>): void {
  const ids = new Set(taken);
  visit(tree, 'element', (node: Element) => {
    if (!HEADING.test(node.tagName) || node.properties.id === 'footnote-label') return;
    const id = freeId(slug(node), ids);
    ids.add(id);
    node.properties = { id, ...node.properties };
  });
}

/** Ids that pages have of their own. */
const TAKEN =
  /^(note-fn.*|footnote-label|held-tip|main|held-notes|reproduce|disclosure|corrections|figures|data-files|log|notes|scripts|devices|(specimen|figure|plot|picture|attempts)-.*)$/;

function slug(heading: Element): string {
  const words = withoutHeld(heading).toLowerCase().normalize('NFC');
  const joined = words.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, '');
  if (joined === '') return 'section';
  return TAKEN.test(joined) ? `section-${joined}` : joined;
}

function withoutHeld(node: Element): string {
  return node.children
    .map((child) => (child.type === 'element' ? (child.properties.dataN === undefined ? withoutHeld(child) : '') : textOf(child)))
    .join('');
}

/** Puts ordinary tables into a region that scrolls and can be reached by keyboard, as long code can. Every such region gets a label of its own. */
export function wrapTables(tree: Root): void {
  const seen = new Map<string, number>();
  visit(tree, 'element', (node: Element, index, parent) => {
    // Code wider than the window scrolls by itself, and is reached by keyboard too.
    if (node.tagName === 'pre') node.properties = { tabIndex: 0, ...node.properties };
    if (isScroll(node)) node.properties.ariaLabel = toldApart(String(node.properties.ariaLabel), seen);
    if (node.tagName !== 'table' || !parent || index === undefined || isScroll(parent)) return;
    const heads = collect(node, 'th').map((cell) => textOf(cell).trim());
    for (const cell of collect(node, 'th')) cell.properties = { scope: 'col', ...cell.properties };
    const label = `Table: ${heads.filter((head) => head !== '').join(', ')}`;
    (parent.children as RootContent[])[index] = scrollRegion(toldApart(label, seen), node);
  });
}

/** Regions of a page are told apart by their labels: the second of the same label has its number behind it. */
function toldApart(label: string, seen: Map<string, number>): string {
  const count = (seen.get(label) ?? 0) + 1;
  seen.set(label, count);
  return count === 1 ? label : `${label} (${count})`;
}

/** The region around a wide table. */
export function scrollRegion(label: string, table: Element): Element {
  return element('div', { className: ['scroll'], tabIndex: 0, role: 'region', ariaLabel: label }, [table]);
}

function isScroll(parent: { readonly type: string }): boolean {
  const classes = parent.type === 'element' ? (parent as Element).properties.className : undefined;
  return Array.isArray(classes) && classes.includes('scroll');
}

function collect(node: Element, tagName: string): Element[] {
  const found: Element[] = [];
  visit(node, 'element', (child: Element) => {
    if (child.tagName === tagName) found.push(child);
  });
  return found;
}

/** Turns the elements that stand for plots into the marks at which the page is split. */
export function markPlots(tree: Root): void {
  visit(tree, 'element', (node: Element, index, parent) => {
    const plot = node.properties.dataPlot;
    if (typeof plot === 'string' && parent && index !== undefined)
      (parent.children as RootContent[])[index] = plotMark(Number(plot));
  });
}
