/** Comparisons: a page each; its figures and the downloads of its plots beside it. */
import { formerIdsOf } from '../../../register/sections/former-addresses.ts';
import { comparisonJson } from '../../comparison/comparison-json.ts';
import { notePath } from '../../contents/note-path.ts';
import { shareFile, sharePicture } from '../../contents/share-picture.ts';
import { type ComputedComparison, comparisonPath, type SiteContents } from '../../contents/site-contents.ts';
import { comparePath } from '../../pages/compare.ts';
import { copyRow } from '../../record-copies/copy-page.ts';
import type { PrintedCopies } from '../../record-copies/print-copies.ts';
import type { ComparisonModel } from '../../results.ts';
import { plotFiles } from '../../steps/plots/plot-files.ts';
import { jsonText } from '../../store/json-text.ts';
import type { Page, PageKind } from '../page-kind.ts';

export const COMPARISONS: PageKind = {
  folder: 'comparisons',
  pages: ({ parts, copies }) => [...parts.comparisons.values()].map((computed) => comparisonPage(parts, computed, copies)),
  files: ({ store, parts }) =>
    [...parts.comparisons.values()].flatMap((computed) => {
      const path = comparisonPath(computed.comparison.id);
      const blob = store.keep(jsonText(comparisonJson(computed)));
      const figures = { path: `${path}figures.json`, blob, data: 'figures' };
      return [figures, ...plotFiles(path, computed.plots), ...shareFile(parts, path)];
    }),
};

/** Whatever it compares is in the site: its runs and their devices. */
function comparisonPage(parts: SiteContents, { comparison, own }: ComputedComparison, { copies }: PrintedCopies): Page {
  const status = parts.published.comparisons.has(comparison.id) ? 'published' : 'held back';
  const model: ComparisonModel = {
    ...own,
    marks: { ...own.marks, status },
    share: sharePicture(parts, comparisonPath(comparison.id)),
    body: parts.prose.get(comparison.file) ?? '',
    notes: parts.notes
      .filter(({ note }) => [...note.comparisons.values()].includes(comparison.id))
      .map((computed) => ({ title: computed.note.title, path: notePath(computed) })),
    copies: copies.filter((copy) => [comparison.id, ...formerIdsOf(comparison)].includes(copy.comparison)).map(copyRow),
    compare: comparePath([...comparison.runs.values()], comparison.runs.get(comparison.reference)),
  };
  return [comparisonPath(comparison.id), model];
}
