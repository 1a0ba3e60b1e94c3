/** The search page, with scripting: reads the site's own index once, and keeps what is searched for in the address (`?words=`). */
import type { SearchFile } from '../search/document.ts';
import { type Finder, openIndex } from '../search/find.ts';
import { showHits } from './search/results.ts';

/** The one parameter of the address. */
const PARAMETER = 'words';

const form = document.getElementById('search') as HTMLFormElement;
const field = document.getElementById('words') as HTMLInputElement;
const count = document.getElementById('count')!;
const results = document.getElementById('results')!;
const base = field.dataset.base!;

let find: Finder | undefined;
/** Whether the newest entry of the browser's history was made by typing: it is then replaced, one letter after the other. */
let typed = false;

form.addEventListener('submit', (event) => {
  event.preventDefault();
  typed = false;
});
field.addEventListener('input', () => {
  const words = field.value.trim();
  const address = location.pathname + (words === '' ? '' : `?${new URLSearchParams({ [PARAMETER]: words })}`);
  if (typed) history.replaceState(null, '', address);
  else history.pushState(null, '', address);
  typed = true;
  show(words);
});
addEventListener('popstate', fromAddress);
fromAddress();
void load();

function fromAddress(): void {
  typed = false;
  field.value = new URLSearchParams(location.search).get(PARAMETER) ?? '';
  show(field.value.trim());
}

async function load(): Promise<void> {
  try {
    const answer = await fetch(field.dataset.index!);
    if (!answer.ok) throw new Error(`${answer.status}`);
    find = openIndex((await answer.json()) as SearchFile);
    show(field.value.trim());
  } catch {
    count.textContent = 'The index of the search could not be read. Load the page again, or use the lists below.';
  }
}

function show(words: string): void {
  if (find === undefined) return;
  const { hits, all } = find(words);
  showHits(results, hits, base);
  count.textContent = words === '' ? '' : said(hits.length, all);
}

function said(number: number, all: boolean): string {
  if (number === 0) return 'Nothing has these words. Try fewer of them, or the lists below.';
  const found = `${number} ${number === 1 ? 'result' : 'results'}`;
  return all ? found : `Nothing has all of these words; ${found} with some of them.`;
}
