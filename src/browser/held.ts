/**
 * Held numbers, with scripting: pointing at one, focusing it or tapping it opens its note beside it. Without scripting
 * the number links to the same note at the foot of the page.
 */

let open: { readonly anchor: HTMLAnchorElement; readonly tip: HTMLElement } | undefined;

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
  if (event.pointerType === 'mouse' && !inside(event.target) && document.activeElement !== open?.anchor) hide();
});
document.addEventListener('focusin', (event) => {
  if (!inside(event.target)) hide();
});
document.addEventListener('keydown', (event) => {
  if (event.key === 'Escape') hide();
});

function inside(target: EventTarget | null): boolean {
  return open !== undefined && target instanceof Node && (open.anchor.contains(target) || open.tip.contains(target));
}

function show(anchor: HTMLAnchorElement): void {
  if (open?.anchor === anchor) return;
  hide();
  const note = document.getElementById(anchor.hash.slice(1));
  if (note === null) return;
  const tip = document.createElement('div');
  tip.className = 'held-tip';
  tip.id = 'held-tip';
  tip.setAttribute('role', 'note');
  for (const child of note.children) tip.append(withoutIds(child));
  // After the anchor's block, so that the keyboard reaches its links next.
  anchor.after(tip);
  anchor.setAttribute('aria-describedby', tip.id);
  place(anchor, tip);
  open = { anchor, tip };
}

function hide(): void {
  open?.anchor.removeAttribute('aria-describedby');
  open?.tip.remove();
  open = undefined;
}

function withoutIds(element: Element): Element {
  const copy = element.cloneNode(true) as Element;
  for (const child of [copy, ...copy.querySelectorAll('[id]')]) child.removeAttribute('id');
  return copy;
}

/** Below the number, inside the window. Set through the style object, which the content security policy allows. */
function place(anchor: HTMLAnchorElement, tip: HTMLElement): void {
  const box = anchor.getBoundingClientRect();
  const frame = (tip.offsetParent ?? document.documentElement).getBoundingClientRect();
  const left = Math.max(8, Math.min(box.left, document.documentElement.clientWidth - tip.offsetWidth - 8));
  tip.style.left = `${left - frame.left}px`;
  tip.style.top = `${box.bottom - frame.top + 4}px`;
}
