/**
 * The prompter: moves the words past the reading line at a pace, all of it from the keyboard. Without scripting the page is plain
 * large text. It asks nothing of any host once it is loaded; where it stood is kept for the tab's session only.
 */
import { leftText, nextTop, placeAt, previousTop, STEP, shownAt, speedOf, stepOf, topOf, within } from './prompter-motion.ts';

/** A frame counts for so long at most, s: after a pause of the browser the words go on where they stood. */
const LONGEST_FRAME = 0.25;
/** Part of the height at which the reading line is, as in the style sheet. */
const READING_LINE = 0.33;

const root = document.documentElement;
const text = byId('text');
const words = Number(text.dataset.words);
const calm = matchMedia('(prefers-reduced-motion: reduce)');
const sessionKey = `prompter ${location.pathname}`;

let pace = Number(text.dataset.pace);
/** Pixels of the page, with fractions that the browser would round away. */
let at = 0;
let origin = 0;
/** Where each paragraph stands in the layout that `at` was measured in. */
let tops: number[] = [];
let lastSet = 0;
let lastFrame: number | undefined;
let running = false;
let awake: WakeLockSentinel | undefined;

const ACTIONS: Readonly<Record<string, () => void>> = {
  run: () => (running ? stop() : start()),
  slower: () => setPace(pace - STEP),
  faster: () => setPace(pace + STEP),
  previous: () => moveTo(previousTop(sections(), at)),
  next: () => moveTo(nextTop(sections(), at) ?? extent()),
  top: () => moveTo(0),
  mirror: () => setMirrored(!root.classList.contains('mirrored')),
  back: () => location.assign(byId<HTMLAnchorElement>('back').href),
};

const KEYS: Readonly<Record<string, string>> = {
  ' ': 'run',
  ArrowUp: 'faster',
  ArrowDown: 'slower',
  ArrowLeft: 'previous',
  ArrowRight: 'next',
  Home: 'top',
  m: 'mirror',
  M: 'mirror',
  Escape: 'back',
};

byId('panel').hidden = false;
history.scrollRestoration = 'manual';
tops = paragraphs();
recall();
tell();

document.addEventListener('keydown', (event) => {
  const action = KEYS[event.key];
  if (action === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
  // A button that the keyboard has reached is pressed by the space bar, as everywhere.
  if (event.key === ' ' && event.target instanceof HTMLButtonElement) return;
  event.preventDefault();
  ACTIONS[action]?.();
});
for (const button of document.querySelectorAll<HTMLButtonElement>('[data-do]')) {
  button.addEventListener('click', (event) => {
    ACTIONS[button.dataset.do ?? '']?.();
    // After a click of the pointer the space bar is to start and stop, not to press the button again.
    if (event.detail > 0) button.blur();
  });
}
document.addEventListener('scroll', () => {
  if (Math.abs(scrollY - lastSet) > 1.5) settle(scrollY);
  tell();
});
addEventListener('pagehide', remember);
// A turned phone, a font that comes late, a window that has its height only after the first script ran: the same words stay at the line.
addEventListener('resize', keepWords);
new ResizeObserver(keepWords).observe(text);

function byId<E extends HTMLElement = HTMLElement>(id: string): E {
  return document.getElementById(id) as E;
}

/** The way from the first word at the reading line to the last. */
function extent(): number {
  return Math.max(1, root.scrollHeight - innerHeight);
}

/** For each element: how far the page is scrolled when it stands at the reading line. */
function readingTops(elements: Iterable<Element>): number[] {
  return [...elements].map((element) => {
    const top = element.getBoundingClientRect().top + scrollY - innerHeight * READING_LINE;
    return Math.min(extent(), Math.max(0, Math.round(top)));
  });
}

function paragraphs(): number[] {
  return readingTops(text.children);
}

function keepWords(): void {
  const place = placeAt(tops, at);
  const measured = paragraphs();
  if (measured.every((top, index) => top === tops[index])) return;
  tops = measured;
  moveTo(topOf(tops, place));
}

function sections(): number[] {
  return readingTops(text.querySelectorAll('h2'));
}

function start(): void {
  running = true;
  lastFrame = undefined;
  origin = at;
  root.classList.add('running');
  byId('run').textContent = 'Stop';
  requestAnimationFrame(frame);
  // A dark screen in mid-sentence; where it is refused the words move all the same.
  navigator.wakeLock?.request('screen').then(
    (lock) => {
      awake = lock;
    },
    () => undefined,
  );
}

function stop(): void {
  running = false;
  root.classList.remove('running');
  byId('run').textContent = 'Start';
  void awake?.release();
  awake = undefined;
  remember();
}

function frame(now: number): void {
  if (!running) return;
  const passed = lastFrame === undefined ? 0 : Math.min(LONGEST_FRAME, (now - lastFrame) / 1000);
  lastFrame = now;
  at = Math.min(extent(), at + passed * speedOf(extent(), words, pace));
  show(at >= extent() ? at : shownAt(at, origin, calm.matches ? stepOf(innerHeight, lineHeight()) : null));
  if (at >= extent()) stop();
  else requestAnimationFrame(frame);
}

function lineHeight(): number {
  return Number.parseFloat(getComputedStyle(text).lineHeight);
}

function show(top: number): void {
  if (Math.abs(top - lastSet) < 0.01) return;
  scrollTo({ top, behavior: 'instant' });
  lastSet = scrollY;
}

/** Takes a place that was chosen by hand. */
function settle(top: number): void {
  at = top;
  origin = top;
  lastSet = top;
}

function moveTo(top: number): void {
  settle(top);
  scrollTo({ top, behavior: 'instant' });
  lastSet = scrollY;
  tell();
  remember();
}

function setPace(wanted: number): void {
  pace = within(wanted);
  tell();
  remember();
}

function setMirrored(mirrored: boolean): void {
  root.classList.toggle('mirrored', mirrored);
  document.querySelector('[data-do="mirror"]')?.setAttribute('aria-pressed', String(mirrored));
  remember();
}

function tell(): void {
  byId('speed').textContent = `${pace} words a minute`;
  byId('left').textContent = leftText(words, Math.min(1, at / extent()), pace);
}

/** Keeps the place as that within a paragraph, so that it is the same words where the window or the type is another. */
function remember(): void {
  const state = { place: placeAt(tops, at), pace, mirrored: root.classList.contains('mirrored') };
  try {
    sessionStorage.setItem(sessionKey, JSON.stringify(state));
  } catch {
    // Storage is switched off: then it begins at the beginning.
  }
}

function recall(): void {
  try {
    const state: unknown = JSON.parse(sessionStorage.getItem(sessionKey) ?? 'null');
    if (typeof state !== 'object' || state === null) return;
    const { place, pace: set, mirrored } = state as Record<string, unknown>;
    if (typeof set === 'number') pace = within(set);
    if (typeof place === 'number') moveTo(topOf(tops, place));
    setMirrored(mirrored === true);
  } catch {
    // As above.
  }
}
