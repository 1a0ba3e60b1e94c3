/** Permalinks, with scripting: following one also copies its whole address and says so. Where the browser refuses, it is a link. */

/** How long it is said, ms. */
const SAID = 2000;
/** Distance from the link and from the window's edge, px. */
const DISTANCE = 6;

const said = document.createElement('p');
said.className = 'copied';
said.setAttribute('role', 'status');
document.body.append(said);
let ending: ReturnType<typeof setTimeout> | undefined;

document.addEventListener('click', (event) => {
  const link = event.target instanceof Element ? event.target.closest<HTMLAnchorElement>('a.permalink') : null;
  const otherwise = event.ctrlKey || event.metaKey || event.shiftKey || event.altKey;
  if (link === null || otherwise || navigator.clipboard === undefined) return;
  const copying = navigator.clipboard.writeText(link.href).then(() => say(link));
  if (link.hash !== '') {
    copying.catch(() => undefined);
    return;
  }
  // The page's own address: to follow it would load the page anew.
  event.preventDefault();
  copying.catch(() => location.assign(link.href));
});

function say(link: HTMLElement): void {
  said.textContent = 'copied';
  const { right, top, bottom } = link.getBoundingClientRect();
  const frame = document.body.getBoundingClientRect();
  const farthest = document.documentElement.clientWidth - said.offsetWidth - DISTANCE;
  said.style.left = `${Math.min(right + DISTANCE, farthest) - frame.left}px`;
  said.style.top = `${(top + bottom - said.offsetHeight) / 2 - frame.top}px`;
  clearTimeout(ending);
  ending = setTimeout(() => said.replaceChildren(), SAID);
}
