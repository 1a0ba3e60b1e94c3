/**
 * Links of a table by keyboard: the Tab key stops once at the whole table, arrow keys, Home and End lead from link to link. Without scripting
 * each link is a stop of its own. Tables of held numbers stay as they are: there the Tab key leads on into a number's card.
 */

/** Fewer links than this are soon passed. */
const FEWEST = 8;

/** Makes one stop of each table within that has many links. */
export function oneStopEach(within: ParentNode): void {
  for (const table of within.querySelectorAll<HTMLTableElement>('.scroll table')) {
    const links = [...table.querySelectorAll<HTMLAnchorElement>('tbody a')];
    if (links.length >= FEWEST && table.querySelector('a.held') === null) oneStop(table, links);
  }
}

function oneStop(table: HTMLTableElement, links: readonly HTMLAnchorElement[]): void {
  const moveTo = (link: HTMLAnchorElement) => {
    for (const each of links) each.tabIndex = each === link ? 0 : -1;
  };
  moveTo(links[0]!);
  table.classList.add('by-arrows');
  table.setAttribute('aria-description', 'Arrow keys move between the links of this table.');
  table.addEventListener('focusin', ({ target }) => {
    if (target instanceof HTMLAnchorElement && links.includes(target)) moveTo(target);
  });
  table.addEventListener('keydown', (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
    const at = links.indexOf(document.activeElement as HTMLAnchorElement);
    const next = at < 0 ? undefined : links[follower(links, at, event.key)];
    if (next === undefined) return;
    event.preventDefault();
    next.focus();
  });
}

/** Which link a key leads to from another; −1 where it leads nowhere. */
function follower(links: readonly HTMLAnchorElement[], at: number, key: string): number {
  if (key === 'ArrowRight') return Math.min(at + 1, links.length - 1);
  if (key === 'ArrowLeft') return Math.max(at - 1, 0);
  if (key === 'Home') return 0;
  if (key === 'End') return links.length - 1;
  if (key === 'ArrowDown') return inNextRow(links, at, 1);
  if (key === 'ArrowUp') return inNextRow(links, at, -1);
  return -1;
}

/** The link of the nearest row that way which stands in the same column, else the row's first; where there is no such row, itself. */
function inNextRow(links: readonly HTMLAnchorElement[], at: number, step: 1 | -1): number {
  const row = rowOf(links[at]!);
  const ahead = step === 1 ? links.slice(at) : links.slice(0, at).reverse();
  const next = ahead.map(rowOf).find((each) => each !== row);
  if (next === undefined) return at;
  const there = links.filter((link) => rowOf(link) === next);
  return links.indexOf(there.find((link) => columnOf(link) === columnOf(links[at]!)) ?? there[0]!);
}

function rowOf(link: Element): Element | null {
  return link.closest('tr');
}

function columnOf(link: Element): number {
  return link.closest<HTMLTableCellElement>('th, td')?.cellIndex ?? -1;
}
