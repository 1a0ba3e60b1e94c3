/**
 * Held numbers, with scripting: pointing at one, focusing it or tapping it opens its note beside it. Without scripting
 * the number links to the same note at the foot of the page.
 */

/** Time for the pointer to travel from the number to its note, ms. */
const TRAVEL = 400;
/** Width of a note beside the column, its distance from it; in rem. */
const WIDTH = 18;
const DISTANCE = 3;
/** Distance from the window's edge, and the width below which a note fills the window, px. */
const EDGE = 8;
const NARROW = 560;

let open: { readonly anchor: HTMLAnchorElement; readonly tip: HTMLElement } | undefined;
let leaving: ReturnType<typeof setTimeout> | undefined;

for (const anchor of document.querySelectorAll<HTMLAnchorElement>('a.held')) {
  anchor.addEventListener('pointerenter', (event) => {
    if (event.pointerType === 'mouse') show(anchor);
  });
  anchor.addEventListener('focus', () => show(anchor));
  anchor.addEventListener('click', (event) => {
    event.preventDefault();
    show(anchor);
  });
}

document.addEventListener('pointerdown', (event) => {
  if (!inside(event.target)) hide();
});
document.addEventListener('pointerover', (event) => {
  if (event.pointerType !== 'mouse' || open === undefined) return;
  clearTimeout(leaving);
  if (!inside(event.target) && !inside(document.activeElement)) leaving = setTimeout(hide, TRAVEL);
});
document.addEventListener('focusin', (event) => {
  if (!inside(event.target)) hide();
});
document.addEventListener('keydown', (event) => {
  if (event.key === 'Escape') hide();
});

/** A number whose sentence was written anew has another address: the old one then leads to the first of the same expression. */
const ADDRESS = /^#(?:held:)?(.+-)[a-z0-9]{5}(?:-\d+)?$/;
addEventListener('hashchange', followOld);
followOld();

function followOld(): void {
  const [, expression] = ADDRESS.exec(location.hash) ?? [];
  if (expression === undefined || document.getElementById(location.hash.slice(1)) !== null) return;
  const held = [...document.querySelectorAll('a.held')];
  const found = held.find(({ id }) => ADDRESS.exec(`#${id}`)?.[1] === expression);
  if (found !== undefined) location.replace(`#${found.id}`);
}

function inside(target: EventTarget | null): boolean {
  return open !== undefined && target instanceof Node && (open.anchor.contains(target) || open.tip.contains(target));
}

function show(anchor: HTMLAnchorElement): void {
  clearTimeout(leaving);
  if (open?.anchor === anchor) return;
  hide();
  const note = document.getElementById(anchor.hash.slice(1));
  if (note === null) return;
  const tip = document.createElement('div');
  tip.className = 'held-tip';
  tip.id = 'held-tip';
  tip.setAttribute('role', 'note');
  for (const child of note.children) tip.append(withoutIds(child));
  // Right after the number, so that the keyboard reaches its links next.
  anchor.after(tip);
  anchor.setAttribute('aria-describedby', tip.id);
  place(anchor, tip);
  open = { anchor, tip };
}

function hide(): void {
  clearTimeout(leaving);
  open?.anchor.removeAttribute('aria-describedby');
  open?.tip.remove();
  open = undefined;
}

function withoutIds(element: Element): Element {
  const copy = element.cloneNode(true) as Element;
  for (const child of [copy, ...copy.querySelectorAll('[id]')]) child.removeAttribute('id');
  return copy;
}

/** What may stand in the margin or reach into it: a note does not cover it. */
const IN_MARGIN = '.brief, main .plot, main .scroll';

/** Where a note of that height fits beside its number: as high as the number, higher where something wide follows; undefined where it fits nowhere. */
function freeBeside(left: number, top: number, height: number): number | undefined {
  const taken = [...document.querySelectorAll(IN_MARGIN)]
    .map((element) => element.getBoundingClientRect())
    .filter((box) => box.height > 0 && box.right > left);
  const covers = (at: number) => taken.filter((box) => box.top < at + height && box.bottom > at);
  const below = covers(top).filter((box) => box.top > top);
  const raised = Math.min(top, ...below.map((box) => box.top - height - EDGE));
  return covers(raised).length === 0 ? raised : undefined;
}

/** In the margin where there is room for it, else below the number. Set through the style object, which the policy allows. */
function place(anchor: HTMLAnchorElement, tip: HTMLElement): void {
  const number = anchor.getBoundingClientRect();
  const column = (anchor.closest('p, li, table') ?? anchor).getBoundingClientRect();
  const frame = (tip.offsetParent ?? document.documentElement).getBoundingClientRect();
  const width = document.documentElement.clientWidth;
  const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
  const wide = width - column.right >= (WIDTH + DISTANCE) * rem;
  tip.classList.toggle('beside', wide);
  if (wide) tip.style.width = `${WIDTH * rem}px`;
  const high = wide ? freeBeside(column.right + DISTANCE * rem, number.top, tip.offsetHeight) : undefined;
  const beside = high !== undefined;
  tip.classList.toggle('beside', beside);
  if (!beside) tip.style.width = '';
  // In a narrow window it takes the whole measure, so that no strip of text is left beside it.
  const narrow = !beside && width < NARROW;
  if (narrow) tip.style.width = `${width - 2 * EDGE}px`;
  const left = beside
    ? column.right + DISTANCE * rem
    : narrow
      ? EDGE
      : Math.max(EDGE, Math.min(number.left, width - tip.offsetWidth - EDGE));
  tip.style.left = `${left - frame.left}px`;
  tip.style.top = `${(high ?? number.bottom + 4) - frame.top}px`;
}
