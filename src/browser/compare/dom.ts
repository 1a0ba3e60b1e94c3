/** Elements made by script. Text is only ever set as text. */

export type Content = Node | string | null;

/** An element with attributes and content; what is null is left out. */
export function el<K extends keyof HTMLElementTagNameMap>(
  name: K,
  attributes: Readonly<Record<string, string>> = {},
  ...content: readonly Content[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  element.append(...content.filter((each) => each !== null));
  return element;
}

export function byId<E extends HTMLElement = HTMLElement>(id: string): E {
  return document.getElementById(id) as E;
}

/** A table wider than the page scrolls by itself, by keyboard too. */
export function scrolling(label: string, table: HTMLTableElement, more = ''): HTMLElement {
  return el('div', { class: `scroll ${more}`.trim(), tabindex: '0', role: 'region', 'aria-label': label }, table);
}

/** A part of a page under a heading. */
export function section(id: string, title: string, ...content: readonly Content[]): HTMLElement {
  return el('section', { 'aria-labelledby': id }, el('h2', { id }, title), ...content);
}

/** A row of heading cells for columns; an empty cell where a column has none. */
export function headRow(cells: readonly Content[]): HTMLElement {
  return el('thead', {}, el('tr', {}, ...cells.map((cell) => (cell === null ? el('td') : el('th', { scope: 'col' }, cell)))));
}
