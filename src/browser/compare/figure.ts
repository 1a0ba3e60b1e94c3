/** The plot's place in the page: the drawing, what it shows in words, its data and files. The place keeps its height between drawings. */
import type { Undrawn } from '../../plots/drawing/plan.ts';
import { byId, el } from './dom.ts';
import { madeFiles } from './files.ts';
import type { DrawnPlot } from './plot.ts';
import { textTable } from './tables.ts';

const files = madeFiles();

export function showPlot(plot: DrawnPlot | Undrawn): void {
  const [title, place, about, details] = [byId('plot-title'), byId('drawn'), byId('plot-about'), byId('plot-told')];
  files.release();
  details.hidden = 'why' in plot;
  about.textContent = ('about' in plot && plot.about) || '';
  if ('why' in plot) {
    title.textContent = 'Nothing to draw';
    place.replaceChildren(el('p', {}, plot.why));
    return;
  }
  title.textContent = plot.title;
  const drawing = new DOMParser().parseFromString(plot.svg, 'image/svg+xml').documentElement;
  place.replaceChildren(document.importNode(drawing, true));
  const { caption, head, rows } = plot.table;
  details.replaceChildren(
    details.querySelector('summary')!,
    el('p', {}, plot.alt),
    el('p', { class: 'method' }, plot.method),
    el(
      'p',
      { class: 'files' },
      files.link('Picture, SVG', 'chosen-runs.svg', 'image/svg+xml', plot.file),
      files.link('Drawn data, CSV', 'chosen-runs.csv', 'text/csv', plot.csv),
    ),
    textTable(caption, head, rows),
  );
}
