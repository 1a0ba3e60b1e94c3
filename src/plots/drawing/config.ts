/** How all plots look: ink on paper, few rules, type of the page. */
import { FONT } from './marks.ts';
import type { Size } from './size.ts';
import type { Spec } from './vega.ts';

/** Vega-Lite's configuration for a drawing. Vega's own aria attributes are off: the SVG as a whole is one labelled image. */
function configOf(size: Size): Spec {
  return {
    aria: false,
    font: FONT,
    view: { stroke: null },
    // All values are finite, which we see to ourselves: Vega-Lite's own tests of every point cost a third of the drawing.
    mark: { invalid: 'show' },
    concat: { spacing: 0 },
    axis: {
      labelColor: 'var(--plot-soft)',
      labelFontSize: size.small,
      labelLimit: 0,
      labelPadding: 5,
      titleColor: 'var(--plot-ink)',
      titleFontSize: size.font,
      titleFontWeight: 'normal',
      titleLimit: 0,
      titlePadding: 6,
      domainColor: 'var(--plot-soft)',
      tickColor: 'var(--plot-soft)',
      tickSize: 4,
      gridColor: 'var(--plot-grid)',
      gridWidth: 1,
    },
  };
}

/** Panels one above the other on a common horizontal axis, aligned by their data areas. */
export function stack(panels: readonly Spec[], size: Size, spacing: number): Spec {
  return {
    background: null,
    padding: { left: 0, right: 0, top: 2, bottom: 6 },
    bounds: 'flush',
    spacing,
    config: configOf(size),
    vconcat: panels,
  };
}
