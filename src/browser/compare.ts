/**
 * The page of free comparison: puts the runs that a reader chooses side by side. All that is looked at stands in the address. It loads the
 * files of the chosen runs from its own host and nothing else; the arithmetic and the chart library come when there is something to show.
 */

import type { GatheredRun } from '../compute/models/gathered.ts';
import { queryOf, readAddress } from './compare/address.ts';
import { type Choice, choose, underNewIds } from './compare/choice.ts';
import { readControls } from './compare/controls.ts';
import { byId } from './compare/dom.ts';
import { showPlot } from './compare/figure.ts';
import { say, tellMissingRuns, tellRemarks } from './compare/figure-text.ts';
import { isFailed, loader } from './compare/load.ts';
import { readCopies } from './compare/missing-runs.ts';
import { namesOf } from './compare/names.ts';
import { missingOf, offersOf } from './compare/offers.ts';
import { readPicker } from './compare/picker.ts';
import type { ReadRun } from './compare/read-run.ts';
import { heightOf } from './compare/reserve.ts';
import { EMPTY_VIEW, type View } from './compare/view.ts';
import { oneStopEach } from './table-keys/one-stop.ts';

const form = byId<HTMLFormElement>('compare');
const result = byId('result');
const base = form.dataset.base!;
const narrow = matchMedia('(max-width: 47rem)');
const load = loader(base);
const picker = readPicker((id, ticked) => {
  go({ runs: ticked ? [...view.runs, id] : view.runs.filter((each) => each !== id) });
});
const controls = readControls(go);

let view = EMPTY_VIEW;
/** What was asked for last: an answer to an older question is not shown. */
let asked = 0;
let redraw: () => void = () => undefined;

form.addEventListener('submit', (event) => event.preventDefault());
byId('copy').addEventListener('click', () => void copyAddress());
addEventListener('popstate', fromAddress);
narrow.addEventListener('change', () => redraw());
fromAddress();

function fromAddress(): void {
  const read = readAddress(location.search);
  const renamed = underNewIds(read.view, picker.renamed);
  byId<HTMLDetailsElement>('choose').open =
    read.view.runs.length === 0 || byId<HTMLDetailsElement>('choose').contains(document.activeElement);
  show(renamed.view, [...read.remarks, ...renamed.remarks]).catch(failed);
}

/** A change by the reader is a step that the browser can take back. */
function go(part: Partial<View>): void {
  const next = { ...view, ...part };
  if (next.reference !== null && (!next.runs.includes(next.reference) || next.reference === next.runs[0])) next.reference = null;
  history.pushState(null, '', location.pathname + queryOf(next));
  show(next, []).catch(failed);
}

async function show(next: View, remarks: readonly string[]): Promise<void> {
  view = next;
  asked += 1;
  const turn = asked;
  const choice = choose(view, picker.known);
  picker.mark(view.runs);
  tellRemarks([...remarks, ...choice.remarks], choice.shown);
  void showGone(choice.gone, turn);
  if (choice.reference === null) return hide();
  const [engine, files] = await Promise.all([import('./compare/engine.ts'), Promise.all(choice.shown.map(load))]);
  if (turn !== asked) return;
  const read = files.map((each) => (isFailed(each) ? each : engine.runOf(each)));
  const runs = read.filter((each): each is ReadRun => !isFailed(each));
  const failures = read.flatMap((each, index) => (isFailed(each) ? [`${choice.shown[index]} cannot be shown: ${each.why}.`] : []));
  const missing =
    runs.length === 0
      ? []
      : missingOf(
          view.show,
          runs.map(({ gathered }) => gathered),
        );
  tellRemarks([...remarks, ...choice.remarks, ...failures, ...missing]);
  if (runs.length === 0) return hide();
  showRuns(engine, runs, choice, turn);
}

function showRuns(engine: typeof import('./compare/engine.ts'), runs: readonly ReadRun[], choice: Choice, turn: number): void {
  const ids = runs.map(({ gathered }) => gathered.run);
  const reference = ids.find((id) => id === choice.reference) ?? ids[0]!;
  const gathered = engine.gatherChosen(runs, reference);
  const names = namesOf(gathered.runs);
  const shown = engine.underNames(gathered, names);
  controls.offer(names, reference, offersOf(gathered.runs));
  controls.write(view);
  const { before, after } = engine.resultOf(shown, gathered, base);
  byId('before').replaceChildren(...before);
  byId('after').replaceChildren(...after);
  oneStopEach(result);
  byId('controls').hidden = false;
  result.hidden = false;
  say(
    ids.length === 1
      ? `${shown.reference} is shown: choose another run.`
      : `${ids.length} runs side by side; ${shown.reference} is the reference.`,
  );
  redraw = () => void draw(shown.runs, turn).catch(failed);
  redraw();
}

function hide(): void {
  byId('controls').hidden = true;
  result.hidden = true;
  redraw = () => undefined;
  say('');
}

async function draw(runs: readonly GatheredRun[], turn: number): Promise<void> {
  byId('drawn').style.minHeight = `${heightOf(view.show, byId('drawn').clientWidth)}px`;
  const { drawRuns } = await import('./compare/plot.ts');
  const plot = await drawRuns(runs, view, narrow.matches);
  if (turn === asked) showPlot(plot);
}

async function showGone(gone: readonly string[], turn: number): Promise<void> {
  const leaveOut = () => go({ runs: view.runs.filter((id) => !gone.includes(id)) });
  if (gone.length === 0) return tellMissingRuns(gone, [], leaveOut, base);
  const answer = await fetch(`${base}record-copies/index.json`).catch(() => null);
  const copies = answer === null ? null : answer.ok ? readCopies(await answer.text()) : answer.status === 404 ? [] : null;
  if (turn === asked) tellMissingRuns(gone, copies, leaveOut, base);
}

/** A part of the page that did not come: after a new build its name is another. */
function failed(reason: unknown): void {
  const what = reason instanceof Error ? reason.message : String(reason);
  tellRemarks([`A part of this page could not be used (${what}). Load the page again.`]);
}

async function copyAddress(): Promise<void> {
  try {
    await navigator.clipboard.writeText(location.href);
    say('The address of this view is copied.');
  } catch {
    say(`The browser does not let this page copy. The address of this view: ${location.href}`);
  }
}
