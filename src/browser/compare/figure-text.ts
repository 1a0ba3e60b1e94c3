/** What the page says of itself: remarks on the address, runs that cannot be shown, and what was just done. */
import { cited } from './address.ts';
import { byId, el } from './dom.ts';
import { copiesOf, type HeldCopy } from './missing-runs.ts';

/** Ids that are named one by one: as many as one plot could show. */
const MOST_NAMED = 12;

/** Sentences above the comparison, and runs that are awaited; none clears them. */
export function tellRemarks(sentences: readonly string[], awaited: readonly string[] = []): void {
  const waiting = awaited.length === 0 ? [] : [el('p', { class: 'aside' }, `Being loaded: ${awaited.join(', ')}.`)];
  byId('told').replaceChildren(...sentences.map((sentence) => el('p', {}, sentence)), ...waiting);
}

/** For ears as well as eyes: what is shown, or what a button did. */
export function say(sentence: string): void {
  byId('said').textContent = sentence;
}

/** Runs that are gone, with the record copies that hold them; null: it could not be told which there are. */
export function tellMissingRuns(
  gone: readonly string[],
  copies: readonly HeldCopy[] | null,
  leaveOut: () => void,
  base: string,
): void {
  const place = byId('gone');
  place.hidden = gone.length === 0;
  place.replaceChildren();
  if (gone.length === 0) return;
  const [is, it] = gone.length === 1 ? ['is', 'It'] : ['are', 'Each'];
  const button = el('button', { type: 'button' }, gone.length === 1 ? 'Leave it out' : 'Leave them out');
  button.addEventListener('click', leaveOut);
  place.replaceChildren(
    el(
      'p',
      {},
      `${named(gone)} ${is} not among the published runs. ${it} was withdrawn or renamed, or the address is wrong. `,
      button,
    ),
    ...copyList(gone, copies, base),
  );
}

/** Ids in a row; of many the first, and how many more. */
function named(ids: readonly string[]): string {
  const more = ids.length - MOST_NAMED;
  const names = (more < 2 ? ids : ids.slice(0, MOST_NAMED)).map(cited).join(', ');
  return more < 2 ? names : `${names} and ${more} more`;
}

function copyList(gone: readonly string[], copies: readonly HeldCopy[] | null, base: string): HTMLElement[] {
  if (copies === null) return [el('p', {}, 'Which record copies hold such runs could not be found out.')];
  const found = copiesOf(gone, copies);
  if (found.length === 0) return [el('p', {}, `No record copy of this site holds ${gone.length === 1 ? 'it' : 'any of them'}.`)];
  const items = found.map(({ title, path, runs }) =>
    el('li', {}, el('a', { href: base + path }, title), `, with ${runs.join(', ')}`),
  );
  return [el('p', {}, 'As they were, they stand in record copies:'), el('ul', {}, ...items)];
}
