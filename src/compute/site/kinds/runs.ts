/** Runs: a page each; its series and the downloads of its plots beside it. */
import { runModel } from '../../pages/run.ts';
import { plotFiles } from '../../steps/plots/plot-files.ts';
import type { Page, PageKind } from '../page-kind.ts';

export const RUNS: PageKind = {
  folder: 'runs',
  pages: ({ parts }) => [...parts.runs.values()].map((computed): Page => [`runs/${computed.run.id}/`, runModel(parts, computed)]),
  files: ({ parts }) =>
    [...parts.runs.values()].flatMap(({ run, seriesText, plots }) => {
      const path = `runs/${run.id}/`;
      return [{ path: `${path}series.json`, blob: seriesText, data: 'series as drawn' }, ...plotFiles(path, plots)];
    }),
};
