/** The downloads of plots beside the page that shows them. */

import type { Manifest } from '../../results.ts';
import type { PlotResult } from './plot-task.ts';

/** Below the page's path; a plot that could not be drawn has none. */
export function plotFiles(path: string, plots: readonly (PlotResult | null)[]): Manifest['files'][number][] {
  return plots.flatMap((plot) => {
    if (plot === null) return [];
    return (['svg', 'png', 'csv'] as const).flatMap((extension) => {
      const blob = plot.files[extension];
      return blob === undefined ? [] : [{ path: `${path}plots/${plot.id}.${extension}`, blob }];
    });
  });
}
