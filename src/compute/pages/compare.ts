/** The model of the page on which readers compare runs of their own choice, and addresses of it. */
import { compareText } from '../../problem.ts';
import { formerIdsOf } from '../../register/sections/former-addresses.ts';
import { runLink, settingText } from '../contents/figure-text.ts';
import { type ComputedRun, comparisonPath, type SiteContents } from '../contents/site-contents.ts';
import type { CompareModel } from '../results.ts';
import { isInvented } from './note.ts';

/** Where runs stand side by side: `compare/?runs=larch-rated+larch-fast`. The first is the reference, unless another is. */
export function comparePath(runs: readonly string[], reference?: string): string {
  const other = reference === undefined || reference === runs[0] ? '' : `&reference=${reference}`;
  return `compare/?runs=${runs.join('+')}${other}`;
}

/** Every run of the scope by device, newest first; and the comparisons that authors made. */
export function compareModel(parts: SiteContents): CompareModel {
  const runs = [...parts.runs.values()];
  const ids = [...new Set(runs.map(({ run }) => run.device))];
  const devices = ids
    .map((id) => parts.register.devices.get(id)!)
    .sort((a, b) => compareText(a.title, b.title) || compareText(a.id, b.id));
  return {
    kind: 'compare',
    invented: ids.some((id) => isInvented(parts, id)),
    devices: devices.map(({ id, title, maker }) => ({
      title,
      maker,
      runs: runs
        .filter(({ run }) => run.device === id)
        .sort(newestFirst)
        .map((computed) => choiceOf(parts, computed)),
    })),
    comparisons: [...parts.comparisons.values()].map(({ comparison }) => ({
      title: comparison.title,
      path: comparisonPath(comparison.id),
    })),
  };
}

function choiceOf(parts: SiteContents, { run }: ComputedRun): CompareModel['devices'][number]['runs'][number] {
  return {
    id: run.id,
    ...runLink(run),
    was: formerIdsOf(run),
    detail: [run.specimen, run.date, settingText(run)].filter((text) => text !== '').join(', '),
    status: parts.published.runs.has(run.id) ? 'published' : 'held back',
  };
}

function newestFirst(a: ComputedRun, b: ComputedRun): number {
  return compareText(b.run.date, a.run.date) || compareText(a.run.id, b.run.id);
}
