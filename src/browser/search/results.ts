/** What was found, as the page shows it: by kind, each with its title, a link and a snippet. */
import type { Hit } from '../../search/find.ts';
import { snippetOf } from '../../search/snippet.ts';

/** So many of a kind are shown before the rest is asked for. */
const FIRST = 8;

/** Fills the sections of the kinds. The kind of the best hit comes first. */
export function showHits(results: HTMLElement, hits: readonly Hit[], base: string): void {
  const sections = [...results.querySelectorAll<HTMLElement>('[data-kind]')];
  const rank = (section: HTMLElement) => {
    const at = hits.findIndex(({ kind }) => kind === section.dataset.kind);
    return at < 0 ? hits.length : at;
  };
  for (const section of sections)
    fill(
      section,
      hits.filter(({ kind }) => kind === section.dataset.kind),
      base,
    );
  const order = sections.toSorted((a, b) => rank(a) - rank(b));
  if (order.some((section, at) => section !== results.children[at])) results.append(...order);
}

function fill(section: HTMLElement, hits: readonly Hit[], base: string): void {
  section.hidden = hits.length === 0;
  const list = section.querySelector('ul')!;
  list.replaceChildren(...hits.slice(0, FIRST).map((hit) => item(hit, base)));
  const rest = hits.slice(FIRST);
  section.querySelector('.more')!.replaceChildren(...(rest.length === 0 ? [] : [more(rest, list, base)]));
}

/** A button that shows the rest and gives the keyboard to its first. */
function more(rest: readonly Hit[], list: HTMLElement, base: string): HTMLElement {
  const button = document.createElement('button');
  button.type = 'button';
  button.textContent = `${rest.length} more`;
  button.addEventListener('click', () => {
    const items = rest.map((hit) => item(hit, base));
    list.append(...items);
    button.remove();
    items[0]!.querySelector('a')!.focus();
  });
  return button;
}

function item({ title, path, text, terms }: Hit, base: string): HTMLElement {
  const entry = document.createElement('li');
  const link = document.createElement('a');
  link.href = base + path;
  link.textContent = title;
  const snippet = document.createElement('p');
  snippet.append(
    ...snippetOf(text, terms).map((stretch) => {
      if (!stretch.marked) return stretch.text;
      const mark = document.createElement('mark');
      mark.textContent = stretch.text;
      return mark;
    }),
  );
  entry.append(link, snippet);
  return entry;
}
